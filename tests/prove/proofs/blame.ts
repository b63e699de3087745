// Nobody is told that a better choice exists where there was none.
import { analyze } from '../../../shared-engine/analysis/comparison/analyze.ts';
import {
  type Budget,
  DEEP_BUDGET,
  SHALLOW_BUDGET,
} from '../../../shared-engine/analysis/comparison/budget.ts';
import { compare } from '../../../shared-engine/analysis/comparison/comparison.ts';
import type { DealSource } from '../../../shared-engine/analysis/comparison/sampled-deals.ts';
import { SMALL_LOSS } from '../../../shared-engine/analysis/comparison/verdict.ts';
import { RESULT_WIDTH } from '../../../shared-engine/analysis/rollouts/batch.ts';
import { createRng } from '../../../shared-engine/kernels/philox.ts';
import { analyst, choicesFrom } from '../analysis/choices.ts';
import { longRunOf } from '../analysis/long-run.ts';
import { shareText } from '../analysis/proportions.ts';
import type { Proof, ProofRow, Size } from '../proof.ts';

const CHOICES: Record<Size, number> = { small: 10, full: 250 };
const BATCHES: Record<Size, number> = { small: 32, full: 256 };
const NULL_GAMES: Record<Size, number> = { small: 60, full: 5_000 };
const ALTERNATIVES = 10;

export const proof: Proof = {
  summary: 'A better choice is said to exist only where a long run finds one, and never in a game of equals.',
  async run({ seed, size }) {
    return [
      ...againstLongRun(seed, size),
      amongEquals(size, 'deep', DEEP_BUDGET),
      amongEquals(size, 'shallow', SHALLOW_BUDGET),
    ];
  },
};

function againstLongRun(seed: string, size: Size): ProofRow[] {
  const budget = size === 'full' ? DEEP_BUDGET : SHALLOW_BUDGET;
  let innocent = 0;
  let blamed = 0;
  let beyondDoubt = 0;
  let guilty = 0;
  let told = 0;
  for (const { offered, subject } of choicesFrom(`${seed} blame`, CHOICES[size])) {
    const { finalists, chosen, verdict } = analyze(analyst, offered, { subject, budget })!;
    const longRun = longRunOf(
      offered,
      finalists.map(({ alternative }) => alternative),
      BATCHES[size],
    );
    const played = finalists.indexOf(chosen);
    const differences = finalists.map((_, other) => longRun.difference(other, played));
    const most = differences.reduce((worst, other) => (other.value > worst.value ? other : worst));
    if (most.value <= SMALL_LOSS) {
      innocent++;
      if (verdict !== 'better-exists') continue;
      blamed++;
      if (most.value + most.halfWidth <= SMALL_LOSS) beyondDoubt++;
    } else {
      guilty++;
      if (verdict === 'better-exists') told++;
    }
  }
  return [
    {
      what: 'choices blamed although the true loss is at most the smallest one told',
      value: shareText(blamed, innocent),
      bar: 'at most 1 %',
      ok: blamed <= innocent / 100,
    },
    {
      what: 'of these, beyond the error of the long run itself',
      value: beyondDoubt,
      bar: 'reported',
      ok: true,
    },
    {
      what: 'choices with a larger true loss that were told so',
      value: shareText(told, guilty),
      bar: 'reported',
      ok: true,
    },
  ];
}

/** Every alternative has the same true win probability; what differs is luck, 3 in 100 a batch. */
function amongEquals(size: Size, name: string, { interimAnalyses }: Budget): ProofRow {
  const games = NULL_GAMES[size];
  let blamed = 0;
  const finalists = Array.from({ length: ALTERNATIVES }, (_, n) => ({
    tiles: [n],
    number: null,
    action: [n, -1, -1, 1],
    keptValue: 0,
  }));
  const task = {
    seat: 0,
    receiver: null,
    screened: { finalists, controls: [] },
    chosen: finalists[3]!,
    averagePass: null,
    interimAnalyses,
  };
  for (let game = 0; game < games; game++) {
    const { verdict } = compare(equals(game), task);
    if (verdict === 'better-exists') blamed++;
  }
  return {
    what: `games of ${ALTERNATIVES} equal alternatives, ${name} budget: a better one said to exist`,
    value: shareText(blamed, games),
    bar: 'at most 5 %',
    ok: blamed <= games / 20,
  };
}

function equals(game: number): DealSource {
  return {
    rollOut({ first, batches }, actions) {
      const means = new Float64Array(batches * actions.length * RESULT_WIDTH);
      for (let b = 0; b < batches; b++) {
        const rng = createRng(game, first + b);
        for (const [a] of actions.entries()) {
          let luck = 0;
          for (let n = 0; n < 4; n++) luck += rng.uniform() - 0.5;
          means[(b * actions.length + a) * RESULT_WIDTH] = 25 + luck * 5.2;
        }
      }
      return { batches, actions: actions.length, means };
    },
  };
}
