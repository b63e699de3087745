// The verdict on a choice from what is known of it, and which choice of a round there is most to learn from.
import type { Verdict } from '../comparison/verdict.ts';
import type { DeepAnalysis, Finalist, MeasuredValue } from './analysis.ts';
import { BASIS, COSTLY_TILES } from './basis.ts';
import type { ChoiceReview } from './review.ts';

/** A verdict has one name everywhere. */
export const VERDICT_NAMES: Readonly<Record<Verdict, string>> = {
  best: 'Best',
  'just-as-good': 'Just as good',
  'a-little-worse': 'A little worse',
  costly: 'Costly',
  'cant-say': 'Can’t say',
};

/** Of the deep analysis where there is one, from the loss in tiles until then. */
export function choiceVerdict({ loss, analysis }: Pick<ChoiceReview, 'loss' | 'analysis'>): Verdict {
  return analysis.depth === 'deep' ? toldVerdict(analysis) : verdictByTiles(loss);
}

/**
 * The verdict that is told everywhere. A comparison takes the others for a little of each style. Where each style was asked
 * for and a choice is costly among none of them, nobody meets the players that it is costly against: it is told to be a
 * little worse, and where not even that is sure among any of them, that we can't say.
 */
export function toldVerdict(analysis: Pick<DeepAnalysis, 'verdict' | 'robustness'>): Verdict {
  const { verdict, robustness } = analysis;
  if (verdict !== 'costly' || robustness === undefined) return verdict;
  const among = Object.values(robustness.verdicts);
  if (among.includes('costly')) return 'costly';
  return among.includes('a-little-worse') ? 'a-little-worse' : 'cant-say';
}

/** Whether the comparison alone would call it costly. */
export function isMilderAmongAll(analysis: Pick<DeepAnalysis, 'verdict' | 'robustness'>): boolean {
  return toldVerdict(analysis) !== analysis.verdict;
}

function verdictByTiles(loss: number): Verdict {
  if (loss === 0) return 'best';
  if (loss < BASIS.smallLoss) return 'just-as-good';
  return loss < COSTLY_TILES ? 'a-little-worse' : 'costly';
}

export function isCostly(choice: ChoiceReview): boolean {
  return choiceVerdict(choice) === 'costly';
}

/** Whether something better is told of a choice. */
export function hadBetter(choice: ChoiceReview): boolean {
  return hasBetter(choiceVerdict(choice));
}

/** Whether something better is told of a choice with this verdict. */
export function hasBetter(verdict: Verdict): boolean {
  return verdict === 'costly' || verdict === 'a-little-worse';
}

/** The alternative that the verdict rests on; null where there is none. */
export function namedAlternative(choice: ChoiceReview): Pick<Finalist, 'tiles' | 'number'> | null {
  const { analysis } = choice;
  if (analysis.depth === 'deep') {
    return analysis.bestAlternative === null ? null : analysis.finalists[analysis.bestAlternative]!;
  }
  if (choice.kind === 'pass') return { tiles: choice.best.tiles, number: null };
  return { tiles: [], number: choice.best };
}

/** A neighbor is named for a loss of which at least this share went through it. */
const MOST = 0.5;
/** From this share on it is named where nothing else stands out. */
const PART = 0.25;

/** Whether most of what another pass would bring is that it gives the neighbor less. */
export function feedsNeighbor(analysis: DeepAnalysis): boolean {
  return isNeighborsShare(analysis, MOST);
}

/** The same of a part that is worth a word. */
export function feedsNeighborPartly(analysis: DeepAnalysis): boolean {
  return isNeighborsShare(analysis, PART);
}

/** At least that share of the loss, and beyond doubt. */
function isNeighborsShare(analysis: DeepAnalysis, share: number): boolean {
  const { value, halfWidth } = wentToNeighbor(analysis);
  return value > halfWidth && value >= share * lossIn(analysis);
}

