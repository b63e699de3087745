// The coach beside the table of whoever plays alone: nothing by itself, and one step more only when asked.
import { useEffect, useState } from 'preact/hooks';
import type { CompiledCard } from '../../shared-engine/index.ts';
import { TileRow } from '../tiles/tile-row.tsx';
import type { Advice, CoachedChoice, CoachSession } from './coach-session.ts';
import { COACH } from './strings.ts';

interface CoachPanelProps {
  readonly choice: CoachedChoice;
  readonly loadCard: () => Promise<CompiledCard | null>;
  /** Help was asked for this choice. */
  readonly onHelp: () => void;
}

export function CoachPanel({ choice, loadCard, onHelp }: CoachPanelProps) {
  const [session, setSession] = useState<CoachSession | 'failed' | null>(null);
  const [shown, setShown] = useState(1);
  const [advice, setAdvice] = useState<Advice | null>(null);
  const asksForAll = shown === COACH.titles.length;
  useEffect(
    () =>
      asksForAll && session !== null && session !== 'failed'
        ? session.advise(setAdvice, () => setSession('failed'))
        : undefined,
    [asksForAll, session],
  );

  async function open() {
    if (session !== null && session !== 'failed') return;
    onHelp();
    try {
      const [card, { openCoachSession }] = await Promise.all([loadCard(), import('./coach-session.ts')]);
      setSession(card ? openCoachSession(choice, card) : 'failed');
    } catch {
      setSession('failed');
    }
  }

  return (
    <details class="coach">
      <summary>{COACH.ask}</summary>
      <p class="about">{COACH.about}</p>
      <div aria-live="polite">
        {session === 'failed' && <p class="notice">{COACH.failed}</p>}
        {session !== null && session !== 'failed' && (
          <Hints session={session} shown={shown} advice={advice} />
        )}
      </div>
      {session === null || session === 'failed' ? (
        <button type="button" onClick={() => void open()}>
          {COACH.first}
        </button>
      ) : (
        !asksForAll && (
          <button type="button" onClick={() => setShown(shown + 1)}>
            {COACH.next[shown - 1]}
          </button>
        )
      )}
    </details>
  );
}

interface HintsProps {
  readonly session: CoachSession;
  readonly shown: number;
  readonly advice: Advice | null;
}

function Hints({ session: { coaching }, shown, advice }: HintsProps) {
  const steps = [
    coaching.standsOut,
    coaching.pointsTo,
    coaching.serves,
    advice?.sentences ?? [COACH.working],
  ];
  return (
    <>
      {steps.slice(0, shown).map((sentences, place) => (
        <section key={COACH.titles[place]}>
          <h3>{COACH.titles[place]}</h3>
          {sentences.map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
          {place === steps.length - 1 && advice && advice.tiles.length > 0 && (
            <TileRow tiles={advice.tiles} />
          )}
        </section>
      ))}
    </>
  );
}
