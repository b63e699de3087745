// The tasks about a deal while a class is prepared: preview it, say how rare it is, find one with a lesson in it.
import {
  type BetterPass,
  type CardFile,
  compileCard,
  createAnalyst,
  createSwarKernel,
  type Drill,
  type DrillDeal,
  dealtSize,
  deepReviewer,
  type Face,
  houseCard,
  interestingDeals,
  type JudgedPass,
  judgedFirstPass,
  type Kernel,
  parseDrill,
  prepareDeal,
  type Rarity,
  rarityText,
  type SimdModule,
  sampleRackWithRarity,
} from '../../../shared-engine/index.ts';
import { capitalize } from '../../tiles/tile-names.ts';
import { DEAL_PREVIEW } from './strings.ts';

/** A deal as the teacher has it now, with the drill's bots and card; `card` is null for the house card. */
export interface DealSetup {
  readonly deal: DrillDeal;
  readonly bots: Drill['bots'];
  readonly card: CardFile | null;
}

export type DealTask =
  | ({ readonly kind: 'preview' } & DealSetup)
  /** Plays the first pass that most would make on many times. */
  | ({ readonly kind: 'judge' } & DealSetup)
  /** Tries one seed after the other until a deal has a lesson in it. */
  | ({ readonly kind: 'search'; readonly seeds: readonly string[] } & DealSetup);

export type DealTaskUpdate =
  /** `rarity` is a sentence, and null unless the deal has a constraint. */
  | { readonly kind: 'dealt'; readonly rack: readonly Face[]; readonly rarity: string | null }
  | { readonly kind: 'rejected'; readonly message: string }
  | { readonly kind: 'judged'; readonly pass: JudgedPass }
  | { readonly kind: 'searched'; readonly tried: number }
  | { readonly kind: 'found'; readonly tried: number; readonly seed: string; readonly better: BetterPass }
  | { readonly kind: 'none'; readonly tried: number };

export function kernelOf(card: CardFile | null): Kernel {
  return createSwarKernel(card === null ? houseCard() : compileCard(card));
}

/** Why it cannot be dealt, or null. */
function problemWith({ deal, bots }: DealSetup, kernel: Kernel): DealTaskUpdate | null {
  const drill: Drill = { format: 'quadrille-drill/1', title: 'One deal', form: 'alone', bots, deals: [deal] };
  const parsed = parseDrill(drill, kernel);
  if (parsed.ok) return null;
  return { kind: 'rejected', message: parsed.problems.map(({ text }) => capitalize(text)).join(' ') };
}

/** The rack that the deal gives to the players' seat. */
export function previewDeal(about: DealSetup, kernel: Kernel): DealTaskUpdate {
  const problem = problemWith(about, kernel);
  if (problem) return problem;
  const { deal, bots } = about;
  const { seat, dealer, tiles } = deal;
  let rarity: Rarity | null = null;
  if (tiles.kind === 'sampled' && Object.keys(tiles.constraint).length > 0) {
    const sampled = sampleRackWithRarity(
      { constraint: tiles.constraint, size: dealtSize(seat, dealer), kernel },
      tiles.seed,
    );
    if (!sampled.ok) return { kind: 'rejected', message: capitalize(sampled.message) };
    rarity = sampled.rarity;
  }
  const prepared = prepareDeal({ bots }, deal, kernel);
  if (!prepared.ok) return { kind: 'rejected', message: capitalize(prepared.problem.text) };
  return {
    kind: 'dealt',
    rack: prepared.deal.prepared[seat],
    rarity: rarity && `${capitalize(rarityText(rarity))}.`,
  };
}

/** What the judge says of the rack as it is dealt now. */
export function judgeDeal(about: DealSetup, kernel: Kernel, simd: SimdModule): DealTaskUpdate {
  const problem = problemWith(about, kernel);
  if (problem) return problem;
  const { deal, bots } = about;
  const prepared = prepareDeal({ bots }, deal, kernel);
  if (!prepared.ok) return { kind: 'rejected', message: capitalize(prepared.problem.text) };
  const pass = judgedFirstPass(
    prepared.deal,
    { seat: deal.seat, bots },
    kernel,
    createAnalyst(kernel.card, simd),
  );
  return pass ? { kind: 'judged', pass } : { kind: 'rejected', message: DEAL_PREVIEW.nothing };
}

/** The whole class makes only the first pass from the same tiles; later racks depend on what was chosen. */
const STEPS = ['first-right'] as const;

/** An update after each deal; the last one is `found`, `none` or `rejected`. */
export function* searchDeals(
  task: DealTask & { kind: 'search' },
  kernel: Kernel,
  simd: SimdModule,
): Generator<DealTaskUpdate> {
  const { deal, bots, seeds } = task;
  const problem = problemWith(task, kernel);
  if (problem) return yield problem;
  const review = deepReviewer(createAnalyst(kernel.card, simd), kernel, STEPS);
  const setup = { seat: deal.seat, dealer: deal.dealer, bots, steps: STEPS, tiles: deal.tiles };
  // A constraint too rare to meet is reported once, instead of searching again for every seed.
  const prepared = prepareDeal({ bots }, deal, kernel);
  if (!prepared.ok) return yield { kind: 'rejected', message: capitalize(prepared.problem.text) };
  for (const [place, seed] of seeds.entries()) {
    const [found] = interestingDeals([seed], setup, kernel, review);
    const better = found?.better[0];
    if (better) return yield { kind: 'found', tried: place + 1, seed, better };
    yield { kind: 'searched', tried: place + 1 };
  }
  yield { kind: 'none', tried: seeds.length };
}
