// What the review says of a choice that was played on many times, and how far that has come.
import type { ChoiceReview, Finalist, Review, SideBySide } from '../../shared-engine/index.ts';
import { optionName } from '../room/step-names.ts';
import { tileList } from '../tiles/tile-names.ts';

export const DEEP = {
  alternatives: 'What else you could have done, on one scale',
  worse: '← worse than yours',
  better: 'better than yours →',
  scale:
    'What a choice brings lies somewhere on its bar. Your choice is on the dotted line: a bar that crosses it may be better or worse than yours. The shaded band is one win in 100 games to either side. The dot marks the one we name: it did best in other games, played first. Where there are several bars, one may stand apart by chance alone. So the verdict goes by the dot.',
  you: 'You',
  bestAlternative: {
    best: 'Best other',
    'just-as-good': 'Best other',
    'a-little-worse': 'Better',
    costly: 'Better',
    'cant-say': 'Best other',
  },
  coach: 'Coach',
  more: 'Show everything we compared',
  wins: 'Wins in 100 games',
  difference: 'More than yours',
  giveaway: 'Cost of what it gave away',
  winsByStep: 'Your wins in 100 games, step by step',
  winsByStepAbout: 'How many of 100 games you would win from there, if all four play on.',
  /** Under the line that ends where luck and choices end. */
  luckByStep: 'Luck is part of this line: what came to you moves it as well as what you chose.',
  toGoByStep: 'How far away, step by step',
  toGoByStepAbout: 'How many tiles your rack was away from the closest hand on the card.',
  start: 'Start',
  close: 'Close',
  up: 'better',
} as const;

export function finalistName(kind: ChoiceReview['kind'], { tiles, number }: Finalist): string {
  if (kind === 'pass' || number === null) return tileList(tiles);
  return optionName(kind, number);
}

/** What a row of the scale is: a number is told of the one named alone, of the others no more than is known. */
export type DrawnRow = 'own' | 'named' | 'other';

/** One row of the scale for those who do not see it. */
export function differenceSentence(name: string, { difference }: Finalist, drawn: DrawnRow): string {
  const { value, halfWidth } = difference;
  if (drawn === 'own') return `${name}: your choice.`;
  if (drawn === 'other') {
    return `${name}: between ${range(value - halfWidth, value + halfWidth)} wins in 100 games than your choice.`;
  }
  return `${name}: ${Math.abs(value).toFixed(1)} ${value >= 0 ? 'more' : 'fewer'} wins in 100 games than your choice.`;
}

/** Said without a sign, because it is heard: the smaller number first, and across nothing what is fewer first. */
function range(low: number, high: number): string {
  const [least, most] = [low, high].map((end) => Math.abs(end).toFixed(1));
  if (low >= 0) return `${least} and ${most} more`;
  return high > 0 ? `${least} fewer and ${most} more` : `${most} and ${least} fewer`;
}

/** The second figure, for those who play for points: wins times what the closest hand pays. */
export function pointsSentence({ played, named }: SideBySide): string {
  return `In points: about ${named.toFixed(1)} a game with the better choice, ${played.toFixed(1)} with yours, if you win with the closest hand.`;
}

export interface AnalysisProgress {
  readonly done: number;
  readonly all: number;
}

/** How many choices have been played on; null before the first and after the last. */
export function analysisProgress({ choices }: Review): AnalysisProgress | null {
  const done = choices.filter(({ analysis }) => analysis.depth === 'deep').length;
  if (done === 0 || done === choices.length) return null;
  return { done, all: choices.length };
}

export function progressSentence({ done, all }: AnalysisProgress): string {
  return `We have played on ${done} of your ${all} choices many times. The others still show our first answer.`;
}
