// Works out what hands come to, each once, a few milliseconds at a time: a key typed meanwhile never waits for a whole card.
import { signal } from '@preact/signals';
import {
  type CardFile,
  type CardPattern,
  type PatternReport,
  reportingPattern,
} from '../../../shared-engine/index.ts';

/** So long, in ms, anything may be worked out at a stretch, and at once in each window of time. */
const SLICE_MS = 6;
const WINDOW_MS = 50;
/** What waits is drawn again so often, in ms, until all is worked out. */
const TURN_MS = 150;

/** What a hand comes to; while it is still being worked out its problems are not known, and its ways are 0. */
export interface HandReport extends PatternReport {
  readonly isCounted: boolean;
}

interface Counting {
  readonly year: number | undefined;
  readonly steps: Iterator<undefined, PatternReport>;
  report: HandReport;
}

const known = new WeakMap<CardPattern, Counting>();
/** Not worked out yet, the one wanted last at the end. */
const waiting: Counting[] = [];
let isScheduled = false;
let windowStart = Number.NEGATIVE_INFINITY;
let spent = 0;
let lastTurn = 0;

/** Changes when something that was waited for has been worked out; whoever drew less reads it and draws again. */
const turn = signal(0);

/** What is known of a hand now; the rest follows by itself. */
export function reportOf(pattern: CardPattern, parameters: CardFile['parameters']): HandReport {
  const counting = countingOf(pattern, parameters);
  if (!counting.report.isCounted && !countAtOnce(counting)) {
    void turn.value;
    if (!waiting.includes(counting)) waiting.push(counting);
    schedule();
  }
  return counting.report;
}

/** The same worked out to its end, however long that takes. */
export function wholeReportOf(pattern: CardPattern, parameters: CardFile['parameters']): HandReport {
  const counting = countingOf(pattern, parameters);
  while (!counting.report.isCounted) count(counting);
  return counting.report;
}

function countingOf(pattern: CardPattern, parameters: CardFile['parameters']): Counting {
  const year = yearIn(pattern, parameters);
  const last = known.get(pattern);
  if (last && last.year === year) return last;
  const tiles = pattern.groups.reduce((sum, { size }) => sum + size, 0);
  const counting: Counting = {
    year,
    steps: reportingPattern(pattern, parameters),
    report: { tiles, hands: 0, choices: 0, problems: [], isCounted: false },
  };
  known.set(pattern, counting);
  return counting;
}

/** The year of the card as far as the hand uses its digits: with another year every other hand stays as it is. */
export function yearIn({ groups }: CardPattern, { year }: CardFile['parameters']): number | undefined {
  return groups.some(({ tile }) => 'yearDigit' in tile) ? year : undefined;
}

/** One step. */
function count(counting: Counting): void {
  const step = counting.steps.next();
  if (step.done) counting.report = { ...step.value, isCounted: true };
}

/** False where it takes longer than there is time for now. */
function countAtOnce(counting: Counting): boolean {
  const started = performance.now();
  if (started - windowStart > WINDOW_MS) [windowStart, spent] = [started, 0];
  let now = started;
  while (!counting.report.isCounted && spent + now - started < SLICE_MS) {
    count(counting);
    now = performance.now();
  }
  spent += now - started;
  return counting.report.isCounted;
}

function schedule(): void {
  if (isScheduled) return;
  isScheduled = true;
  setTimeout(slice);
}

function slice(): void {
  isScheduled = false;
  const end = performance.now() + SLICE_MS;
  while (waiting.length > 0 && performance.now() < end) {
    const last = waiting.at(-1)!;
    if (last.report.isCounted) waiting.pop();
    else count(last);
  }
  if (waiting.length > 0) schedule();
  if (waiting.length > 0 && performance.now() - lastTurn < TURN_MS) return;
  lastTurn = performance.now();
  turn.value++;
}
