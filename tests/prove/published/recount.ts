// What ought to be told of a published drill, counted from what was sent and written apart from the product.
import type { AnswerChoice } from '../../../shared-engine/rules/exchange/command.ts';

/** Answers at one question in words, as many as there are players told of. */
type Told = Map<string, string[]>;

const STEPS = [
  'first-right',
  'first-across',
  'first-left',
  'vote',
  'second-left',
  'second-across',
  'second-right',
  'courtesy-ask',
  'courtesy-pass',
];
/** Where arriving tiles may be passed on blind. */
const BLIND = ['first-left', 'second-right'];

/** One line for each number that is told: `vote|vote|1|37`, and `vote|vote|other|4`. */
export function recounted(rounds: readonly (readonly AnswerChoice[])[]): string[] {
  const told: Told = new Map();
  const held: Told = new Map();
  for (let from = 0, to = 10; to <= rounds.length; from = to, to += 5) {
    for (const round of rounds.slice(from, to)) {
      for (const answer of round) for (const [key, text] of wordsOf(answer)) listAt(held, key).push(text);
    }
    takeOver(told, held);
  }
  return STEPS.flatMap((step) => linesAt(step, told));
}

function takeOver(told: Told, held: Told): void {
  const isTaken: Record<string, boolean> = {};
  for (const step of STEPS) {
    const questions = questionsAt(step).filter((key) => held.has(key));
    if (questions.length === 0) continue;
    const isMixed = questionsAt(step).every((key) => new Set(held.get(key)).size > 1);
    const before = step === 'courtesy-pass' ? 'courtesy-ask' : step.startsWith('second') ? 'vote' : null;
    isTaken[step] =
      isMixed && (before === null || (isTaken[before] === true && linesAt(before, told).length > 0));
    if (!isTaken[step]) continue;
    for (const key of questions) {
      listAt(told, key).push(...held.get(key)!);
      held.delete(key);
    }
  }
}

function linesAt(step: string, told: Told): string[] {
  const shown = questionsAt(step).map((key) => ({ key, ...shownAt(told.get(key) ?? []) }));
  return shown.flatMap(({ key, cells, other }) => {
    if (cells.length + (other > 0 ? 1 : 0) < 2) return [];
    if (key.endsWith('blind') && !agrees({ cells, other }, shown.at(-1)!)) return [];
    return [
      ...cells.map(([text, count]) => `${key}|${text}|${count}`),
      ...(other > 0 ? [`${key}|other|${other}`] : []),
    ];
  });
}

type Cell = readonly [string, number];

/** Twelve of three or more at most; the others together, who take the smallest along where they are one or two. */
function shownAt(answers: readonly string[]): { cells: Cell[]; other: number } {
  const counts = new Map<string, number>();
  for (const answer of answers) counts.set(answer, (counts.get(answer) ?? 0) + 1);
  const sorted = [...counts].sort((a, b) => b[1] - a[1] || (a[0] < b[0] ? -1 : 1));
  const cells = sorted.filter(([, count]) => count >= 3).slice(0, 12);
  let other = answers.length - cells.reduce((sum, [, count]) => sum + count, 0);
  while (other > 0 && other < 3 && cells.length > 0) other += cells.pop()![1];
  return { cells, other };
}

/** Whoever takes the passes told from the numbers passed blind is left with nobody or with three. */
function agrees(blind: { cells: Cell[]; other: number }, passes: { cells: Cell[]; other: number }): boolean {
  const isTold = passes.cells.length + (passes.other > 0 ? 1 : 0) >= 2;
  const known = isTold ? passes.cells : [];
  const blindOf = (text: string) => String(3 - (text === '' ? 0 : text.split(' ').length));
  const left = (count: number, some: readonly Cell[]) => count - some.reduce((sum, [, one]) => sum + one, 0);
  const isFine = (rest: number) => rest === 0 || rest >= 3;
  const others = known.filter(([text]) => !blind.cells.some(([number]) => number === blindOf(text)));
  return (
    isFine(left(blind.other, others)) &&
    blind.cells.every(([number, count]) =>
      isFine(
        left(
          count,
          known.filter(([text]) => blindOf(text) === number),
        ),
      ),
    )
  );
}

function wordsOf(answer: AnswerChoice): [string, string][] {
  if (answer.kind === 'vote') return [['vote|vote', answer.go ? '1' : '0']];
  if (answer.kind === 'ask') return [['courtesy-ask|ask', String(answer.count)]];
  const tiles: [string, string] = [`${answer.step}|pass`, inRackOrder(answer.tiles)];
  return BLIND.includes(answer.step) ? [[`${answer.step}|blind`, String(answer.blind)], tiles] : [tiles];
}

function questionsAt(step: string): string[] {
  if (step === 'vote') return ['vote|vote'];
  if (step === 'courtesy-ask') return ['courtesy-ask|ask'];
  return BLIND.includes(step) ? [`${step}|blind`, `${step}|pass`] : [`${step}|pass`];
}

const ORDER = [
  ...['bam', 'crak', 'dot'].flatMap((suit) =>
    [1, 2, 3, 4, 5, 6, 7, 8, 9].map((number) => `${suit}-${number}`),
  ),
  ...['east', 'south', 'west', 'north', 'green', 'red', 'white', 'flower', 'joker'],
];

function inRackOrder(tiles: readonly string[]): string {
  return [...tiles].sort((a, b) => ORDER.indexOf(a) - ORDER.indexOf(b)).join(' ');
}

function listAt(lists: Told, key: string): string[] {
  const list = lists.get(key) ?? [];
  lists.set(key, list);
  return list;
}
