// Every hand of a pattern, each once, and what is wrong with any: fast enough for each key that is typed in the editor.
import { copiesOf, FACE_COUNT, FACES, type Face, faceIndex, NUMBERS } from '../rules/index.ts';
import { type Assignment, faceOf, type VariableValues, valuesOf } from './assignment.ts';
import type { CardFile, CardPattern } from './format.ts';

/** The smallest group in which a joker may stand (common practice, no source). */
export const MIN_JOKER_GROUP = 3;

/** Bytes of one hand: its singles and pairs by face, then its groups by face. */
export const HAND_BYTES = 2 * FACE_COUNT;

const COPIES = Uint8Array.from(FACES, copiesOf);
const MAX_JOKERS = copiesOf('joker');
const NO_FACE = 255;

export type HandFault =
  /** The number of this group does not exist; the group is counted from 0. */
  | { readonly is: 'no-number'; readonly group: number }
  /** Singles and pairs want more of this face than there are. */
  | { readonly is: 'too-few-copies'; readonly face: Face; readonly wanted: number }
  | { readonly is: 'too-many-jokers'; readonly jokers: number };

export interface HandsOfPattern {
  /** Choices of values, before equal hands are counted as one. */
  readonly choices: number;
  /** Different hands of 14 tiles that the set can make. */
  readonly count: number;
  /** Those hands, each of `HAND_BYTES`. */
  readonly bytes: Uint8Array;
  /** The first choice of values with each kind of fault. */
  readonly faulty: readonly { readonly fault: HandFault; readonly assignment: Assignment }[];
}

/** Choices laid between two steps of `layingHands`: a fraction of a millisecond. */
const STEP = 256;

/** Takes a pattern whose variables are within the limits; its groups need not hold 14 tiles, and then it has no hand. */
export function handsOf(
  pattern: Pick<CardPattern, 'groups' | 'where'>,
  parameters: CardFile['parameters'],
): HandsOfPattern {
  const laying = layingHands(pattern, parameters);
  let step = laying.next();
  while (!step.done) step = laying.next();
  return step.value;
}

/** The same in steps, for whoever has something else to do between them. */
export function* layingHands(
  pattern: Pick<CardPattern, 'groups' | 'where'>,
  parameters: CardFile['parameters'],
): Generator<undefined, HandsOfPattern> {
  const values = valuesOf(pattern);
  const groups = pattern.groups.map((group) => layerOf(group, values, parameters));
  const isWhole = pattern.groups.reduce((sum, { size }) => sum + size, 0) === 14;
  const distinct = new DistinctHands();
  const faulty = new Map<HandFault['is'], HandsOfPattern['faulty'][number]>();
  const hand = emptyHand();
  const place = { number: 0, suit: 0, honor: 0 };
  const honors = honorsOf(values);
  let choices = 0;
  for (const [number, numbers] of values.numbers.entries()) {
    place.number = number;
    for (const [suit, suits] of values.suits.entries()) {
      place.suit = suit;
      for (const [honor, { dragons, winds }] of honors.entries()) {
        place.honor = honor;
        choices++;
        if (choices % STEP === 0) yield;
        const fault = layHand(hand, groups, place);
        if (fault === null) {
          if (isWhole) distinct.add(hand);
        } else if (!faulty.has(fault.is)) {
          faulty.set(fault.is, { fault, assignment: { numbers, suits, dragons, winds } });
        }
      }
    }
  }
  return { choices, count: distinct.count, bytes: distinct.bytes, faulty: [...faulty.values()] };
}

type Honors = Pick<Assignment, 'dragons' | 'winds'>;

/** Every choice of dragons with every choice of winds. */
function honorsOf({ dragons, winds }: VariableValues): Honors[] {
  return dragons.flatMap((d) => winds.map((w) => ({ dragons: d, winds: w })));
}

/** Places in the lists of values. */
interface Place {
  readonly number: number;
  readonly suit: number;
  readonly honor: number;
}

/** One group under every choice of the values that it depends on. */
interface Layer {
  readonly size: number;
  /** Where its tiles are counted in a hand, before the face is added. */
  readonly side: number;
  /** Face indexes, `NO_FACE` where there is none. */
  readonly faces: Uint8Array;
  /** Steps in `faces` from one choice to the next; 0 for values that it does not depend on. */
  readonly byNumber: number;
  readonly bySuit: number;
  readonly byHonor: number;
}

const NO_VALUES: Assignment = { numbers: new Map(), suits: new Map(), dragons: new Map(), winds: new Map() };

function layerOf(
  { size, tile }: CardPattern['groups'][number],
  values: VariableValues,
  parameters: CardFile['parameters'],
): Layer {
  const side = sideOf(size);
  const facesUnder = (choices: readonly Partial<Assignment>[]) =>
    Uint8Array.from(choices, (choice) => {
      const face = faceOf(tile, { ...NO_VALUES, ...choice }, parameters);
      return face === null ? NO_FACE : faceIndex(face);
    });
  const suits = values.suits.map((chosen) => ({ suits: chosen }));
  if ('number' in tile && typeof tile.number === 'object') {
    const name = tile.number.var;
    const underNumber = NUMBERS.map((number) =>
      facesUnder(suits.map((suit) => ({ ...suit, numbers: new Map([[name, number]]) }))),
    );
    const faces = new Uint8Array(values.numbers.length * suits.length);
    for (const [nth, numbers] of values.numbers.entries()) {
      faces.set(underNumber[numbers.get(name)! - 1]!, nth * suits.length);
    }
    return { size, side, faces, byNumber: suits.length, bySuit: 1, byHonor: 0 };
  }
  const ofSuit =
    'suit' in tile || ('dragon' in tile && typeof tile.dragon === 'object' && 'matching' in tile.dragon);
  const faces = facesUnder(ofSuit ? suits : honorsOf(values));
  return { size, side, faces, byNumber: 0, bySuit: ofSuit ? 1 : 0, byHonor: ofSuit ? 0 : 1 };
}

