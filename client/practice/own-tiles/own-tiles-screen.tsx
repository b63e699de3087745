// Practice with real tiles: the exchange of one seat is laid in step by step, and every choice is judged.
import { useSignal } from '@preact/signals';
import { useEffect, useMemo } from 'preact/hooks';
import {
  type AnswerChoice,
  type CompiledCard,
  facesOf,
  type LaidEntry,
  type LaidExchange,
  laidDecision,
  laidRecord,
  layAll,
} from '../../../shared-engine/index.ts';
import { CoachPanel } from '../../coach/coach-panel.tsx';
import { STEP_NAMES } from '../../room/step-names.ts';
import type { TextStorage } from '../../storage/browser-storage.ts';
import { TileRow } from '../../tiles/tile-row.tsx';
import { fileName, saveFile } from '../../ui/save-file.ts';
import type { StartDeepAnalysis } from '../../workers/deep-analysis.ts';
import { DecisionForm } from '../question/decision-form.tsx';
import { judgedBy } from '../question/strings.ts';
import { ChoicesSoFar } from './choices-so-far.tsx';
import { drillOfTable } from './drill-of-table.ts';
import { createJudge, type Judge } from './judged.ts';
import { type Chart, JudgementView } from './judgement-view.tsx';
import { OutcomeForm } from './outcome-form.tsx';
import { EMPTY_TABLE, type OwnTable, readOwnTable, storeOwnTable } from './own-table.ts';
import { SetUp } from './set-up.tsx';
import { asks, OWN_TILES } from './strings.ts';
import '../../tiles/tiles.css';
import '../history/history.css';
import '../question/question.css';
import './own-tiles.css';

interface OwnTilesProps {
  readonly storage: TextStorage;
  /** The card that choices are judged by. */
  readonly card: CompiledCard;
  readonly startDeepAnalysis: StartDeepAnalysis;
  readonly newSeed: () => string;
  readonly chart: Chart;
}

export function OwnTilesScreen({ storage, card, startDeepAnalysis, newSeed, chart }: OwnTilesProps) {
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
      <p class="about">{judgedBy(card.name)}</p>
      {own.value.begun ? (
        <Exchange
          own={own.value}
          judge={judge}
          newSeed={newSeed}
          chart={chart}
          card={card}
          onChange={change}
        />
      ) : (
        <SetUp own={own.value} onChange={change} />
      )}
    </main>
  );
}

interface ExchangeProps {
  readonly own: OwnTable;
  readonly judge: Judge;
  readonly newSeed: () => string;
  readonly chart: Chart;
  readonly card: CompiledCard;
  readonly onChange: (own: OwnTable) => void;
}

function Exchange({ own, judge, newSeed, chart, card, onChange }: ExchangeProps) {
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
    judge.ask(now, choice);
    lay({ kind: 'choice', choice });
  };
  const before = exchanges.at(-2);
  return (
    <>
      {isOver ? (
        <section class="own-step">
          <h2>{OWN_TILES.over}</h2>
          <p>{OWN_TILES.final}</p>
          <TileRow tiles={facesOf(now.rack)} />
        </section>
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
                  judge.ask(now, choice);
                }}
              />
            </section>
          )}
          {decision?.kind === 'pass' && (
            <CoachPanel
              key={decision.step}
              choice={{ record: laidRecord(now), decision }}
              loadCard={() => Promise.resolve(card)}
              onHelp={() => onChange({ ...own, helped: [...new Set([...own.helped, decision.step])] })}
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
          exchange={now}
          choice={compared.value}
          title={OWN_TILES.judgedBefore}
          chart={chart}
        />
      )}
      {now.chosen && before && (
        <JudgementView
          judge={judge}
          exchange={before}
          choice={now.chosen}
          title={OWN_TILES.judged}
          chart={chart}
        />
      )}
      <ChoicesSoFar judge={judge} chart={chart} own={own} exchanges={exchanges} />
      <div class="row">
        <button
          type="button"
          onClick={() => {
            problem.value = null;
            compared.value = null;
            onChange(
              own.entries.length === 0
                ? { ...own, begun: false }
                : { ...own, entries: own.entries.slice(0, -1) },
            );
          }}
        >
          {OWN_TILES.back}
        </button>
        <button type="button" onClick={() => onChange({ ...EMPTY_TABLE, table: own.table })}>
          {OWN_TILES.again}
        </button>
        <button
          type="button"
          onClick={() => {
            const drill = drillOfTable(own, newSeed());
            saveFile(`${fileName(drill.title)}.json`, 'application/json', JSON.stringify(drill, null, 2));
          }}
        >
          {OWN_TILES.drill}
        </button>
      </div>
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
