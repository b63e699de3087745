// Why one choice is better than another: which tile makes the difference, which hands use it, where the two lead.
import { FACE_COUNT, FACES, type Face } from '../../rules/index.ts';
import type { Situation } from '../belief/situation.ts';
import { type Alternative, actionOf } from '../comparison/alternatives.ts';
import type { Analyst } from '../comparison/analyze.ts';
import type { Budget } from '../comparison/budget.ts';
import { meanOf } from '../comparison/estimate.ts';
import { always, column, type DealSource, type Seeds } from '../comparison/sampled-deals.ts';
import { createHandFinder, type HandFinder } from './closest-hands.ts';
import { createPlayToEnds, type PlayToEnds, type RoundEnds } from './round-ends.ts';

/** Batches are numbered from here on, far from those of the search and of the verdict. */
export const FIRST_WHY_BATCH = 0x2_0000;

/** Changing one tile must bring at least this share of the difference, or it is not called the reason. */
const REASON_SHARE = 0.5;

/** Two choices side by side: the one played, and the one that is named. */
export interface SideBySide {
  readonly played: number;
  readonly named: number;
}

export interface TileUse {
  readonly face: Face;
  /** How many of it the rack held; the share counts hands that want as many. */
  readonly copies: number;
  readonly share: number;
}

export interface FartherUse {
  readonly keep: Face;
  readonly pass: Face;
  /** The share of those hands that use the tile kept, after the named pass, and the tile given, after the one played. */
  readonly shares: SideBySide;
  readonly section: string;
}

export interface ChoiceWhy {
  /** Sampled deals in which the closest hands at the close were looked at; shares are of those hands. */
  readonly deals: number;
  /** The exchange of one tile for another that alone brings at least half of the difference; null where none does. */
  readonly reason: { readonly keep: Face; readonly pass: Face; readonly share: number } | null;
  /** Tiles that the named pass keeps, used after it; those it gives instead, used after the one played; none of numbers. */
  readonly keep: readonly TileUse[];
  readonly pass: readonly TileUse[];
  /**
   * Of the hands one tile farther away than the closest: the tile kept that most of them use, in which section most often,
   * and the tile given that fewest use; null where only a number is chosen.
   */
  readonly farther: FartherUse | null;
  /** Share of the deals in which a section is the closest at the close, by its id; small ones are left out. */
  readonly sections: Readonly<Record<string, SideBySide>>;
  /** How many sections each pass keeps within reach: at most one tile behind the nearest before it. */
  readonly sectionsKept: SideBySide;
  /** Tiles to go of what each of the two keeps, before anything arrives; of numbers those of the whole rack. */
  readonly toGoKept: SideBySide;
  /** Means at the close: tiles to go, and tiles that singles and pairs of the closest hands lack. */
  readonly toGo: SideBySide;
  readonly lacking: SideBySide;
  /** Means at the close: tiles the closest hands lack of which the wall has no more, and jokers they have no place for. */
  readonly gone: SideBySide;
  readonly idleJokers: SideBySide;
  /** Mean at the close: patterns of the card with a hand at most one tile farther away than the closest. */
  readonly handsNear: SideBySide;
  /** Points a game, if the closest hand is the one that is won with. */
  readonly points: SideBySide;
  /** Share of the closest hands that must stay concealed. */
  readonly concealed: SideBySide;
}

export interface WhyTask {
  readonly situation: Situation;
  readonly seeds: Seeds;
  readonly played: Alternative;
  readonly named: Alternative;
  readonly batches: Budget['why'];
}

interface Tools {
  readonly finder: HandFinder;
  readonly play: PlayToEnds;
}

const prepared = new WeakMap<Analyst, Tools>();

/** Made for a card when it is asked for first. */
function toolsOf(analyst: Analyst): Tools {
  const known = prepared.get(analyst);
  if (known) return known;
  const { card, leaf, belief } = analyst;
  const finder = createHandFinder(card);
  const tools = { finder, play: createPlayToEnds(card, leaf, belief, finder) };
  prepared.set(analyst, tools);
  return tools;
}

