// One deal of a published drill at the table, with the teacher's texts and what others chose above it.
import { useSignal } from '@preact/signals';
import { useMemo, useRef } from 'preact/hooks';
import type { SeatStep, Step } from '../../../shared-engine/index.ts';
import type { App } from '../../app/routes/app.ts';
import type { PublishedTables, Screen } from '../../room/screen.ts';
import type { DrillOnDevice } from '../../storage/published.ts';
import { TileText } from '../../tiles/tile-text.tsx';
import { Comparison } from './comparison.tsx';
import { QuestionForm } from './question-form.tsx';
import { DRILL, roundWords } from './strings.ts';
import type { DrillModel } from './use-drill.ts';

/** A deal at the table: its place in the drill, and whether it counts no more. */
export interface Playing {
  readonly place: number;
  readonly isPractice: boolean;
}

interface DrillTableProps {
  readonly app: App;
  readonly model: DrillModel;
  readonly device: DrillOnDevice;
  readonly playing: Playing;
  readonly tables: PublishedTables;
  readonly onLeave: () => void;
}

export function DrillTable({ app, model, device, playing, tables, onLeave }: DrillTableProps) {
  const { RoomScreen, publishedRoom } = tables;
  const { place, isPractice } = playing;
  const { drill, rounds, released } = device;
  const deal = drill.deals[place]!;
  const isOver = useSignal(false);
  // Of this table: another tab may play the same deal.
  const chosen = useRef(isPractice ? [] : (rounds[deal.id]?.answers ?? []));
  const room = useMemo(
    () =>
      publishedRoom({
        drill,
        place,
        key: `${drill.code}.${place}`,
        keptAs: 'class',
        name: app.settings.peek().name,
        answers: chosen.current,
        store(answers) {
          if (isPractice || isOver.peek()) return;
          chosen.current = answers;
          model.play(deal.id, () => ({ answers }));
        },
        onClosed() {
          isOver.value = true;
          if (isPractice) return;
          model.play(deal.id, () => ({ answers: chosen.current, state: 'waiting' }));
          model.load();
        },
        onNext: onLeave,
      }),
    [],
  );
  const round = rounds[deal.id];
  return (
    <RoomScreen
      app={app}
      open={() => room}
      guide={(screen) => (
        <section class="deal-texts published-texts" aria-label={DRILL.deal(place + 1, deal.title)}>
          <p class="aside">
            {DRILL.deal(place + 1, deal.title)} {isPractice && DRILL.practice}
          </p>
          {deal.task && (
            <p class="task">
              <TileText text={deal.task} />
            </p>
          )}
          <div class="published-folds">
            <button type="button" class="quiet-button" onClick={onLeave}>
              {DRILL.all}
            </button>
            {screen.kind === 'playing' && !isPractice && (
              <QuestionForm
                step={openStep(screen)}
                asked={round?.questions ?? []}
                onAsk={(question) =>
                  model.play(deal.id, ({ questions }) => ({ questions: [...questions, question] }))
                }
              />
            )}
            <Comparison
              key={screen.kind}
              steps={stepsToCompare(screen, isPractice || drill.terms.compare === 'at-once')}
              comments={deal.comments}
              names={drill.terms.names}
              released={released.find((one) => one.deal === deal.id) ?? null}
              isOpen={drill.state === 'open'}
            />
          </div>
          {screen.kind === 'closed' && !isPractice && (
            <p class="aside" role="status">
              {roundWords(round, { counted: false, state: drill.state })}
            </p>
          )}
        </section>
      )}
    />
  );
}

/** The steps at which the player has chosen: all when the deal is over, before that the last one where that is shown. */
function stepsToCompare(screen: Screen, atOnce: boolean): readonly Step[] {
  if (screen.kind !== 'playing' && screen.kind !== 'closed') return [];
  const { view, you } = screen.seated;
  const steps = view.record.steps.filter((step) => step.by[you] === 'player').map(stepNameOf);
  if (screen.kind === 'closed') return steps;
  return atOnce ? steps.slice(-1) : [];
}

function stepNameOf(step: SeatStep): Step {
  if (step.kind === 'move') return step.step;
  return step.kind === 'vote' ? 'vote' : 'courtesy-ask';
}

function openStep({ seated: { view } }: Screen & { kind: 'playing' }): Step {
  const { stage } = view;
  if (stage.phase === 'voting') return 'vote';
  if (stage.phase === 'asking') return 'courtesy-ask';
  return stage.phase === 'passing' ? stage.step : 'courtesy-pass';
}
