// The deeper judgement in words: what a choice is called, what its picture says, how far the looking has come.
import type { ChoiceReview, DeepJudgement, Finalist, Measured, Review } from '../../shared-engine/index.ts';
import { optionName } from '../room/option-names.ts';
import { tileList } from '../tiles/tile-names.ts';

export const JUDGEMENT = {
  rivals: 'What else you could have done, on one scale',
  worse: '← worse than yours',
  better: 'better than yours →',
  scale:
    'A dot is the best guess, its bar says how sure that is. Your choice stands on the dotted line; inside the shaded band a difference is too small to matter.',
  you: 'You',
  rival: { 'better-exists': 'Clearly better', 'too-close': 'Nearest rival', 'as-good': 'Nearest rival' },
  firstLook: 'At a first look',
  firstLookAbout:
    'Before the choice was played on in many worlds, it was judged by what it keeps and what may come to it.',
  more: 'Show all that were looked at',
  own: 'Outlook',
  ahead: 'Ahead of yours',
  gift: 'Gift',
  sameAsAny: 'Nothing that was tried is clearly better.',
  outlook: 'Your outlook, step by step',
  outlookAbout:
    'Outlook is your chance in 100 to be the first to complete a line, if all four play on after the exchange.',
  toGo: 'Tiles to go, step by step',
  toGoAbout: 'How many tiles your rack was away from the nearest line on the card.',
  start: 'Start',
} as const;

export interface Grade {
  readonly words: string;
  /** 0 for the best, up to 3. */
  readonly level: number;
}

/** In points of outlook: from here on a loss is the one to think over. */
const LARGE_LOSS = 3;

export function gradeOfJudgement({ verdict, loss }: DeepJudgement): Grade {
  switch (verdict) {
    case 'as-good':
      return { words: 'As good as any', level: 0 };
    case 'too-close':
      return { words: 'Too close to call', level: 1 };
    case 'better-exists':
      return loss !== null && loss.value >= LARGE_LOSS
        ? { words: 'The one to think over', level: 3 }
        : { words: 'Something better was there', level: 2 };
  }
}

export function finalistName(kind: ChoiceReview['kind'], { tiles, number }: Finalist): string {
  if (kind === 'pass' || number === null) return tileList(tiles);
  return optionName(kind, number);
}

/** `+1.2 ± 0.4`, with a real minus sign. */
export function measuredFigure({ value, within }: Measured, signed: boolean): string {
  const size = Math.abs(value).toFixed(1);
  const sign = value < 0 && size !== '0.0' ? '−' : signed && size !== '0.0' ? '+' : '';
  return `${sign}${size} ± ${within.toFixed(1)}`;
}

/** One row of the scale for those who do not see it. */
export function aheadWords(name: string, { ahead }: Finalist, own: boolean): string {
  if (own) return `${name}: your choice.`;
  const side = ahead.value >= 0 ? 'ahead of' : 'behind';
  return `${name}: ${Math.abs(ahead.value).toFixed(1)} points ${side} your choice, give or take ${ahead.within.toFixed(1)}.`;
}

export interface Progress {
  readonly done: number;
  readonly all: number;
}

/** How many choices have been played on; null before the first and after the last. */
export function deepProgress({ choices }: Review): Progress | null {
  const done = choices.filter(({ judgement }) => judgement.depth === 'deep').length;
  if (done === 0 || done === choices.length) return null;
  return { done, all: choices.length };
}

export function progressWords({ done, all }: Progress): string {
  return `Looking more closely: ${done} of ${all} choices are played on in many worlds. What you read now is the first answer.`;
}