export function whyBetter(analyst: Analyst, source: DealSource, task: WhyTask): ChoiceWhy {
  const { situation, seeds, played, named, batches } = task;
  const { finder, play } = toolsOf(analyst);
  const range = { first: FIRST_WHY_BATCH, batches: batches.ends };
  const [after, instead] = [played, named].map(({ action }) => play({ situation, seeds, range }, action)) as [
    RoundEnds,
    RoundEnds,
  ];
  const [own, other] = [played, named].map(tilesChosen) as [readonly number[], readonly number[]];
  const keep = without(own, other);
  const pass = without(other, own);
  const used = (ends: RoundEnds, faces: readonly number[]): TileUse[] =>
    [...new Set(faces)].map((face) => {
      const copies = situation.rack[face]!;
      return { face: FACES[face]!, copies, share: ends.uses(face, copies) };
    });
  const near = finder.closest(situation.rack, 0).toGo + 1;
  const kept = (tiles: readonly number[]): readonly number[] =>
    situation.rack.map((count, face) => count - tiles.filter((tile) => tile === face).length);
  const within = (tiles: readonly number[]): number => finder.sectionsWithin(kept(tiles), near);
  const away = (tiles: readonly number[]): number => finder.closest(kept(tiles), 0).toGo;
  const beside = (of: (ends: RoundEnds) => number): SideBySide => ({ played: of(after), named: of(instead) });
  const sections = analyst.card.sections.flatMap(({ id }, index) => {
    const shares = beside((ends) => ends.sections[index]!);
    return Math.max(shares.played, shares.named) < 0.05 ? [] : [[id, shares] as const];
  });
  return {
    deals: after.deals,
    reason: reasonFor(source, task, keep, pass),
    keep: used(instead, keep),
    pass: used(after, pass),
    farther: fartherUse({ keep, instead }, { pass, after }, analyst),
    sections: Object.fromEntries(sections),
    sectionsKept: { played: within(own), named: within(other) },
    toGoKept: { played: away(own), named: away(other) },
    toGo: beside((ends) => ends.toGo),
    lacking: beside((ends) => ends.lacking),
    gone: beside((ends) => ends.gone),
    idleJokers: beside((ends) => ends.idleJokers),
    handsNear: beside((ends) => ends.handsNear),
    points: beside((ends) => ends.points),
    concealed: beside((ends) => ends.concealed),
  };
}

function fartherUse(
  { keep, instead }: { readonly keep: readonly number[]; readonly instead: RoundEnds },
  { pass, after }: { readonly pass: readonly number[]; readonly after: RoundEnds },
  { card }: Analyst,
): FartherUse | null {
  const usedBy = (ends: RoundEnds, faces: readonly number[]) =>
    [...new Set(faces)]
      .map((face) => {
        const sections = ends.usesFarther(face);
        return { face, sections, share: sections.reduce((sum, share) => sum + share, 0) };
      })
      .toSorted((a, b) => b.share - a.share);
  const [kept] = usedBy(instead, keep);
  const given = usedBy(after, pass).at(-1);
  if (kept === undefined || given === undefined) return null;
  const most = kept.sections.indexOf(Math.max(...kept.sections));
  return {
    keep: FACES[kept.face]!,
    pass: FACES[given.face]!,
    shares: { played: given.share, named: kept.share },
    section: card.sections[most]!.id,
  };
}

/** None where only a number is chosen: which tiles go beside those passed blind is another choice. */
function tilesChosen({ tiles, number }: Alternative): readonly number[] {
  return number === null ? tiles : [];
}

/**
 * Every exchange of a single tile is tried; the best one must bring its share of the difference in deals of its own.
 */
function reasonFor(
  source: DealSource,
  { situation: { seat }, played, named, batches }: WhyTask,
  keep: readonly number[],
  pass: readonly number[],
): ChoiceWhy['reason'] {
  const size = played.tiles.length;
  const swaps = [...new Set(keep)].flatMap((kept) =>
    [...new Set(pass)].map((given) => {
      const tiles = [...without(played.tiles, [kept]), given].sort((a, b) => a - b);
      return { kept, given, action: actionOf(tiles, size) };
    }),
  );
  const meansIn = (first: number, count: number, actions: readonly (readonly number[])[]): number[] => {
    const results = source.rollOut({ first, batches: count }, actions.map(always));
    return actions.map((_, action) => meanOf(column(results, action, seat)));
  };
  if (swaps.length === 0) return null;
  const first = FIRST_WHY_BATCH + batches.ends;
  const tried = meansIn(
    first,
    batches.pick,
    swaps.map(({ action }) => action),
  );
  const best = swaps[tried.indexOf(Math.max(...tried))]!;
  const actions = [played.action, named.action, best.action];
  const [before, better, swapped] = meansIn(first + batches.pick, batches.confirm, actions) as [
    number,
    number,
    number,
  ];
  const share = (swapped - before) / (better - before);
  if (better <= before || share < REASON_SHARE) return null;
  return { keep: FACES[best.kept]!, pass: FACES[best.given]!, share };
}

/** Tiles of `some` that are not in `others`, copies counted. */
function without(some: readonly number[], others: readonly number[]): readonly number[] {
  const left = new Int8Array(FACE_COUNT);
  for (const face of others) left[face]!++;
  return some.filter((face) => left[face]!-- <= 0);
}
