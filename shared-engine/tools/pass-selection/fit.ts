// Fits what a seat goes by when it passes to what the comparison prefers: a conditional logit over passes.
import type { CompiledCard } from '../../card/compiled.ts';
import { levelTables, type WeightSteps } from '../../kernels/hand-weights/reference.ts';
import { packCard, rowAt } from '../../kernels/packed-card.ts';
import { createPassChooser, selectPass } from '../../kernels/pass-selection/reference.ts';
import type { Selection } from '../../kernels/pass-selection/selection.ts';
import { createRunningSums } from '../../kernels/running-sums.ts';
import { PASS_SIZE } from '../../rules/exchange/schedule.ts';
import type { Bag } from '../../rules/tiles/bag.ts';
import { FACE_COUNT, JOKER_INDEX } from '../../rules/tiles/face.ts';
import { type ChoiceSet, fitConditional } from '../win-model/conditional-logit.ts';
import type { JudgedSituation } from './situations.ts';

/** Every combination is tried; whole halvings, which the kernel needs. */
const TILE_STEPS = [1, 2, 3, 4];
const PAIR_STEPS = [0, 1, 2];
const CONCEALED_STEPS = [0, 1, 2, 3];
const SPARE_SHARES = [0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8];

/** A pass counts the more the better it is: e times as much for so many wins in 100 games. */
const SHARPNESS = 0.5;

export interface StepsFit {
  readonly steps: WeightSteps;
  readonly logLikelihood: number;
  /** By how much likelier a pass is that keeps twice the weight: the one coefficient of the logit. */
  readonly coefficient: number;
}

/** The steps under which the comparison's preferences are likeliest, best first. */
export function fittedSteps(card: CompiledCard, judged: readonly JudgedSituation[]): readonly StepsFit[] {
  const passes = judged.filter(({ alternatives }) => alternatives[0]!.number === null);
  const fits = TILE_STEPS.flatMap((tile) =>
    PAIR_STEPS.flatMap((pair) =>
      CONCEALED_STEPS.map((concealed): StepsFit => {
        const steps = { tile, pair, concealed };
        const weigh = keptWeight(card, steps);
        const { coefficients, logLikelihood } = fitConditional(passes.map((one) => choiceSet(one, weigh)));
        return { steps, logLikelihood, coefficient: coefficients[0]! };
      }),
    ),
  );
  return fits.sort((a, b) => b.logLikelihood - a.logLikelihood);
}

/** What is kept by each pass, and how much the comparison prefers it. */
function choiceSet({ rack, alternatives, values }: JudgedSituation, weigh: (rack: Bag) => number): ChoiceSet {
  const most = Math.max(...values);
  const preferred = values.map((value) => Math.exp((value - most) / SHARPNESS));
  const total = preferred.reduce((sum, weight) => sum + weight, 0);
  return {
    rows: alternatives.map(({ tiles }) => [weigh(without(rack, tiles))]),
    chosen: preferred.map((weight) => weight / total),
  };
}

function without(rack: Bag, tiles: readonly number[]): Bag {
  const kept = [...rack];
  for (const face of tiles) kept[face]!--;
  return kept;
}

/** Log₂ of the summed weight of all hands, as `HandWeights` weighs them but for its cut. */
function keptWeight(card: CompiledCard, steps: WeightSteps): (rack: Bag) => number {
  const packed = packCard(card);
  const { offsets, patternStarts } = packed;
  const running = createRunningSums(packed);
  const sums = new Uint8Array(running.sums.buffer);
  const { byMatched, byLimit } = levelTables(steps);
  const added = new Uint8Array(sums.length);
  for (const [pattern, { concealed }] of card.patterns.entries()) {
    if (concealed) added.fill(steps.concealed, patternStarts[pattern], patternStarts[pattern + 1]);
  }
  return (rack) => {
    running.update((face) => offsets[rowAt(face, rack[face]!)]!);
    const jokers = rack[JOKER_INDEX]!;
    let sum = 0;
    for (const [lane, packedSum] of sums.entries()) {
      const limit = packedSum & 15;
      const matched = Math.min((packedSum >> 4) + jokers, limit);
      sum += 2 ** -(byMatched[matched]! + byLimit[limit]! + added[lane]!);
    }
    return Math.log2(sum);
  };
}

/** The share up to which a tile can be spared that does best, over votes, blind numbers and numbers asked for. */
export function fittedSpareShare(
  card: CompiledCard,
  judged: readonly JudgedSituation[],
  steps: WeightSteps,
): number {
  const numbers = judged.filter(({ alternatives }) => alternatives[0]!.number !== null);
  const worth = SPARE_SHARES.map((spareShare) => {
    const spareOf = spareCounter(card, { steps, spareShare });
    return numbers.reduce((sum, situation) => sum + worthOf(situation, spareOf(situation.rack)), 0);
  });
  return SPARE_SHARES[worth.indexOf(Math.max(...worth))]!;
}

function spareCounter(card: CompiledCard, selection: Selection): (rack: Bag) => number {
  const chooser = createPassChooser(card, selection);
  const noNoise = new Float64Array(FACE_COUNT);
  const tiles = new Int8Array(PASS_SIZE);
  return (rack) => {
    chooser.hands.read(Uint8Array.from(rack), 0);
    return selectPass(chooser, tiles, 0, noNoise);
  };
}

/** What the number is worth that a seat chooses which can spare so many tiles. */
function worthOf({ step, alternatives, values }: JudgedSituation, spare: number): number {
  const number = step === 'vote' ? Number(spare === PASS_SIZE) : step === 'courtesy-ask' ? spare : 3 - spare;
  return values[alternatives.findIndex((each) => each.number === number)]!;
}
