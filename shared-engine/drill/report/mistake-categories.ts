// The kinds of mistakes that cost a class most; a costly choice counts under each rule of thumb it went against.
import {
  type ChoiceReview,
  isCostly,
  type NumberReview,
  namedAlternative,
  type PassReview,
  type RackGroup,
  thousandth,
} from '../../analysis/index.ts';
import { type RiskGrade, riskGrade } from '../../policy/index.ts';
import type { Face } from '../../rules/index.ts';
import type { ClassEntry } from './entry.ts';
import { type ClassMean, classMean, sumOf } from './mean.ts';

/** Each category as a teacher reads it; `mistakesOf` decides which of them apply to a choice. */
export const MISTAKE_CATEGORIES = {
  'new-multiple': 'Broke up a pair or more that had just formed',
  'broken-multiple': 'Broke up a pair or more',
  'pair-given': 'Gave a pair away',
  'like-numbers-given': 'Gave like numbers away',
  'same-suit-given': 'Gave three tiles of one suit that belong together',
  'flower-given': 'Gave a flower away',
  'too-many-sections': 'Kept too many sections open',
  'too-few-sections': 'Let too many sections go',
  'poorer-fit': 'Missed a better pass for another reason',
  'too-many-blind': 'Passed too many tiles blind',
  'too-few-blind': 'Passed too few tiles blind',
  continued: 'Continued where stopping was better',
  stopped: 'Stopped where continuing was better',
  'asked-too-many': 'Asked for too many tiles across',
  'asked-too-few': 'Asked for too few tiles across',
} as const;
export type MistakeCategory = keyof typeof MISTAKE_CATEGORIES;

export const MISTAKE_CATEGORY_NAMES = Object.keys(MISTAKE_CATEGORIES) as readonly MistakeCategory[];

export interface MistakeCost {
  readonly category: MistakeCategory;
  readonly label: string;
  readonly choices: number;
  /** Null in an anonymous class, where nobody can tell how many of the choices one player made. */
  readonly players: number | null;
  /** Sum of the losses in tiles; a choice with several categories counts under each of them. */
  readonly total: number;
  readonly loss: ClassMean;
  /** Sum of the losses in wins of 100 games, once each choice has its deep analysis. */
  readonly totalWinsLost: number | null;
}

/** The categories that apply to one choice; none where nothing clearly better is known. */
export function mistakesOf(choice: ChoiceReview): readonly MistakeCategory[] {
  if (!isCostly(choice)) return [];
  return choice.kind === 'pass' ? passMistakes(choice) : numberMistakes(choice);
}

function passMistakes(choice: PassReview): readonly MistakeCategory[] {
  const { parts, played } = choice;
  const better = betterPassThan(choice);
  const wronglyBroken = parts.broken.filter((group) => !holds(better.broken, group));
  const given = (grade: RiskGrade): boolean => played.risk === grade && better.risk !== grade;
  const tests: readonly (readonly [MistakeCategory, boolean])[] = [
    ['new-multiple', wronglyBroken.some((group) => holds(parts.formed, group))],
    ['broken-multiple', wronglyBroken.some((group) => !holds(parts.formed, group))],
    ['pair-given', given('pair')],
    ['like-numbers-given', given('like-numbers')],
    ['same-suit-given', given('same-suit')],
    ['flower-given', given('flower')],
    ['too-many-sections', better.sectionsKept !== null && parts.sectionsKept > better.sectionsKept],
    ['too-few-sections', better.sectionsKept !== null && parts.sectionsKept < better.sectionsKept],
  ];
  const found = tests.filter(([, applies]) => applies).map(([category]) => category);
  return found.length > 0 ? found : ['poorer-fit'];
}

interface ComparedPass {
  readonly broken: readonly RackGroup[];
  readonly risk: RiskGrade;
  /** Null where a review does not say how many sections the pass would have kept. */
  readonly sectionsKept: number | null;
}

