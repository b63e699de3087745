// Positions of the simulated play made by hand: a small card, holdings written as words, the rest of the set as the wall.
import type {
  ExposedGroup,
  Holding,
  Offer,
  SimulatedPlay,
  Turn,
} from '../../shared-engine/analysis/play/play.ts';
import { type PlayCard, preparePlayCard } from '../../shared-engine/analysis/play/play-card.ts';
import { compileCard } from '../../shared-engine/card/compile.ts';
import {
  CARD_FORMAT,
  type CardGroup,
  type CardPattern,
  type CardTile,
} from '../../shared-engine/card/format.ts';
import type { Seat } from '../../shared-engine/rules/deal/seat.ts';
import { type Bag, bagOf, EMPTY_BAG, FULL_SET, facesOf } from '../../shared-engine/rules/tiles/bag.ts';
import { type Face, type Four, faceIndex } from '../../shared-engine/rules/tiles/face.ts';

const east: CardTile = { wind: 'east' };
const south: CardTile = { wind: 'south' };
const west: CardTile = { wind: 'west' };
const north: CardTile = { wind: 'north' };
const bamOne: CardTile = { number: 1, suit: 'bam' };

function pattern(
  id: string,
  concealed: boolean,
  ...groups: readonly (readonly [number, CardTile])[]
): CardPattern {
  return {
    id,
    section: 'winds',
    points: 25,
    concealed,
    groups: groups.map(([size, tile]): CardGroup => ({ size, tile })),
  };
}

/** Four patterns, none with a variable, so that each has one hand. */
export const SMALL_CARD = compileCard({
  format: CARD_FORMAT,
  id: 'small',
  name: 'Small card',
  parameters: {},
  sections: [{ id: 'winds', name: 'Winds' }],
  patterns: [
    pattern('open', false, [4, east], [3, south], [3, west], [2, north], [2, bamOne]),
    pattern('open-too', false, [3, east], [3, south], [4, west], [2, north], [2, bamOne]),
    pattern(
      'concealed',
      true,
      [4, { dragon: 'red' }],
      [3, { dragon: 'green' }],
      [3, { zero: true }],
      [4, north],
    ),
    pattern(
      'singles',
      true,
      [2, east],
      [2, south],
      [2, west],
      [2, north],
      [2, bamOne],
      [2, { dragon: 'red' }],
      [2, { flower: true }],
    ),
  ],
});

export const SMALL_PLAY: PlayCard = preparePlayCard(SMALL_CARD);

/** Tiles written as `east*3 joker bam-1*2`. */
export function tiles(text: string): Face[] {
  return text
    .split(' ')
    .filter((word) => word !== '')
    .flatMap((word) => {
      const [face, count = '1'] = word.split('*');
      return new Array<Face>(Number(count)).fill(face as Face);
    });
}

export function group(face: Face, size: number, jokers = 0): ExposedGroup {
  return { face: faceIndex(face), size, jokers };
}

export function holdingOf(text: string, exposed: readonly ExposedGroup[] = []): Holding {
  return { concealed: bagOf(tiles(text)), exposed };
}

/** Tiles of the set that none of these hands holds. */
function restOf(hands: readonly Holding[]): Bag {
  const rest = [...FULL_SET];
  for (const { concealed, exposed } of hands) {
    concealed.forEach((count, face) => {
      rest[face]! -= count;
    });
    for (const { face, size, jokers } of exposed) {
      rest[face]! -= size - jokers;
      rest[faceIndex('joker')]! -= jokers;
    }
  }
  if (rest.some((count) => count < 0))
    throw new Error('The position needs a tile more often than the set has it.');
  return rest;
}

/** 13 tiles that no pattern of the small card can use, different ones for each seat. */
const IDLE: Four<string> = [
  'bam-2*3 bam-3*4 bam-4*4 bam-5*2',
  'crak-1*4 crak-2*4 crak-3*4 crak-4',
  'dot-1*4 dot-2*4 dot-3*4 dot-4',
  'crak-5*4 crak-6*4 crak-7*4 crak-8',
];

/** Four hands: those given, and idle tiles for the seats left out. */
export function fourHoldings(given: Partial<Record<Seat, Holding>>): Four<Holding> {
  const handOf = (seat: Seat): Holding => given[seat] ?? holdingOf(IDLE[seat]);
  return [handOf(0), handOf(1), handOf(2), handOf(3)];
}

/** `seat` to move; the wall holds every tile that is in no hand. */
export function turnOf(seat: Seat, given: Partial<Record<Seat, Holding>>): Turn {
  const holdings = fourHoldings(given);
  const wall = facesOf(restOf(holdings)).map(faceIndex);
  return { phase: 'turn', seat, holdings, wall, drawn: 0, discards: EMPTY_BAG, turns: 0 };
}

/** `from` has just discarded `face`, which comes out of the wall's tiles. */
export function offerOf(from: Seat, face: Face, given: Partial<Record<Seat, Holding>>): Offer {
  const holdings = fourHoldings(given);
  const rest = facesOf(restOf(holdings)).map(faceIndex);
  rest.splice(rest.indexOf(faceIndex(face)), 1);
  return {
    phase: 'offer',
    from,
    face: faceIndex(face),
    holdings,
    wall: rest,
    drawn: 0,
    discards: EMPTY_BAG,
    turns: 1,
  };
}

/** Every tile of the play wherever it lies, by face; the whole set at any moment. */
export function tilesIn(play: SimulatedPlay): Bag {
  const counts = [...play.discards];
  for (const { concealed, exposed } of play.holdings) {
    concealed.forEach((count, face) => {
      counts[face]! += count;
    });
    for (const { face, size, jokers } of exposed) {
      counts[face]! += size - jokers;
      counts[faceIndex('joker')]! += jokers;
    }
  }
  for (const face of play.wall.slice(play.drawn)) counts[face]!++;
  if (play.phase === 'offer') counts[play.face]!++;
  return counts;
}
