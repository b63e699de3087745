// What an exchange costs in processor time, measured in turns of two set-ups, so that other load meets both alike.
import type { Figures } from '../bench.ts';
import type { Reply } from './driver.ts';
import { rounded, spreadOf } from './side-by-side.ts';

/** Exchanges until a server's code is compiled. */
const WARM_UP = 8000;
const SPAN_MS = 3000;
const TURNS = 5;

export interface SetUp {
  readonly name: string;
  /** Plays at full speed for so many milliseconds, at one server or several at once. */
  play(ms: number): Promise<readonly Reply[]>;
  /** Milliseconds of processor time used so far by everything that is measured. */
  cpu(): Promise<number>;
}

interface Measured {
  /** Microseconds of processor time an exchange. */
  readonly us: number;
  readonly perSecond: number;
  readonly driverCpu: number;
}

/** Each set-up by itself, and how much of the first one's rate for the same processor time the others reach. */
export async function costsOf(setUps: readonly SetUp[]): Promise<Figures> {
  for (const setUp of setUps) await warmUp(setUp);
  const turns: Measured[][] = [];
  for (let turn = 0; turn < TURNS; turn++) {
    const measured: Measured[] = [];
    for (const setUp of setUps) measured.push(await measure(setUp));
    turns.push(measured);
  }
  return Object.assign({}, ...setUps.map((_, n) => figuresOf(setUps, turns, n)));
}

async function warmUp(setUp: SetUp): Promise<void> {
  for (let made = 0; made < WARM_UP; ) made += exchangesIn(await setUp.play(SPAN_MS));
}

async function measure(setUp: SetUp): Promise<Measured> {
  const used = await setUp.cpu();
  const replies = await setUp.play(SPAN_MS);
  const made = exchangesIn(replies);
  return {
    us: ((await setUp.cpu()) - used) * (1000 / made),
    perSecond: made / (SPAN_MS / 1000),
    driverCpu: Math.max(...replies.map(({ cpu }) => cpu)),
  };
}

function exchangesIn(replies: readonly Reply[]): number {
  return replies.reduce((sum, { times }) => sum + times.length, 0);
}

function figuresOf(setUps: readonly SetUp[], turns: readonly Measured[][], n: number): Figures {
  const { name } = setUps[n]!;
  const own = turns.map((turn) => turn[n]!);
  const ratio = spreadOf(turns.map((turn) => turn[0]!.us / turn[n]!.us));
  return {
    [`${name}_us`]: Math.round(spreadOf(own.map(({ us }) => us)).middle ?? 0),
    [`${name}_exchanges_per_s`]: Math.round(spreadOf(own.map(({ perSecond }) => perSecond)).middle ?? 0),
    [`${name}_driver_cpu`]: rounded(Math.max(...own.map(({ driverCpu }) => driverCpu))),
    ...(n > 0 && {
      [`${name}_vs_${setUps[0]!.name}_cpu`]: ratio.middle,
      [`${name}_vs_${setUps[0]!.name}_cpu_lowest`]: ratio.lowest,
      [`${name}_vs_${setUps[0]!.name}_cpu_highest`]: ratio.highest,
    }),
  };
}
