// What cost a class most, by theme: each costly choice under the rules of thumb it went against.
import type { Basis, ChoiceReview, Group, NumberReview, PassReview } from '../../analysis/review/review.ts';
import { isCostly } from '../costly.ts';
import type { ClassEntry } from './entry.ts';
import { type ClassMean, classMean, sumOf, thousandth } from './mean.ts';

/** Each theme as a teacher reads it; what it means is decided in `themesOf`. */
export const THEMES = {
  'new-multiple': 'Broke up a pair or more that had just formed',
  'broken-multiple': 'Broke up a pair or more',
  'pair-given': 'Gave a pair away',
  'like-numbers-given': 'Gave like numbers away',
  'neighbours-given': 'Gave three tiles of one suit that belong together',
  'flower-given': 'Gave a flower away',
  'too-many-families': 'Kept too many families open',
  'too-few-families': 'Let too many families go',
  'poorer-fit': 'Kept tiles that fit less well with what may arrive',
  'too-many-unseen': 'Passed too many tiles on unseen',
  'too-few-unseen': 'Passed too few tiles on unseen',
  'went-on': 'Went on where stopping was better',
  stopped: 'Stopped where going on was better',
  'asked-too-many': 'Asked for too many tiles across',
  'asked-too-few': 'Asked for too few tiles across',
} as const;
export type Theme = keyof typeof THEMES;

export const THEME_NAMES = Object.keys(THEMES) as readonly Theme[];

export interface ThemeCost {
  readonly theme: Theme;
  readonly words: string;
  readonly choices: number;
  readonly pupils: number;
  /** Sum of the losses in tiles; a choice with several themes counts under each of them. */
  readonly total: number;
  readonly loss: ClassMean;
  /** Sum of the losses in points of outlook, once each of them was judged deeply. */
  readonly totalPoints: number | null;
}

/** The themes of one choice; none where it cost too little to speak of. */
export function themesOf(choice: ChoiceReview, basis: Basis): readonly Theme[] {
  if (!isCostly(choice, basis)) return [];
  return choice.kind === 'pass' ? passThemes(choice) : numberThemes(choice);
}

function passThemes({ parts, played, best }: PassReview): readonly Theme[] {
  const wronglyBroken = parts.broken.filter((group) => !holds(parts.brokenByBest, group));
  const given = (grade: PassReview['played']['gift']): boolean =>
    played.gift === grade && best.gift !== grade;
  const tests: readonly (readonly [Theme, boolean])[] = [
    ['new-multiple', wronglyBroken.some((group) => holds(parts.formed, group))],
    ['broken-multiple', wronglyBroken.some((group) => !holds(parts.formed, group))],
    ['pair-given', given('pair')],
    ['like-numbers-given', given('like-numbers')],
    ['neighbours-given', given('neighbours')],
    ['flower-given', given('flower')],
    ['too-many-families', parts.familiesKept > parts.familiesKeptByBest],
    ['too-few-families', parts.familiesKept < parts.familiesKeptByBest],
  ];
  const themes = tests.filter(([, applies]) => applies).map(([theme]) => theme);
  return themes.length > 0 ? themes : ['poorer-fit'];
}

function numberThemes({ kind, played, best }: NumberReview): readonly Theme[] {
  const more = played > best;
  switch (kind) {
    case 'blind':
      return [more ? 'too-many-unseen' : 'too-few-unseen'];
    case 'vote':
      return [more ? 'went-on' : 'stopped'];
    case 'ask':
      return [more ? 'asked-too-many' : 'asked-too-few'];
  }
}

/** Of the pupils' own choices, the theme that cost most in all first: in points where all have them, else in tiles. */
export function costliestThemes(entries: readonly ClassEntry[]): readonly ThemeCost[] {
  const found = entries.flatMap(({ review }, pupil) =>
    (review?.choices ?? [])
      .filter(({ by }) => by === 'owner')
      .flatMap((choice) => themesOf(choice, review!.basis).map((theme) => ({ theme, pupil, choice }))),
  );
  const costs = THEME_NAMES.flatMap((theme): ThemeCost[] => {
    const mine = found.filter((one) => one.theme === theme);
    const losses = mine.map(({ choice }) => choice.loss);
    const loss = classMean(losses);
    if (loss === null) return [];
    const total = thousandth(sumOf(losses));
    const pupils = new Set(mine.map(({ pupil }) => pupil)).size;
    const points = mine.flatMap(({ choice: { judgement } }) =>
      judgement.depth === 'deep' && judgement.loss ? [judgement.loss.value] : [],
    );
    const totalPoints = points.length === mine.length ? thousandth(sumOf(points)) : null;
    return [{ theme, words: THEMES[theme], choices: mine.length, pupils, total, loss, totalPoints }];
  });
  const inPoints = costs.every(({ totalPoints }) => totalPoints !== null);
  const cost = ({ total, totalPoints }: ThemeCost): number => (inPoints ? totalPoints! : total);
  return costs.sort((a, b) => cost(b) - cost(a));
}

function holds(groups: readonly Group[], { face }: Group): boolean {
  return groups.some((group) => group.face === face);
}
