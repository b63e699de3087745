// Simulated players: the typical style with its noise, and four who have one habit besides.
import type { MistakeCategory } from '../../../shared-engine/analysis/review/mistake-categories.ts';
import { chooseFor } from '../../../shared-engine/bots/choose.ts';
import { finishRound } from '../../../shared-engine/bots/finish-round.ts';
import { SEATS } from '../../../shared-engine/rules/deal/seat.ts';
import type { AnswerChoice } from '../../../shared-engine/rules/exchange/command.ts';
import { openRound } from '../../../shared-engine/rules/exchange/decide.ts';
import { begin } from '../../../shared-engine/rules/exchange/evolve.ts';
import { STANDARD_TERMS } from '../../../shared-engine/rules/exchange/terms.ts';
import { bagOf, countOf } from '../../../shared-engine/rules/tiles/bag.ts';
import type { Face } from '../../../shared-engine/rules/tiles/face.ts';
import type { SeatRecord } from '../../../shared-engine/rules/view/record.ts';
import { seatView } from '../../../shared-engine/rules/view/view.ts';
import { houseKernel } from '../../kit/reviews.ts';
import { seedNamed } from '../../kit/rounds.ts';

export interface PlantedHabit {
  /** In words, as rows tell it. */
  readonly words: string;
  /** What the page is to name: any of these. */
  readonly kinds: readonly MistakeCategory[];
  /** The part of the exchange that the page is to name with it; null for any. */
  readonly part: 'second' | null;
  /** What the player does instead of `usual`, where there is something to do. */
  readonly instead: (usual: AnswerChoice, rack: readonly Face[]) => AnswerChoice;
}

export const PLANTED: readonly PlantedHabit[] = [
  {
    words: 'breaks pairs on the second Charleston',
    kinds: ['broken-multiple', 'new-multiple'],
    part: 'second',
    instead: (usual, rack) =>
      usual.kind === 'pass' && usual.step.startsWith('second') ? withFirst(usual, onePair(rack)) : usual,
  },
  {
    words: 'passes a flower in every pass, while there is one',
    kinds: ['flower-given'],
    part: null,
    instead: (usual, rack) =>
      usual.kind === 'pass' ? withFirst(usual, rack.includes('flower') ? ['flower'] : []) : usual,
  },
  {
    words: 'stops too early',
    kinds: ['stopped'],
    part: null,
    instead: (usual) => (usual.kind === 'vote' ? { ...usual, go: false } : usual),
  },
  {
    words: 'passes three tiles blind wherever that is allowed',
    kinds: ['too-many-blind'],
    part: null,
    instead: (usual) =>
      usual.kind === 'pass' && (usual.step === 'first-left' || usual.step === 'second-right')
        ? { ...usual, tiles: [], blind: 3 }
        : usual,
  },
];

/** These tiles, as many as fit, and beside them what would have been passed; fewer blind where they need the room. */
function withFirst(usual: AnswerChoice & { readonly kind: 'pass' }, first: readonly Face[]): AnswerChoice {
  const count = usual.tiles.length + usual.blind;
  const wanted = first.slice(0, count);
  const room = Math.max(usual.tiles.length, wanted.length);
  const left = [...wanted];
  const others = usual.tiles.filter((face) => {
    const at = left.indexOf(face);
    if (at >= 0) left.splice(at, 1);
    return at < 0;
  });
  const tiles = [...wanted, ...others].slice(0, room);
  return { ...usual, tiles, blind: count - room };
}

/** One tile of the first pair of the rack. */
function onePair(rack: readonly Face[]): readonly Face[] {
  const bag = bagOf(rack);
  const pair = rack.find((face) => face !== 'joker' && face !== 'flower' && countOf(bag, face) === 2);
  return pair === undefined ? [] : [pair];
}

/** Round `nth` of the player of this name, in seat 0 among three typical bots; the same name, the same tiles. */
export function habitRound(name: string, nth: number, habit: PlantedHabit | null): SeatRecord {
  const deal = { seed: seedNamed(`${name} ${nth}`), dealer: SEATS[nth % 4]! };
  const { round } = finishRound(begin(openRound(deal, STANDARD_TERMS.alone)), (view, random) => {
    const usual = chooseFor('typical', view, houseKernel, random);
    return view.record.seat === 0 && usual !== null && habit !== null
      ? habit.instead(usual, view.rack)
      : usual;
  });
  return seatView(round, 0).record;
}