/** The pass that the verdict rests on: a deep analysis may have found another one than the quick answer. */
function betterPassThan(choice: PassReview): ComparedPass {
  const { best, parts } = choice;
  const tiles = namedAlternative(choice)?.tiles ?? best.tiles;
  if (sameTiles(tiles, best.tiles)) {
    return { broken: parts.brokenByBest, risk: best.risk, sectionsKept: parts.sectionsKeptByBest };
  }
  const broken = parts.groups.filter(({ face }) => tiles.includes(face));
  return { broken, risk: riskGrade(tiles), sectionsKept: null };
}

function sameTiles(some: readonly Face[], others: readonly Face[]): boolean {
  return some.toSorted().join() === others.toSorted().join();
}

function numberMistakes(choice: NumberReview): readonly MistakeCategory[] {
  const more = choice.played > (namedAlternative(choice)?.number ?? choice.best);
  switch (choice.kind) {
    case 'blind':
      return [more ? 'too-many-blind' : 'too-few-blind'];
    case 'vote':
      return [more ? 'continued' : 'stopped'];
    case 'ask':
      return [more ? 'asked-too-many' : 'asked-too-few'];
  }
}

/** Of the players' own choices, costliest category first: by wins lost where all have them, otherwise by tiles. */
export function costliestMistakes(entries: readonly ClassEntry[]): readonly MistakeCost[] {
  const found = entries.flatMap(({ review }, player) =>
    (review?.choices ?? [])
      .filter(({ by }) => by === 'player')
      .flatMap((choice) => mistakesOf(choice).map((category) => ({ category, player, choice }))),
  );
  const costs = MISTAKE_CATEGORY_NAMES.flatMap((category): MistakeCost[] => {
    const mine = found.filter((one) => one.category === category);
    const losses = mine.map(({ choice }) => choice.loss);
    const loss = classMean(losses);
    if (loss === null) return [];
    const total = thousandth(sumOf(losses));
    const players = new Set(mine.map(({ player }) => player)).size;
    const points = mine.flatMap(({ choice: { analysis } }) =>
      analysis.depth === 'deep' && analysis.loss ? [analysis.loss.value] : [],
    );
    const totalWinsLost = points.length === mine.length ? thousandth(sumOf(points)) : null;
    return [
      {
        category,
        label: MISTAKE_CATEGORIES[category],
        choices: mine.length,
        players,
        total,
        loss,
        totalWinsLost,
      },
    ];
  });
  return costliestFirst(costs);
}

function costliestFirst(costs: MistakeCost[]): readonly MistakeCost[] {
  const inPoints = costs.every(({ totalWinsLost }) => totalWinsLost !== null);
  const cost = ({ total, totalWinsLost }: MistakeCost): number => (inPoints ? totalWinsLost! : total);
  return costs.sort((a, b) => cost(b) - cost(a));
}

/** Choices that several players made alike, with what the choice cost each of them; null where that is not told. */
interface AlikeChoices {
  readonly count: number;
  readonly loss: number | null;
  readonly mistakes: readonly MistakeCategory[];
}

/** Of an anonymous class: from the frozen counts alone. */
export function frozenMistakes(
  spreads: readonly { readonly cells: readonly AlikeChoices[] }[],
): readonly MistakeCost[] {
  const cells = spreads.flatMap((spread) => spread.cells);
  return costliestFirst(
    MISTAKE_CATEGORY_NAMES.flatMap((category): MistakeCost[] => {
      const losses = cells
        .filter(({ mistakes }) => mistakes.includes(category))
        .flatMap(({ count, loss: each }) => (each === null ? [] : Array.from({ length: count }, () => each)));
      const loss = classMean(losses);
      if (loss === null) return [];
      const sums = { total: thousandth(sumOf(losses)), totalWinsLost: null };
      const label = MISTAKE_CATEGORIES[category];
      return [{ category, label, choices: losses.length, players: null, loss, ...sums }];
    }),
  );
}

function holds(groups: readonly RackGroup[], { face }: RackGroup): boolean {
  return groups.some((group) => group.face === face);
}
