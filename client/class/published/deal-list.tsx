// What a player of a published drill finds at its link: what it is, what becomes of the choices, and the deals.
import { useSignal } from '@preact/signals';
import { isVisibleName } from '../../../shared-engine/index.ts';
import type { App } from '../../app/routes/app.ts';
import { WaysFolded } from '../../room/ways-panel.tsx';
import type { DrillOnDevice, PlayedRound } from '../../storage/published.ts';
import { Bar } from '../../ui/bar.tsx';
import { NameField } from '../../ui/name-field.tsx';
import type { Playing } from './drill-table.tsx';
import { LoadFailure } from './load-failure.tsx';
import { RepairForm } from './repair-form.tsx';
import { repairOf } from './rounds.ts';
import { DRILL, playWords, promises, roundWords } from './strings.ts';
import type { DrillModel } from './use-drill.ts';

interface DealListProps {
  readonly app: App;
  readonly model: DrillModel;
  readonly device: DrillOnDevice;
  readonly onPlay: (playing: Playing) => void;
}

export function DealList({ app, model, device: { drill, rounds }, onPlay }: DealListProps) {
  const { title, state, until, terms, tableTerms, deals, counted } = drill;
  const isOpen = state === 'open';
  const { name } = app.settings.value;
  const failure = model.failure.value;
  const missing = useSignal(false);

  function isNameMissing(): boolean {
    missing.value = isOpen && terms.names && !isVisibleName(name);
    return missing.value;
  }
  function play(place: number, isPractice: boolean) {
    if (isNameMissing()) return;
    const { id } = deals[place]!;
    if (rounds[id]?.state === 'rejected') model.startAnew(id);
    onPlay({ place, isPractice });
  }

  return (
    <>
      <Bar app={app} home />
      <main class="class-page published">
        <h1>{title}</h1>
        {isOpen && <p>{DRILL.about}</p>}
        <p role="status">{isOpen ? DRILL.until(until) : state === 'over' ? DRILL.over : DRILL.withdrawn}</p>
        {isOpen && failure?.code === 'unreachable' && <p class="notice">{DRILL.offline}</p>}
        {failure !== null && failure.code !== 'unreachable' && (
          <LoadFailure failure={failure} onRetry={model.load} />
        )}
        {isOpen && !model.isStored.value && <p class="notice">{DRILL.notStored}</p>}
        {isOpen && terms.names && (
          <NameField
            value={name}
            missing={missing.value && !isVisibleName(name)}
            onChange={(next) => app.change({ name: next })}
          />
        )}
        <section aria-labelledby="published-deals">
          <h2 id="published-deals">{DRILL.deals}</h2>
          <ol class="published-deals">
            {deals.map((deal, place) => {
              const round = rounds[deal.id];
              const isOver = counted.includes(deal.id) || isSent(round);
              return (
                <li key={deal.id}>
                  <span class="published-deal-name">{DRILL.deal(place + 1, deal.title)}</span>
                  <span class="aside" role="status">
                    {roundWords(round, { counted: counted.includes(deal.id), state })}
                  </span>
                  {(isOpen || isOver) && (
                    <button
                      type="button"
                      class={isOver ? '' : 'primary'}
                      aria-label={`${playWords(round, isOver)}: ${DRILL.deal(place + 1, deal.title)}`}
                      onClick={() => play(place, isOver)}
                    >
                      {playWords(round, isOver)}
                    </button>
                  )}
                  {isOpen && round && repairOf(round) !== null && (
                    <RepairForm
                      deal={deal.id}
                      round={round}
                      onSend={(questions) => isNameMissing() || model.sendRepaired(deal.id, questions)}
                    />
                  )}
                </li>
              );
            })}
          </ol>
        </section>
        <ul class="told">
          {promises(terms, drill).map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
        <WaysFolded mode="class" terms={tableTerms} />
      </main>
    </>
  );
}

/** One that was rejected may still be played so that it counts. */
function isSent(round: PlayedRound | undefined): boolean {
  return round !== undefined && round.state !== 'playing' && round.state !== 'rejected';
}
