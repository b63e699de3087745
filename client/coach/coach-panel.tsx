// The coach beside the table of whoever plays alone: nothing by itself, and one step more only when asked.
import { useEffect, useRef, useState } from 'preact/hooks';
import { type CompiledCard, type Face, type NeighborNames, withNames } from '../../shared-engine/index.ts';
import { TileRow } from '../tiles/tile-row.tsx';
import type { Advice, CoachedChoice, CoachSession } from './coach-session.ts';
import { openHelped } from './helped.ts';
import { COACH } from './strings.ts';

interface CoachPanelProps {
  readonly choice: CoachedChoice;
  readonly loadCard: () => Promise<CompiledCard | null>;
  /** Of the players around this one, as far as the page knows them. */
  readonly names?: NeighborNames;
  /** Help was given for this choice: a hint, and in the end a pass that is `named`. */
  readonly onHelp: (named: readonly Face[]) => void;
}

export function CoachPanel({ choice, loadCard, names = {}, onHelp }: CoachPanelProps) {
  const [session, setSession] = useState<CoachSession | 'opening' | 'failed' | null>(null);
  const [shown, setShown] = useState(1);
  const [advice, setAdvice] = useState<Advice | null>(null);
  const asksForAll = shown === COACH.titles.length;
  const opened = typeof session === 'string' ? null : session;
  const isGone = useRef(false);
  useEffect(
    () => () => {
      isGone.current = true;
    },
    [],
  );
  useEffect(() => {
    if (!asksForAll || opened === null) return;
    const onAdvice = (given: Advice) => {
      setAdvice(given);
      onHelp(given.tiles);
    };
    return opened.advise(onAdvice, () => setSession('failed'));
  }, [asksForAll, opened]);

  async function open() {
    if (opened !== null || session === 'opening') return;
    setSession('opening');
    const hints = await openHelped(
      async () => {
        const [card, { openCoachSession }] = await Promise.all([loadCard(), import('./coach-session.ts')]);
        return card && openCoachSession(choice, card);
      },
      // The step may have been over before the hint came.
      () => !isGone.current && onHelp([]),
    );
    setSession(hints);
  }

  return (
    <details class="coach">
      <summary>{COACH.ask}</summary>
      <p class="about">{COACH.about}</p>
      <div aria-live="polite">
        {session === 'opening' && <p class="aside">{COACH.opening}</p>}
        {session === 'failed' && <p class="notice">{COACH.failed}</p>}
        {opened !== null && <Hints session={opened} shown={shown} advice={advice} names={names} />}
      </div>
      {opened === null ? (
        <button type="button" aria-disabled={session === 'opening'} onClick={() => void open()}>
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
  readonly names: NeighborNames;
}

function Hints({ session: { coaching }, shown, advice, names }: HintsProps) {
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
            <p key={sentence}>{withNames(sentence, names)}</p>
          ))}
          {place === steps.length - 1 && advice && advice.tiles.length > 0 && (
            <TileRow tiles={advice.tiles} />
          )}
        </section>
      ))}
    </>
  );
}
