// Described racks: drawn evenly, told how rare with an honest interval, and refused in words where there are none.
import { houseCard } from '../../../shared-engine/card/house/card.ts';
import type { Constraint } from '../../../shared-engine/drill/format.ts';
import { sampleRack, sampleRackWithRarity } from '../../../shared-engine/drill/sampled.ts';
import { samplerFor } from '../../../shared-engine/drill/sampler.ts';
import { shapesOf } from '../../../shared-engine/drill/shapes.ts';
import { createSwarKernel } from '../../../shared-engine/kernels/tiles-to-go/swar.ts';
import { stream } from '../../../shared-engine/rules/deal/random.ts';
import { facesOf } from '../../../shared-engine/rules/tiles/bag.ts';
import type { Face } from '../../../shared-engine/rules/tiles/face.ts';
import {
  drawnRacks,
  evenness,
  everySmallRack,
  feasible,
  fitsByDefinition,
  smallDrawer,
} from '../../kit/drills.ts';
import { binomials, racksWithLikeUpTo, racksWithRowUpTo } from '../../outside/rack-kinds.ts';
import type { Proof, ProofRow, Size } from '../proof.ts';
import { NORMAL_POINT, wilson } from '../statistics/wilson.ts';

interface Amounts {
  /** Racks drawn for each constraint on the small set. */
  readonly draws: number;
  /** Interval checks for each kind whose true share is known. */
  readonly intervals: number;
  readonly derived: number;
}
const AMOUNTS: Record<Size, Amounts> = {
  small: { draws: 30_000, intervals: 60, derived: 200 },
  full: { draws: 400_000, intervals: 600, derived: 3_000 },
};

/** Two-sided one in a thousand, for a seed chosen beforehand. */
const BAR = 3.29;

export const proof: Proof = {
  summary:
    'Racks that fit a constraint are drawn evenly, with honest intervals; impossible constraints are refused in words.',
  async run({ seed, size }) {
    const amounts = AMOUNTS[size];
    return [
      ...counting(),
      ...small(seed, amounts.draws),
      ...intervals(seed, amounts.intervals),
      soundness(seed, amounts.derived),
      ...refusals(seed),
    ];
  },
};

const kernel = createSwarKernel(houseCard());

function counting(): ProofRow[] {
  return [13, 14].map((size) => {
    const ways = shapesOf(size).reduce((sum, shape) => sum + shape.ways, 0n);
    const all = binomials(152, size)[size]!;
    return {
      what: `sets of ${size} tiles over all shapes`,
      value: ways.toString(),
      bar: `C(152, ${size}) = ${all}`,
      ok: ways === all,
    };
  });
}

const SMALL_SIZE = 5;
const SMALL_CONSTRAINTS: readonly (readonly [string, Constraint])[] = [
  ['anything', {}],
  ['one joker, a flower or more', { jokers: 1, flowers: { from: 1 } }],
  ['no pair', { pairs: 0 }],
  ['a pung', { pungs: { from: 1 } }],
  ['three or four in a row', { inARow: { from: 3 } }],
  ['three like numbers, no joker', { likeNumbers: 3, jokers: 0 }],
  ['two pairs, nearest to bookends', { pairs: { from: 2 }, section: 'bookends' }],
  ['at most 10 to go, two in a row at most', { toGo: { to: 10 }, inARow: { to: 2 } }],
];

function small(seed: string, draws: number): ProofRow[] {
  const every = everySmallRack(SMALL_SIZE);
  const rows = SMALL_CONSTRAINTS.map(([name, constraint]): ProofRow => {
    const due = new Map([...every].filter(([key]) => fitsByDefinition(facesIn(key), constraint, kernel)));
    const drawn = drawnRacks(smallDrawer(constraint, SMALL_SIZE, kernel, `${seed} ${name}`), draws);
    const { racks, strangers, df, z } = evenness(due, drawn);
    return {
      what: `${name}: ${draws} draws over ${racks} racks of ${SMALL_SIZE} from a set of 36 tiles, each known by enumeration; chi-square (df ${df}) as a normal value`,
      value: rounded(z),
      bar: `within ±${BAR}, no rack that does not fit`,
      ok: Math.abs(z) <= BAR && strangers === 0,
    };
  });
  return [...rows, unfair(seed, every, draws)];
}

/** The same test must find out a sampler that draws among kinds of racks instead of among tiles. */
function unfair(seed: string, every: ReadonlyMap<string, number>, draws: number): ProofRow {
  const kinds = [...every.keys()].map(facesIn);
  const random = stream(seed, 'unfair');
  const { z } = evenness(
    every,
    drawnRacks(() => kinds[random.below(kinds.length)]!, draws),
  );
  return {
    what: 'the same test on racks drawn evenly by their kinds, which is wrong',
    value: rounded(z),
    bar: `above ${BAR}`,
    ok: z > BAR,
  };
}

