// What is worked out about a deal while a class is prepared: what it deals, how rare that is, and one with a lesson in it.
import {
  type BetterPass,
  type CardFile,
  closeJudge,
  compileCard,
  createAnalyst,
  createKernel,
  type Drill,
  type DrillDeal,
  dealtSize,
  describeRack,
  type Face,
  houseCard,
  interestingDeals,
  type Kernel,
  parseDrill,
  prepareDeal,
  type Rarity,
  rarityInWords,
  type Vectors,
} from '../../shared-engine/index.ts';

/** A deal as it stands, for the drill's bots and card; null for the house card. */
export interface AboutDeal {
  readonly deal: DrillDeal;
  readonly bots: Drill['bots'];
  readonly card: CardFile | null;
}

export type DealTask =
  | ({ readonly kind: 'preview' } & AboutDeal)
  /** One deal after the other, until one has a lesson in it. */
  | ({ readonly kind: 'search'; readonly seeds: readonly string[] } & AboutDeal);

export type DealNews =
  /** `rarity` is a sentence, for a described deal alone. */
  | { readonly kind: 'dealt'; readonly rack: readonly Face[]; readonly rarity: string | null }
  | { readonly kind: 'refused'; readonly sentence: string }
  | { readonly kind: 'looked'; readonly tried: number }
  | { readonly kind: 'found'; readonly tried: number; readonly seed: string; readonly better: BetterPass }
  | { readonly kind: 'none'; readonly tried: number };

export function kernelOf(card: CardFile | null): Kernel {
  return createKernel(card === null ? houseCard() : compileCard(card));
}

/** What forbids dealing it, or null. */
function problemWith({ deal, bots }: AboutDeal, kernel: Kernel): DealNews | null {
  const drill: Drill = { format: 'quadrille-drill/1', title: 'One deal', form: 'alone', bots, deals: [deal] };
  const parsed = parseDrill(drill, kernel);
  if (parsed.ok) return null;
  return { kind: 'refused', sentence: parsed.problems.map(({ sentence }) => sentence).join(' ') };
}

/** What this deal deals to the seat it is made for. */
export function preview(about: AboutDeal, kernel: Kernel): DealNews {
  const problem = problemWith(about, kernel);
  if (problem) return problem;
  const { deal, bots } = about;
  const { seat, dealer, tiles } = deal;
  let rarity: Rarity | null = null;
  if (tiles.kind === 'described' && Object.keys(tiles.wish).length > 0) {
    const described = describeRack(tiles.wish, dealtSize(seat, dealer), kernel, tiles.seed);
    if (!described.ok) return { kind: 'refused', sentence: sentenceOf(described.sentence) };
    rarity = described.rarity;
  }
  const prepared = prepareDeal({ bots }, deal, kernel);
  if (!prepared.ok) return { kind: 'refused', sentence: prepared.problem.sentence };
  return {
    kind: 'dealt',
    rack: prepared.deal.prepared[seat],
    rarity: rarity && `${sentenceOf(rarityInWords(rarity))}.`,
  };
}

/** Only the first pass is one that the whole class faces with the same tiles, whatever it chooses. */
const STEPS = ['first-right'] as const;

/** News after each deal that was looked at; ends with `found`, `none` or `refused`. */
export function* search(
  task: DealTask & { kind: 'search' },
  kernel: Kernel,
  vectors: Vectors,
): Generator<DealNews> {
  const { deal, bots, seeds } = task;
  const problem = problemWith(task, kernel);
  if (problem) return yield problem;
  const judge = closeJudge(createAnalyst(kernel.card, vectors), kernel, STEPS);
  const lookout = { seat: deal.seat, dealer: deal.dealer, bots, steps: STEPS, tiles: deal.tiles };
  // A wish too rare to find is told once, and not sought again for every seed.
  const prepared = prepareDeal({ bots }, deal, kernel);
  if (!prepared.ok) return yield { kind: 'refused', sentence: prepared.problem.sentence };
  for (const [place, seed] of seeds.entries()) {
    const [found] = interestingDeals([seed], lookout, kernel, judge);
    const better = found?.better[0];
    if (better) return yield { kind: 'found', tried: place + 1, seed, better };
    yield { kind: 'looked', tried: place + 1 };
  }
  yield { kind: 'none', tried: seeds.length };
}

function sentenceOf(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