/** A hand that is laid again and again. */
interface LaidHand {
  readonly bytes: Uint8Array;
  /** Its faces, each once; the first `faces` are of this hand. */
  readonly touched: Uint8Array;
  faces: number;
  /** The same for equal hands: its bytes by `FACTORS`. */
  sum: number;
}

function emptyHand(): LaidHand {
  return { bytes: new Uint8Array(HAND_BYTES), touched: new Uint8Array(FACE_COUNT), faces: 0, sum: 0 };
}

/** Writes the hand of this choice over the last one; what is wrong with it, or null. */
function layHand(hand: LaidHand, layers: readonly Layer[], place: Place): HandFault | null {
  clear(hand);
  for (let group = 0; group < layers.length; group++) {
    const { size, side, faces, byNumber, bySuit, byHonor } = layers[group]!;
    const face = faces[place.number * byNumber + place.suit * bySuit + place.honor * byHonor]!;
    if (face === NO_FACE) return { is: 'no-number', group };
    lay(hand, side, face, size);
  }
  return faultOf(hand);
}

function clear(hand: LaidHand): void {
  for (let nth = 0; nth < hand.faces; nth++) {
    const face = hand.touched[nth]!;
    hand.bytes[face] = 0;
    hand.bytes[FACE_COUNT + face] = 0;
  }
  hand.faces = 0;
  hand.sum = 0;
}

function lay(hand: LaidHand, side: number, face: number, size: number): void {
  const { bytes, touched } = hand;
  if (bytes[face] === 0 && bytes[FACE_COUNT + face] === 0) touched[hand.faces++] = face;
  bytes[side + face]! += size;
  hand.sum += size * FACTORS[side + face]!;
}

function faultOf({ bytes, touched, faces }: LaidHand): HandFault | null {
  let jokers = 0;
  let short = NO_FACE;
  for (let nth = 0; nth < faces; nth++) {
    const face = touched[nth]!;
    const copies = COPIES[face]!;
    if (bytes[face]! > copies) short = Math.min(short, face);
    jokers += Math.max(0, bytes[face]! + bytes[FACE_COUNT + face]! - copies);
  }
  if (short !== NO_FACE) return { is: 'too-few-copies', face: FACES[short]!, wanted: bytes[short]! };
  return jokers > MAX_JOKERS ? { is: 'too-many-jokers', jokers } : null;
}

/** Whether the set of 152 can make groups of these sizes of these faces, whether or not they are a whole hand. */
export function canBeMade(groups: CardPattern['groups'], faces: readonly Face[]): boolean {
  const hand = emptyHand();
  for (const [nth, { size }] of groups.entries()) lay(hand, sideOf(size), faceIndex(faces[nth]!), size);
  return faultOf(hand) === null;
}

function sideOf(size: number): number {
  return size < MIN_JOKER_GROUP ? 0 : FACE_COUNT;
}

/** Hands one after the other in one array, each once. */
class DistinctHands {
  #bytes = new Uint8Array(64 * HAND_BYTES);
  #count = 0;
  /** Places of the hands by a sum that equal hands share; a hand whose sum is taken by another has the next free one. */
  readonly #places = new Map<number, number>();

  get count(): number {
    return this.#count;
  }

  get bytes(): Uint8Array {
    return this.#bytes.subarray(0, this.#count * HAND_BYTES);
  }

  add({ bytes, sum: own }: LaidHand): void {
    let sum = own;
    for (let known = this.#places.get(sum); known !== undefined; known = this.#places.get(sum)) {
      if (this.#isAt(known, bytes)) return;
      sum++;
    }
    this.#places.set(sum, this.#count);
    const at = this.#count * HAND_BYTES;
    if (at === this.#bytes.length) {
      const larger = new Uint8Array(2 * at);
      larger.set(this.#bytes);
      this.#bytes = larger;
    }
    this.#bytes.set(bytes, at);
    this.#count++;
  }

  #isAt(place: number, hand: Uint8Array): boolean {
    const at = place * HAND_BYTES;
    for (let index = 0; index < HAND_BYTES; index++) {
      if (this.#bytes[at + index] !== hand[index]) return false;
    }
    return true;
  }
}

/** One for each byte of a hand, so far apart that sums of a few of them are seldom equal; below 2⁴⁴, so that sums are exact. */
const FACTORS = Float64Array.from({ length: HAND_BYTES }, (_, index) => {
  const low = Math.imul(index + 1, 0x9e3779b1) >>> 0;
  const high = (Math.imul(index + 1, 0x85ebca6b) >>> 20) & 0xfff;
  return high * 0x1_0000_0000 + low;
});
