// Every choice of the exchange that is over, with its verdict and its judgement to be opened again.
import { type LaidExchange, laidRecord } from '../../../shared-engine/index.ts';
import { COACH } from '../../coach/strings.ts';
import { STEP_NAMES } from '../../room/step-names.ts';
import { ChoiceShort } from '../question/choice-short.tsx';
import type { Judge } from '../question/judged.ts';
import { type Chart, JudgementView } from '../question/judgement-view.tsx';
import { verdictWords } from '../question/verdict-words.ts';
import type { OwnTable } from './own-table.ts';
import { OWN_TILES } from './strings.ts';

interface ChoicesSoFarProps {
  readonly judge: Judge;
  readonly chart: Chart;
  readonly own: OwnTable;
  /** As the exchange stood before each entry. */
  readonly exchanges: readonly LaidExchange[];
}

export function ChoicesSoFar({ judge, chart, own, exchanges }: ChoicesSoFarProps) {
  const over = own.entries.flatMap((entry, place) =>
    // The last choice stands above as long as its outcome is awaited.
    entry.kind === 'choice' && place < own.entries.length - 1
      ? [{ choice: entry.choice, record: laidRecord(exchanges[place]!) }]
      : [],
  );
  if (over.length === 0) return null;
  return (
    <section aria-label={OWN_TILES.steps}>
      <h2>{OWN_TILES.steps}</h2>
      <ol class="own-choices">
        {over.map(({ choice, record }) => (
          <li key={choice.step}>
            <details
              class="panel"
              onToggle={(event) => event.currentTarget.open && judge.ask(record, choice)}
            >
              <summary>
                {STEP_NAMES[choice.step]} <ChoiceShort choice={choice} />{' '}
                <span class="verdict-name">{verdictWords(judge.of(record, choice))}</span>
              </summary>
              {own.helped.includes(choice.step) && <p class="aside">{COACH.helped}</p>}
              <JudgementView
                judge={judge}
                record={record}
                choice={choice}
                title={OWN_TILES.judged}
                chart={chart}
              />
            </details>
          </li>
        ))}
      </ol>
    </section>
  );
}
