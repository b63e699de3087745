// Practice with real tiles: the exchange of one seat is laid in step by step, and every choice is judged.
import { useSignal } from '@preact/signals';
import { useEffect, useMemo } from 'preact/hooks';
import {
  type AnswerChoice,
  type CardFile,
  type CompiledCard,
  facesOf,
  type LaidEntry,
  type LaidExchange,
  laidDecision,
  laidRecord,
  layAll,
  type Step,
} from '../../../shared-engine/index.ts';
import type { App } from '../../app/routes/app.ts';
import { CoachPanel } from '../../coach/coach-panel.tsx';
import { STEP_NAMES } from '../../room/step-names.ts';
import type { TextStorage } from '../../storage/browser-storage.ts';
import type { StartDeepAnalysis } from '../../workers/deep-analysis.ts';
import { DecisionForm } from '../question/decision-form.tsx';
import { createJudge, type Judge } from '../question/judged.ts';
import { type Chart, JudgementView } from '../question/judgement-view.tsx';
import { judgedBy } from '../question/strings.ts';
import { ChoicesSoFar } from './choices-so-far.tsx';
import { ExchangeOver } from './exchange-over.tsx';
import { OutcomeForm } from './outcome-form.tsx';
import { type OwnTable, readOwnTable, storeOwnTable } from './own-table.ts';
import { SetUp } from './set-up.tsx';
import { asks, OWN_TILES } from './strings.ts';
import { TableButtons } from './table-buttons.tsx';
import '../../tiles/tiles.css';
import '../history/history.css';
import '../question/question.css';
import './own-tiles.css';

interface OwnTilesProps {
  readonly app: App;
  readonly storage: TextStorage;
  readonly now: () => number;
  /** The card that choices are judged by, and as it was written. */
  readonly card: CompiledCard;
  readonly file: CardFile;
  /** Said where it is not the card that was chosen; null where it is. */
  readonly instead: string | null;
  readonly startDeepAnalysis: StartDeepAnalysis;
  readonly newSeed: () => string;
  readonly chart: Chart;
}

export function OwnTilesScreen(props: OwnTilesProps) {
  const { storage, card, instead, startDeepAnalysis } = props;
  const own = useSignal(useMemo(() => readOwnTable(storage), []));
  const judge = useMemo(() => createJudge(card, startDeepAnalysis), []);
  useEffect(() => judge.stop, [judge]);
  const change = (next: OwnTable) => {
    own.value = next;
    storeOwnTable(storage, next);
  };
  return (
    <main class="practice own-tiles">
      <h1>{OWN_TILES.title}</h1>
      <p class="about">{judgedBy(card.name, instead)}</p>
      {own.value.begun ? (
        <Exchange {...props} own={own.value} judge={judge} onChange={change} />
      ) : (
        <SetUp own={own.value} onChange={change} />
      )}
    </main>
  );
}

interface ExchangeProps extends OwnTilesProps {
  readonly own: OwnTable;
  readonly judge: Judge;
  readonly onChange: (own: OwnTable) => void;
}

function Exchange(props: ExchangeProps) {
  const { own, judge, chart, card, onChange } = props;
  const compared = useSignal<AnswerChoice | null>(null);
  const problem = useSignal<string | null>(null);
  const exchanges = exchangesOf(own);
  const now = exchanges.at(-1)!;
  const decision = laidDecision(now);
  const isOver = now.stage.phase === 'closed';
  const lay = (entry: LaidEntry) => {
    const entries = [...own.entries, entry];
    const result = layAll(own.table, own.tiles, entries);
    problem.value = result.ok ? null : result.message;
    if (!result.ok) return;
    compared.value = null;
    onChange({ ...own, entries });
  };
  const choose = (choice: AnswerChoice) => {
    judge.ask(laidRecord(now), choice);
    lay({ kind: 'choice', choice });
  };
  const helped = (step: Step) => onChange({ ...own, helped: [...new Set([...own.helped, step])] });
  const before = exchanges.at(-2);
  return (
    <>
      {isOver ? (
        <ExchangeOver {...props} exchanges={exchanges} />
      ) : (
        <>
          {decision && (
            <section class="own-step" aria-labelledby="own-step-title">
              <h2 id="own-step-title">{STEP_NAMES[decision.step]}</h2>
              <p>{asks(decision)}</p>
              <DecisionForm
                key={decision.step}
                rack={facesOf(now.rack)}
                decision={decision}
                onAnswer={choose}
                onCompare={(choice) => {
                  compared.value = choice;
                  judge.ask(laidRecord(now), choice);
                  helped(decision.step);
                }}
              />
            </section>
          )}
          {decision && (
            <CoachPanel
              key={decision.step}
              choice={{ record: laidRecord(now), decision }}
              loadCard={() => Promise.resolve(card)}
              onHelp={() => helped(decision.step)}
            />
          )}
          <OutcomeForm exchange={now} onOutcome={lay} />
        </>
      )}
      <p class="notice" role="alert">
        {problem.value}
      </p>
      {compared.value && (
        <JudgementView
          judge={judge}
          record={laidRecord(now)}
          choice={compared.value}
          title={OWN_TILES.judgedBefore}
          chart={chart}
        />
      )}
      {now.chosen && before && (
        <JudgementView
          judge={judge}
          record={laidRecord(before)}
          choice={now.chosen}
          title={OWN_TILES.judged}
          chart={chart}
        />
      )}
      <ChoicesSoFar judge={judge} chart={chart} own={own} exchanges={exchanges} />
      <TableButtons
        {...props}
        exchange={now}
        onBack={() => {
          problem.value = null;
          compared.value = null;
        }}
      />
    </>
  );
}

/** As it stood before each entry, and last as it stands. */
function exchangesOf({ table, tiles, entries }: OwnTable): readonly LaidExchange[] {
  return [...entries, null].flatMap((_, place) => {
    const result = layAll(table, tiles, entries.slice(0, place));
    return result.ok ? [result.exchange] : [];
  });
}
