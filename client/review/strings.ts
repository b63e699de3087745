// The review in words: grades of a choice, of a gift, and what the pictures say.
import type { ChoiceReview, GiftGrade, PassReview, Review } from '../../shared-engine/index.ts';
import { STEP_NAMES } from '../room/step-names.ts';
import { tileCount } from '../tiles/tile-names.ts';
import { type Grade, gradeOfJudgement } from './deep-strings.ts';

export const REVIEW = {
  title: 'What this round can teach you',
  private: 'Only you see this page.',
  working: 'Your review is being worked out…',
  strip: 'Your choices, step by step',
  you: 'You',
  best: 'Best found',
  both: 'You, and the best found',
  passed: 'You passed',
  better: 'Best pass found',
  same: 'No pass found was better.',
  received: 'Then came',
  rack: 'Your rack before the pass',
  scale: 'All looked-at passes on one scale',
  further: 'further from a hand',
  nearer: 'nearer to a hand',
  families: 'Families within reach',
  kept: 'Kept',
  lost: 'Let go',
  couldKeep: 'The best pass would have kept',
  none: 'none',
  numbers: 'The numbers',
  choice: 'Choice',
  pass: 'Pass',
  nearness: 'Nearness',
  toGo: 'Tiles to go',
  gift: 'Gift',
  method: 'How this was worked out',
  next: 'Next deal',
  nextLed: 'Ready for the next deal',
  standIn: 'Your time ran out here; a stand-in chose.',
  racks: 'All four racks at the close',
  check: 'Was the deal fair?',
} as const;

/** Losses in tiles; below the first bound a difference is not worth a learner's attention. */
const GRADES = [
  { below: 0.05, words: 'As good as any', level: 0 },
  { below: 0.35, words: 'Close to the best', level: 1 },
  { below: 0.8, words: 'Worth a second look', level: 2 },
  { below: Number.POSITIVE_INFINITY, words: 'The one to think over', level: 3 },
] as const;

/** The deeper judgement where there is one, the first look until then. */
export function gradeOf({ loss, judgement }: Pick<ChoiceReview, 'loss' | 'judgement'>): Grade {
  if (judgement.depth === 'deep') return gradeOfJudgement(judgement);
  return GRADES.find(({ below }) => loss < below) ?? GRADES[3];
}

/** `about half a tile behind the best`. */
export function lossWords(loss: number): string {
  if (loss < 0.05) return 'No better choice was found.';
  if (loss < 0.2) return 'A sliver of a tile behind the best.';
  if (loss < 0.4) return 'About a third of a tile behind the best.';
  if (loss < 0.65) return 'About half a tile behind the best.';
  if (loss < 1.3) return 'About a whole tile behind the best.';
  return `About ${Math.round(loss)} tiles behind the best.`;
}

const GIFTS: Readonly<Record<GiftGrade, string>> = {
  'nothing-special': 'nothing that hangs together',
  flower: 'a flower, which nearly everybody can use',
  neighbours: 'neighbours of one suit',
  'like-numbers': 'like numbers',
  pair: 'a pair, the dearest gift',
};

export function giftWords(grade: GiftGrade, to: string): string {
  return `${to} got ${GIFTS[grade]}.`;
}

export function giftName(grade: GiftGrade): string {
  return grade === 'nothing-special' ? 'nothing special' : grade.replace('-', ' ');
}

export function choiceName(choice: ChoiceReview): string {
  switch (choice.kind) {
    case 'pass':
      return STEP_NAMES[choice.step];
    case 'blind':
      return `${STEP_NAMES[choice.step]}, unseen`;
    case 'vote':
      return 'Go on or stop';
    case 'ask':
      return 'Courtesy number';
  }
}

export function journey({ toGoStart, toGoEnd }: Review): string {
  return `You began ${tileCount(toGoStart)} from the nearest hand on the card and closed ${tileCount(toGoEnd)} from it.`;
}

export function scaleWords(review: PassReview): string {
  return `${review.alternatives.length} passes of ${review.legal} on one scale; yours is number ${review.rank}. ${lossWords(
    review.loss,
  )}`;
}

/** Two places, with a real minus sign. */
export function figure(value: number): string {
  return value.toFixed(2).replace('-', '−');
}
