// What the review says of a choice that was played on many times, and how far that has come.
import type { ChoiceReview, Finalist, Review, SideBySide } from '../../shared-engine/index.ts';
import { optionName } from '../room/step-names.ts';
import { tileList } from '../tiles/tile-names.ts';

export const DEEP = {
  alternatives: 'What else you could have done, on one scale',
  worse: '← worse than yours',
  better: 'better than yours →',
  scale:
    'Each dot is our best estimate, and its bar shows how sure we are. Your choice is on the dotted line. The shaded band is one win in 100 games to either side. The one named was picked on other deals; a row that is ahead of it here may be lucky.',
  you: 'You',
  bestAlternative: {
    best: 'Best other',
    'just-as-good': 'Best other',
    'a-little-worse': 'Better',
    costly: 'Better',
    'cant-say': 'Best other',
  },
  more: 'Show everything we compared',
  wins: 'Wins in 100 games',
  difference: 'More than yours',
  giveaway: 'Cost of what it gave away',
  sameAsAny: 'Nothing we tried is clearly better.',
  winsByStep: 'Your wins in 100 games, step by step',
  winsByStepAbout: 'How many of 100 games you would win from there, if all four play on.',
  toGoByStep: 'How far away, step by step',
  toGoByStepAbout: 'How many tiles your rack was away from the closest hand on the card.',
  start: 'Start',
  up: 'better',
} as const;

export function finalistName(kind: ChoiceReview['kind'], { tiles, number }: Finalist): string {
  if (kind === 'pass' || number === null) return tileList(tiles);
  return optionName(kind, number);
}

/** One row of the scale for those who do not see it. */
export function differenceSentence(name: string, { difference }: Finalist, own: boolean): string {
  if (own) return `${name}: your choice.`;
  const side = difference.value >= 0 ? 'more' : 'fewer';
  return `${name}: ${Math.abs(difference.value).toFixed(1)} ${side} wins in 100 games than your choice.`;
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