/** How much more the pass played cost by what it gave its receiver than the better one would have. */
function wentToNeighbor({ finalists, played, bestAlternative }: DeepAnalysis): MeasuredValue {
  const [own, other] = [played, bestAlternative].map(
    (place) => (place === null ? null : finalists[place]?.giveaway) ?? { value: 0, halfWidth: 0 },
  ) as [MeasuredValue, MeasuredValue];
  const halfWidth = Math.sqrt(own.halfWidth ** 2 + other.halfWidth ** 2);
  return { value: own.value - other.value, halfWidth };
}

/** Nothing goes through anybody where nothing is lost. */
function lossIn({ loss }: DeepAnalysis): number {
  return loss !== null && loss.value > 0 ? loss.value : Number.POSITIVE_INFINITY;
}

/** Whether a pass helps its receiver more than most do, beyond doubt over the racks that it could have had. */
export function helpsMore({ giveaway }: DeepAnalysis): boolean {
  return giveaway !== null && giveaway.value > giveaway.halfWidth;
}

/** The player's own choices; where the player made none, those made for the seat. */
export function choicesMeant(choices: readonly ChoiceReview[]): readonly ChoiceReview[] {
  const own = choices.filter(({ by }) => by === 'player');
  return own.length > 0 ? own : choices;
}

/**
 * Whether nothing would have come of another vote, as of several votes to stop each alone is enough (rule O1), or of the
 * number that had been better to ask for, as of two the smaller holds (rule Y1).
 */
export function madeNoDifference(choice: ChoiceReview): boolean {
  if (choice.kind === 'pass') return false;
  const { askedAcross, anotherStopped, played } = choice;
  if (askedAcross === null) return anotherStopped;
  const named = namedAlternative(choice)?.number ?? played;
  return hadBetter(choice) && Math.min(named, askedAcross) === Math.min(played, askedAcross);
}

/** Verdicts by how much there is to learn from. */
const RANKS: Readonly<Record<Verdict, number>> = {
  costly: 4,
  'a-little-worse': 3,
  best: 1,
  'just-as-good': 1,
  'cant-say': 0,
};

/**
 * The choice that the headline speaks of and that a page opens first: by its verdict, then what is worse whoever the
 * others are before what is not, then by the loss told. Tiles and wins cannot be compared, so that the first deep analysis
 * leaves the quick answers out. Null where nothing was chosen.
 */
export function costliestChoice(choices: readonly ChoiceReview[]): ChoiceReview | null {
  const meant = choicesMeant(choices);
  const deep = meant.filter(({ analysis }) => analysis.depth === 'deep');
  const [first, ...rest] = deep.length > 0 ? deep : meant;
  if (first === undefined) return null;
  return rest.reduce((worst, choice) => (costsMore(choice, worst) ? choice : worst), first);
}

function costsMore(one: ChoiceReview, other: ChoiceReview): boolean {
  const order = [
    rankOf(one) - rankOf(other),
    Number(isWorseAmongAll(one)) - Number(isWorseAmongAll(other)),
    lossOf(one) - lossOf(other),
  ];
  return (order.find((difference) => difference !== 0) ?? 0) > 0;
}

/** What made no difference comes behind all else of which something better is told. */
function rankOf(choice: ChoiceReview): number {
  return hadBetter(choice) && madeNoDifference(choice) ? 2 : RANKS[choiceVerdict(choice)];
}

/** Whether something better is sure among neighbors of every style; where they were not asked for, the verdict stands alone. */
export function isWorseAmongAll({ analysis }: Pick<ChoiceReview, 'analysis'>): boolean {
  const { verdicts } = (analysis.depth === 'deep' && analysis.robustness) || {};
  return verdicts === undefined || Object.values(verdicts).every(hasBetter);
}

/** In wins in 100 games, or in tiles until the choice has been played on. */
export function lossOf({ loss, analysis }: ChoiceReview): number {
  return analysis.depth === 'deep' ? (analysis.loss?.value ?? 0) : loss;
}
