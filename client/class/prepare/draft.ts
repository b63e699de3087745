// A drill while the teacher still prepares it: pure functions that change the content of a drill file.
import {
  type Amount,
  type ClassTerms,
  type Constraint,
  type Drill,
  type DrillDeal,
  type Face,
  type MoveStep,
  SEATS,
  type Step,
  type Terms,
} from '../../../shared-engine/index.ts';
import { drillWaysOf, unusualCount } from '../../room/ways.ts';

/** A comment while it is written. */
interface DraftComment {
  readonly chosen: readonly Face[] | number | undefined;
  readonly words: string | undefined;
}

export type DealKind = DrillDeal['tiles']['kind'];

/** In a drill made here the players sit on seat 0; East is the same seat or the one to its right. */
const PLAYER = SEATS[0];
const OTHER_DEALER = SEATS[1];

export function emptyDrill(seed: () => string): Drill {
  return {
    format: 'quadrille-drill/1',
    title: '',
    form: 'alone',
    bots: { styles: ['typical', 'typical', 'typical'], seed: seed() },
    deals: [newDeal([], 'random', seed())],
  };
}

export function newDeal(deals: readonly DrillDeal[], kind: DealKind, seed: string): DrillDeal {
  return { id: newId(deals), seat: PLAYER, dealer: OTHER_DEALER, tiles: emptyTiles(kind, seed) };
}

function newId(deals: readonly DrillDeal[]): string {
  const used = new Set(deals.map(({ id }) => id));
  let number = deals.length + 1;
  while (used.has(`deal-${number}`)) number++;
  return `deal-${number}`;
}

function emptyTiles(kind: DealKind, seed: string): DrillDeal['tiles'] {
  switch (kind) {
    case 'random':
      return { kind, seed };
    case 'manual':
      return { kind, racks: [[], [], [], []], seed };
    case 'sampled':
      return { kind, constraint: {}, seed };
  }
}

/** What is played otherwise than usual; a drill that plays as usual says nothing of it. */
export function withWays({ ways: _, ...drill }: Drill, terms: Terms): Drill {
  return unusualCount(terms, 'class') === 0 ? drill : { ...drill, ways: drillWaysOf(terms) };
}

/** At tables of four nothing is taken home. */
export function classPartFor({ form }: Drill, terms: ClassTerms): ClassTerms {
  const { takeHome: _, ...rest } = terms;
  return form === 'tables' ? rest : terms;
}

export function withDeal(drill: Drill, place: number, deal: DrillDeal): Drill {
  return { ...drill, deals: drill.deals.map((old, index) => (index === place ? deal : old)) };
}

export function withDealAt(drill: Drill, place: number, deal: DrillDeal): Drill {
  return { ...drill, deals: [...drill.deals.slice(0, place), deal, ...drill.deals.slice(place)] };
}

export function withoutDeal(drill: Drill, place: number): Drill {
  return { ...drill, deals: drill.deals.filter((_, other) => other !== place) };
}

/** The deal of one place at another one. */
export function moved(drill: Drill, from: number, to: number): Drill {
  const deal = drill.deals[from];
  return deal ? withDealAt(withoutDeal(drill, from), to, deal) : drill;
}

/** The same deal with an id of its own. */
export function copyOf(deal: DrillDeal, deals: readonly DrillDeal[]): DrillDeal {
  return { ...deal, id: newId(deals) };
}

export function asEast(deal: DrillDeal, east: boolean): DrillDeal {
  return { ...deal, dealer: east ? deal.seat : SEATS[(deal.seat + 1) % SEATS.length]! };
}

/** An empty text removes the entry. */
export function withText(deal: DrillDeal, entry: 'title' | 'task' | 'note', text: string): DrillDeal {
  const { [entry]: _, ...rest } = deal;
  return text === '' ? rest : { ...rest, [entry]: text };
}

/** What is left empty is not said; a deal without a comment has no entry. */
export function withComment(deal: DrillDeal, step: Step, { chosen, words }: DraftComment): DrillDeal {
  const { comments: before = {}, ...rest } = deal;
  const { [step]: _, ...others } = before;
  const comment = { ...(chosen !== undefined && { chosen }), ...(words && { words }) };
  const comments = Object.keys(comment).length === 0 ? others : { ...others, [step]: comment };
  return Object.keys(comments).length === 0 ? rest : { ...rest, comments };
}

/** Tiles that come with a pass because the teacher sets them; a deal in which nothing is set has no script. */
export function withArrival(deal: DrillDeal, step: MoveStep, tiles: readonly Face[]): DrillDeal {
  const scripted: NonNullable<DrillDeal['scripted']> = deal.scripted ?? { arrivals: {} };
  const { [step]: _, ...others } = scripted.arrivals;
  const arrivals = tiles.length === 0 ? others : { ...others, [step]: tiles };
  const { stopped, asked } = scripted;
  const isEmpty = Object.keys(arrivals).length === 0 && stopped === undefined && asked === undefined;
  return isEmpty ? withoutScript(deal) : { ...deal, scripted: { ...scripted, arrivals } };
}

/** The same deal, in which the bots choose by themselves. */
export function withoutScript({ scripted: _, ...deal }: DrillDeal): DrillDeal {
  return deal;
}

/** The same deal with other tiles where they are dealt at random. */
export function withSeed(deal: DrillDeal, seed: string): DrillDeal {
  return { ...deal, tiles: { ...deal.tiles, seed } };
}

/** The tiles picked for the players' rack. */
export function ownRack(deal: DrillDeal): readonly Face[] {
  return deal.tiles.kind === 'manual' ? deal.tiles.racks[deal.seat] : [];
}

export function withOwnRack(deal: DrillDeal, rack: readonly Face[]): DrillDeal {
  if (deal.tiles.kind !== 'manual') return deal;
  const [a, b, c, d] = deal.tiles.racks.map((old, seat) => (seat === deal.seat ? rack : old));
  return { ...deal, tiles: { ...deal.tiles, racks: [a!, b!, c!, d!] } };
}

export type AmountEntry = 'jokers' | 'flowers' | 'pairs' | 'inARow' | 'likeNumbers' | 'toGo';
export type Bound = 'any' | 'exactly' | 'at-least' | 'at-most';

export function boundOf(amount: Amount | undefined): { bound: Bound; count: number } {
  if (amount === undefined) return { bound: 'any', count: 1 };
  if (typeof amount === 'number') return { bound: 'exactly', count: amount };
  return 'from' in amount
    ? { bound: 'at-least', count: amount.from }
    : { bound: 'at-most', count: amount.to };
}

export function withAmount(
  constraint: Constraint,
  entry: AmountEntry,
  bound: Bound,
  count: number,
): Constraint {
  const { [entry]: _, ...rest } = constraint;
  switch (bound) {
    case 'any':
      return rest;
    case 'exactly':
      return { ...rest, [entry]: count };
    case 'at-least':
      return { ...rest, [entry]: { from: count } };
    case 'at-most':
      return { ...rest, [entry]: { to: count } };
  }
}
