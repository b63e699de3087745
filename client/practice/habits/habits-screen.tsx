// What keeps costing somebody: one sentence, then the cost by kind of step and by kind of mistake.
import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import {
  aimsOver,
  type HabitRow,
  type Habits,
  habitsOf,
  type LedgerLine,
  ledgerLine,
} from '../../../shared-engine/index.ts';
import type { App } from '../../app/routes/app.ts';
import { PageLink } from '../../app/routes/page-link.tsx';
import type { StorageProblem } from '../../storage/history/database.ts';
import { listRounds } from '../../storage/history/rounds.ts';
import { Bar } from '../../ui/bar.tsx';
import type { StartDeepAnalysis } from '../../workers/deep-analysis.ts';
import { finishRounds } from '../history/finish-rounds.ts';
import { StillLooking } from '../history/still-looking.tsx';
import { STORAGE_PROBLEMS } from '../history/strings.ts';
import { CostLine } from './cost-line.tsx';
import {
  aimWords,
  allChoices,
  HABITS,
  habitCounts,
  headline,
  helpedWords,
  intervalWords,
  METHOD,
  mistakeName,
  rowWords,
  stepKindName,
  stepLine,
} from './strings.ts';
import '../history/history.css';
import './habits.css';

interface HabitsScreenProps {
  readonly app: App;
  readonly startDeepAnalysis: StartDeepAnalysis;
}

export function HabitsScreen({ app, startDeepAnalysis }: HabitsScreenProps) {
  const habits = useSignal<Habits | null>(null);
  const line = useSignal<LedgerLine | null>(null);
  const aims = useSignal<string | null>(null);
  const problem = useSignal<StorageProblem | null>(null);
  const unfinished = useSignal(0);
  useEffect(() => {
    async function load() {
      const listed = await listRounds();
      problem.value = listed.ok ? null : listed.problem;
      habits.value = habitsOf(listed.ok ? listed.value : []);
      line.value = listed.ok ? ledgerLine(listed.value) : null;
      aims.value = listed.ok ? aimWords(aimsOver(listed.value)) : null;
    }
    let cancel = () => {};
    let isLeft = false;
    // What is known is shown first: rounds without verdicts are read and judged after it.
    void load().then(() => {
      if (isLeft) return;
      cancel = finishRounds({
        startDeepAnalysis,
        onLeft(left) {
          // What is shown stays as it is until there is nothing more to come.
          if (left === 0 && unfinished.value > 0) void load();
          unfinished.value = left;
        },
      });
    });
    return () => {
      isLeft = true;
      cancel();
    };
  }, [startDeepAnalysis, habits, line, aims, problem, unfinished]);
  return (
    <>
      <Bar app={app} home />
      <main class="practice">
        <h1>{HABITS.title}</h1>
        {problem.value && (
          <p class="notice" role="alert">
            {STORAGE_PROBLEMS[problem.value]}
          </p>
        )}
        {habits.value === null ? (
          <p role="status">{HABITS.opening}</p>
        ) : (
          <Sums habits={habits.value} line={line.value} />
        )}
        {aims.value && (
          <section class="round-group">
            <h2>{HABITS.aims}</h2>
            <p>{aims.value}</p>
          </section>
        )}
        <StillLooking left={unfinished.value} />
        {habits.value?.rounds === 0 ? (
          <PageLink app={app} route={{ kind: 'days' }} button>
            {HABITS.day}
          </PageLink>
        ) : (
          <PageLink app={app} route={{ kind: 'exercises' }} button>
            {HABITS.exercises}
          </PageLink>
        )}
        <PageLink app={app} route={{ kind: 'racks' }}>
          {HABITS.racks}
        </PageLink>
        <PageLink app={app} route={{ kind: 'rounds' }}>
          {HABITS.rounds}
        </PageLink>
      </main>
    </>
  );
}

interface SumsProps {
  readonly habits: Habits;
  readonly line: LedgerLine | null;
}

function Sums({ habits, line }: SumsProps) {
  const helped = helpedWords(habits);
  const said = [habitCounts(habits), stepLine(habits)].filter((words) => words !== null);
  return (
    <>
      <p class="habit-headline">{headline(habits)}</p>
      {said.map((words) => (
        <p key={words} class="habit-said">
          {words}
        </p>
      ))}
      {habits.rounds > 0 && (
        <>
          {helped && <p>{helped}</p>}
          {line && <CostLine line={line} />}
          <Kinds title={HABITS.steps} rows={habits.steps} name={stepKindName} />
          {habits.mistakes.length === 0 ? (
            <p>{HABITS.noMistakes}</p>
          ) : (
            <Kinds title={HABITS.mistakes} rows={habits.mistakes} name={mistakeName} />
          )}
          <details class="panel">
            <summary>{HABITS.how}</summary>
            <p>{allChoices(habits)}</p>
            {METHOD.map((words) => (
              <p key={words}>{words}</p>
            ))}
          </details>
        </>
      )}
    </>
  );
}

interface KindsProps<Kind extends string> {
  readonly title: string;
  readonly rows: readonly HabitRow<Kind>[];
  readonly name: (kind: Kind) => string;
}

function Kinds<Kind extends string>({ title, rows, name }: KindsProps<Kind>) {
  const most = Math.max(0.1, ...rows.filter(({ isSaid }) => isSaid).map(({ perRound }) => perRound));
  return (
    <section class="round-group">
      <h2>{title}</h2>
      <p class="aside">{HABITS.unit}</p>
      <ul class="habits">
        {rows.map((row) => (
          <li key={row.kind} class={row.isSaid ? 'habit' : 'habit few'}>
            <span>{name(row.kind)}</span>
            <span class="habit-words">{rowWords(row)}</span>
            {row.isSaid && (
              <svg class="habit-bar" viewBox="0 0 100 6" preserveAspectRatio="none" aria-hidden="true">
                <rect width={(100 * row.perRound) / most} height="6" />
              </svg>
            )}
          </li>
        ))}
      </ul>
      <details class="panel">
        <summary>{HABITS.numbers}</summary>
        <table class="habit-numbers">
          <thead>
            <tr>
              <th scope="col">{HABITS.kind}</th>
              <th scope="col">{HABITS.cases}</th>
              <th scope="col">{HABITS.cost}</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={row.kind}>
                <th scope="row">{name(row.kind)}</th>
                <td>{row.cases}</td>
                <td>{row.isSaid ? intervalWords(row) : rowWords(row)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </details>
    </section>
  );
}