function facesIn(key: string): Face[] {
  return key.split(' ') as Face[];
}

/** Kinds whose true share is known by generating functions, found nowhere in the engine. */
function intervals(seed: string, runs: number): ProofRow[] {
  const all = binomials(152, 13)[13]!;
  const share = (racks: bigint): number => Number(all - racks) / Number(all);
  const kinds: readonly (readonly [string, Constraint, number])[] = [
    ['four in a row or more', { inARow: { from: 4 } }, share(racksWithRowUpTo(3, 13))],
    ['six in a row or more', { inARow: { from: 6 } }, share(racksWithRowUpTo(5, 13))],
    ['five like numbers or more', { likeNumbers: { from: 5 } }, share(racksWithLikeUpTo(4, 13))],
  ];
  return kinds.map(([name, constraint, truth]) => {
    let held = 0;
    for (let run = 0; run < runs; run++) {
      const told = sampleRackWithRarity({ constraint, size: 13, kernel }, `${seed} interval ${run}`);
      if (told.ok && told.rarity.low <= truth && truth <= told.rarity.high) held++;
    }
    const { low, high } = wilson(held, runs, NORMAL_POINT['99.8']);
    return {
      what: `${name}: the true share ${truth.toPrecision(6)} lies in the 95 % interval told, of ${runs} tellings`,
      value: held,
      bar: 'coverage agrees with 95 % (99.8 % interval of the count)',
      ok: low <= 0.95 && high >= 0.95,
    };
  });
}

/** A constraint read off a dealt rack has at least that rack, so it may never be called impossible. */
function soundness(seed: string, racks: number): ProofRow {
  let called = 0;
  const dealt = feasible(samplerFor({}, 13, kernel));
  for (let n = 0; n < racks; n++) {
    const rack = facesOf(dealt.draw(stream(seed, `read off ${n}`)));
    if (!samplerFor(wishReadOff(rack), 13, kernel).ok) called++;
  }
  return {
    what: `of ${racks} constraints read off racks, called impossible`,
    value: called,
    bar: '0',
    ok: called === 0,
  };
}

/** The exact values of every part of a constraint that this rack has. */
function wishReadOff(rack: readonly Face[]): Constraint {
  const value = (part: Exclude<keyof Constraint, 'section'>): number =>
    Array.from({ length: 15 }, (_, n) => n).find((n) => fitsByDefinition(rack, { [part]: n }, kernel))!;
  return {
    jokers: value('jokers'),
    flowers: value('flowers'),
    pairs: value('pairs'),
    pungs: value('pungs'),
    kongs: value('kongs'),
    inARow: value('inARow'),
    likeNumbers: value('likeNumbers'),
    toGo: value('toGo'),
  };
}

const REFUSED: readonly (readonly [Constraint, 'impossible-constraint' | 'too-rare'])[] = [
  [{ pairs: 0, pungs: { from: 1 } }, 'impossible-constraint'],
  [{ jokers: 8, flowers: 8 }, 'impossible-constraint'],
  [{ kongs: 4 }, 'impossible-constraint'],
  [{ inARow: 9, likeNumbers: { from: 6 } }, 'impossible-constraint'],
  [{ toGo: 0 }, 'impossible-constraint'],
  [{ toGo: { to: 2 }, jokers: 0, pairs: 0 }, 'impossible-constraint'],
  [{ toGo: { from: 12 } }, 'too-rare'],
  [{ inARow: 9, jokers: 4 }, 'too-rare'],
  [{ toGo: { to: 1 }, jokers: 0, section: 'bookends' }, 'too-rare'],
  [{ inARow: 9, section: 'two-winds' }, 'too-rare'],
];

function refusals(seed: string): ProofRow[] {
  const told = REFUSED.map(([constraint, code]) => {
    const started = performance.now();
    const drawn = sampleRack({ constraint, size: 13, kernel }, seed);
    const seconds = (performance.now() - started) / 1000;
    return { right: !drawn.ok && drawn.code === code, seconds };
  });
  const slowest = Math.max(...told.map(({ seconds }) => seconds));
  const right = told.filter(({ right: correct }) => correct).length;
  return [
    {
      what: 'constraints refused for the right reason',
      value: right,
      bar: `${told.length}`,
      ok: right === told.length,
    },
    { what: 'the slowest refusal, in seconds', value: rounded(slowest), bar: 'below 2', ok: slowest < 2 },
  ];
}

function rounded(value: number): number {
  return Math.round(value * 1000) / 1000;
}
