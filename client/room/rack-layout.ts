// How the player has laid out the rack: its order, the tiles in the tray, the tiles that have just arrived.
import { type Bag, bagOf, type Face, faceIndex, numbered, type SeatView } from '../../shared-engine/index.ts';

/** One tile on this player's own rack. The number is the page's own; the server knows faces only. */
export interface RackTile {
  readonly id: number;
  readonly face: Face;
  /** Came in with the last pass. */
  readonly arrived: boolean;
}

export const SORTS = ['suit', 'number', 'custom'] as const;
export type Sort = (typeof SORTS)[number];

export interface RackLayout {
  readonly round: number;
  /** Steps that were over when this was made; a tray belongs to one step. */
  readonly steps: number;
  readonly sort: Sort;
  /** In the player's own order. */
  readonly tiles: readonly RackTile[];
  /** Ids in the tray, in the order they were put there. */
  readonly tray: readonly number[];
  /** Arriving tiles to be passed blind. */
  readonly blind: number;
}

export function emptyLayout(sort: Sort): RackLayout {
  return { round: 0, steps: 0, sort, tiles: [], tray: [], blind: 0 };
}

/** The layout after the server has said what this seat holds. Tiles that stay keep their place and their id. */
export function withView(layout: RackLayout, round: number, view: SeatView): RackLayout {
  const sameStep = layout.round === round && layout.steps === view.record.steps.length;
  const before = layout.round === round ? layout.tiles : [];
  const tiles = markArrived(keepPlaces(before, view.rack), arrivedLast(view));
  const next: RackLayout = {
    ...layout,
    round,
    steps: view.record.steps.length,
    tiles,
    tray: sameStep ? layout.tray.filter((id) => tiles.some((tile) => tile.id === id)) : [],
    blind: sameStep ? layout.blind : 0,
  };
  return view.answer?.kind === 'pass'
    ? { ...next, tray: idsOf(next, view.answer.tiles), blind: view.answer.blind }
    : next;
}

function keepPlaces(before: readonly RackTile[], rack: readonly Face[]): RackTile[] {
  const wanted = [...bagOf(rack)];
  const stay = before.filter(({ face }) => wanted[faceIndex(face)]!-- > 0);
  let nextId = Math.max(0, ...before.map((tile) => tile.id)) + 1;
  const missing = leftOver(rack, bagOf(stay.map((tile) => tile.face)));
  return [...stay, ...missing.map((face) => ({ id: nextId++, face, arrived: false }))];
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
function markArrived(tiles: readonly RackTile[], arrived: readonly Face[]): RackTile[] {
  const left = [...bagOf(arrived)];
  return tiles
    .toReversed()
    .map((tile) => ({ ...tile, arrived: left[faceIndex(tile.face)]!-- > 0 }))
    .toReversed();
}

function idsOf(layout: RackLayout, faces: readonly Face[]): number[] {
  const inTrayFirst = [...layout.tiles].sort(
    (a, b) => Number(layout.tray.includes(b.id)) - Number(layout.tray.includes(a.id)),
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
export function inDisplayOrder({ tiles, sort }: Pick<RackLayout, 'tiles' | 'sort'>): readonly RackTile[] {
  if (sort === 'custom') return tiles;
  const place = sort === 'suit' ? faceIndex : byNumber;
  return tiles.toSorted((a, b) => place(a.face) - place(b.face) || a.id - b.id);
}

function byNumber(face: Face): number {
  const suited = numbered(face);
  return suited ? suited.number * 40 + faceIndex(face) : 400 + faceIndex(face);
}

export function facesInTray(layout: RackLayout): Face[] {
  return layout.tray.flatMap((id) => layout.tiles.find((tile) => tile.id === id)?.face ?? []);
}

/** Puts a tile into the tray; with a full tray the layout stays as it is. */
export function addToTray(layout: RackLayout, id: number, needed: number): RackLayout {
  if (layout.tray.includes(id) || layout.tray.length + layout.blind >= needed) return layout;
  return { ...layout, tray: [...layout.tray, id] };
}

export function removeFromTray(layout: RackLayout, id: number): RackLayout {
  return { ...layout, tray: layout.tray.filter((other) => other !== id) };
}

/** How many tiles are passed blind; the tiles chosen last make room. */
export function setBlind(layout: RackLayout, blind: number, needed: number): RackLayout {
  return { ...layout, blind, tray: layout.tray.slice(0, Math.max(0, needed - blind)) };
}

/** Moves a tile in front of another, or to the end; from here on the order is the player's own. */
export function moveBefore(layout: RackLayout, id: number, before: number | null): RackLayout {
  const tile = layout.tiles.find((candidate) => candidate.id === id);
  if (!tile || id === before) return layout;
  const others = inDisplayOrder(layout).filter((candidate) => candidate.id !== id);
  const at = before === null ? others.length : others.findIndex((candidate) => candidate.id === before);
  if (at < 0) return layout;
  return { ...layout, sort: 'custom', tiles: [...others.slice(0, at), tile, ...others.slice(at)] };
}

/** Sorting by layout starts from the order that is on the screen. */
export function sortBy(layout: RackLayout, sort: Sort): RackLayout {
  return sort === 'custom' ? { ...layout, sort, tiles: inDisplayOrder(layout) } : { ...layout, sort };
}
