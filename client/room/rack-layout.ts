// The player's own arrangement: the order on the rack, what lies in the tray, what has just arrived.
import { type Bag, bagOf, type Face, faceIndex, numbered, type SeatView } from '../../shared-engine/index.ts';

/** One tile on this player's own rack. The number is the page's own; the server knows faces only. */
export interface Held {
  readonly id: number;
  readonly face: Face;
  /** Came in with the last pass. */
  readonly fresh: boolean;
}

export const SORTS = ['suit', 'number', 'own'] as const;
export type Sort = (typeof SORTS)[number];

export interface Hand {
  readonly round: number;
  /** Steps that were over when this was made; a tray belongs to one step. */
  readonly steps: number;
  readonly sort: Sort;
  /** In the player's own order. */
  readonly held: readonly Held[];
  /** Ids in the tray, in the order they were put there. */
  readonly tray: readonly number[];
  /** Arriving tiles to be passed on unseen. */
  readonly blind: number;
}

export function emptyHand(sort: Sort): Hand {
  return { round: 0, steps: 0, sort, held: [], tray: [], blind: 0 };
}

/** The hand after the server has said what this seat holds. Tiles that stay keep their place and their id. */
export function follow(hand: Hand, round: number, view: SeatView): Hand {
  const sameStep = hand.round === round && hand.steps === view.record.steps.length;
  const before = hand.round === round ? hand.held : [];
  const held = markFresh(keepPlaces(before, view.rack), arrivedLast(view));
  const next: Hand = {
    ...hand,
    round,
    steps: view.record.steps.length,
    held,
    tray: sameStep ? hand.tray.filter((id) => held.some((tile) => tile.id === id)) : [],
    blind: sameStep ? hand.blind : 0,
  };
  return view.answer?.kind === 'pass'
    ? { ...next, tray: idsOf(next, view.answer.tiles), blind: view.answer.blind }
    : next;
}

function keepPlaces(before: readonly Held[], rack: readonly Face[]): Held[] {
  const wanted = [...bagOf(rack)];
  const stay = before.filter(({ face }) => wanted[faceIndex(face)]!-- > 0);
  let nextId = Math.max(0, ...before.map((tile) => tile.id)) + 1;
  const missing = leftOver(rack, bagOf(stay.map((tile) => tile.face)));
  return [...stay, ...missing.map((face) => ({ id: nextId++, face, fresh: false }))];
}

/** The faces of `rack` beyond those in `have`. */
function leftOver(rack: readonly Face[], have: Bag): Face[] {
  const still = [...have];
  return rack.filter((face) => --still[faceIndex(face)]! < 0);
}

/** What the last pass brought, until the next one brings something else. */
function arrivedLast(view: SeatView): readonly Face[] {
  const last = view.record.steps.findLast((step) => step.kind === 'move');
  return last?.received ?? [];
}

/** Of two equal tiles the one that joined later is the one that arrived. */
function markFresh(held: readonly Held[], arrived: readonly Face[]): Held[] {
  const left = [...bagOf(arrived)];
  return held
    .toReversed()
    .map((tile) => ({ ...tile, fresh: left[faceIndex(tile.face)]!-- > 0 }))
    .toReversed();
}

function idsOf(hand: Hand, faces: readonly Face[]): number[] {
  const inTrayFirst = [...hand.held].sort(
    (a, b) => Number(hand.tray.includes(b.id)) - Number(hand.tray.includes(a.id)),
  );
  const used = new Set<number>();
  return faces.flatMap((face) => {
    const tile = inTrayFirst.find((candidate) => candidate.face === face && !used.has(candidate.id));
    if (!tile) return [];
    used.add(tile.id);
    return [tile.id];
  });
}

/** The rack as it is shown. */
export function shown({ held, sort }: Pick<Hand, 'held' | 'sort'>): readonly Held[] {
  if (sort === 'own') return held;
  const place = sort === 'suit' ? faceIndex : byNumber;
  return held.toSorted((a, b) => place(a.face) - place(b.face) || a.id - b.id);
}

function byNumber(face: Face): number {
  const suited = numbered(face);
  return suited ? suited.number * 40 + faceIndex(face) : 400 + faceIndex(face);
}

export function facesInTray(hand: Hand): Face[] {
  return hand.tray.flatMap((id) => hand.held.find((tile) => tile.id === id)?.face ?? []);
}

/** Puts a tile into the tray; with a full tray the hand stays as it is. */
export function putIn(hand: Hand, id: number, needed: number): Hand {
  if (hand.tray.includes(id) || hand.tray.length + hand.blind >= needed) return hand;
  return { ...hand, tray: [...hand.tray, id] };
}

export function takeOut(hand: Hand, id: number): Hand {
  return { ...hand, tray: hand.tray.filter((other) => other !== id) };
}

/** How many go on unseen; tiles chosen last make room. */
export function setBlind(hand: Hand, blind: number, needed: number): Hand {
  return { ...hand, blind, tray: hand.tray.slice(0, Math.max(0, needed - blind)) };
}

/** Moves a tile in front of another, or to the end; from here on the order is the player's own. */
export function moveBefore(hand: Hand, id: number, before: number | null): Hand {
  const tile = hand.held.find((candidate) => candidate.id === id);
  if (!tile || id === before) return hand;
  const others = shown(hand).filter((candidate) => candidate.id !== id);
  const at = before === null ? others.length : others.findIndex((candidate) => candidate.id === before);
  if (at < 0) return hand;
  return { ...hand, sort: 'own', held: [...others.slice(0, at), tile, ...others.slice(at)] };
}

/** Sorting by hand starts from the order that is on the screen. */
export function sortBy(hand: Hand, sort: Sort): Hand {
  return sort === 'own' ? { ...hand, sort, held: shown(hand) } : { ...hand, sort };
}
