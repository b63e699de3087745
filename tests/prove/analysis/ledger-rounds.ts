// Rounds for the ledger: seat 0 careless or steady, the others as belief assumes or as the seats of the rollouts play.
import { GUMBEL } from '../../../shared-engine/analysis/rollouts/noise.ts';
import { chooseFor } from '../../../shared-engine/bots/choose.ts';
import { type Chooser, finishRound } from '../../../shared-engine/bots/finish-round.ts';
import { createPassChooser, selectPass } from '../../../shared-engine/kernels/pass-selection/reference.ts';
import { createTileValues } from '../../../shared-engine/kernels/tile-value/simd.ts';
import { BY_VALUE, createChoiceModel } from '../../../shared-engine/policy/choice-model.ts';
import { legalPasses } from '../../../shared-engine/policy/pass-selection.ts';
import type { Random } from '../../../shared-engine/rules/deal/random.ts';
import { SEATS } from '../../../shared-engine/rules/deal/seat.ts';
import type { AnswerChoice } from '../../../shared-engine/rules/exchange/command.ts';
import { openRound } from '../../../shared-engine/rules/exchange/decide.ts';
import { begin } from '../../../shared-engine/rules/exchange/evolve.ts';
import type { Closed } from '../../../shared-engine/rules/exchange/round.ts';
import { PASS_SIZE } from '../../../shared-engine/rules/exchange/schedule.ts';
import { type Bag, bagOf, sortFaces } from '../../../shared-engine/rules/tiles/bag.ts';
import { FACE_COUNT, FACES } from '../../../shared-engine/rules/tiles/face.ts';
import { pendingDecision } from '../../../shared-engine/rules/view/pending-decision.ts';
import type { SeatView } from '../../../shared-engine/rules/view/view.ts';
import { houseKernel } from '../../kit/reviews.ts';
import { seedNamed } from '../../kit/rounds.ts';
import { card, simd } from './choices.ts';

/** How the other three choose: as bots of a style, tiles as belief takes them for, or as all seats of the rollouts. */
export const OPPONENTS = ['typical', 'model', 'strong', 'casual', 'rollouts'] as const;
export type Opponents = (typeof OPPONENTS)[number];

const chooser = createPassChooser(card);
const model = createChoiceModel(createTileValues(simd, card));
const NONE = new Uint8Array(FACE_COUNT);
const NO_NOISE = new Float64Array(FACE_COUNT);

/** Seat 0 chooses as a casual player where it is not steady; the same name deals the same tiles. */
export function ledgerRound(name: string, nth: number, opponents: Opponents, isSteady: boolean): Closed {
  const deal = { seed: seedNamed(`${name} ${nth}`), dealer: SEATS[nth % 4]! };
  return finishRound(begin(openRound(deal, { revealRacks: false })), (view, random) => {
    if (view.record.seat !== 0) {
      return opponents === 'typical' || opponents === 'strong' || opponents === 'casual'
        ? chooseFor(opponents, view, houseKernel, random)
        : byRack(view, random, opponents);
    }
    return isSteady ? byRack(view, random, 'steady') : chooseFor('casual', view, houseKernel, random);
  }).round;
}

function byRack(view: SeatView, random: Random, as: Opponents | 'steady'): ReturnType<Chooser> {
  const decision = pendingDecision(view);
  if (decision === null) return null;
  const rack = bagOf(view.rack);
  const { tiles, spare } = select(rack, as === 'steady' ? NO_NOISE : noise(random));
  switch (decision.kind) {
    case 'vote':
      return { kind: 'vote', step: 'vote', go: spare === PASS_SIZE };
    case 'ask':
      return { kind: 'ask', step: 'courtesy-ask', count: spare };
    case 'pass': {
      const { step, count, blindAllowed } = decision;
      const own = blindAllowed ? Math.min(count, spare) : count;
      const given = as === 'model' ? passByModel(rack, own, random) : tiles.slice(0, own);
      const faces = sortFaces(given.map((face) => FACES[face]!));
      return { kind: 'pass', step, tiles: faces, blind: count - own } satisfies AnswerChoice;
    }
  }
}

function select(rack: Bag, misjudged: Float64Array): { tiles: readonly number[]; spare: number } {
  const selected = new Int8Array(PASS_SIZE);
  chooser.hands.read(Uint8Array.from(rack), 0);
  const spare = selectPass(chooser, selected, 0, misjudged);
  return { tiles: [...selected], spare };
}

function noise(random: Random): Float64Array {
  return Float64Array.from({ length: FACE_COUNT }, () => GUMBEL[random.below(GUMBEL.length)]!);
}

function passByModel(rack: Bag, size: number, random: Random): readonly number[] {
  const uniform = () => random.below(0x1_0000_0000) / 0x1_0000_0000;
  if (uniform() >= BY_VALUE) {
    const passes = legalPasses(rack, size);
    return passes[random.below(passes.length)]!;
  }
  const pass = new Uint8Array(FACE_COUNT);
  model.read(Uint8Array.from(rack), 0);
  model.draw(NONE, size, pass, uniform);
  return [...pass].flatMap((count, face) => new Array<number>(count).fill(face));
}
