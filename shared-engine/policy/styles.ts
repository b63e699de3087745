// The ways a bot may play, as data.
import type { Budget } from '../analysis/comparison/budget.ts';
import type { GiftGrade } from './gift.ts';

export const STYLES = ['casual', 'typical', 'strong', 'guarded', 'thoughtful', 'random'] as const;
export type StyleName = (typeof STYLES)[number];

/** How a style that judges its rack weighs things; every figure is in tiles, the unit of nearness. */
export interface Judgement {
  readonly kind: 'judging';
  /** The worth of letting a face go is misjudged by up to this much either way, anew at each step. */
  readonly blur: number;
  /** What giving tiles of each grade away costs; null where no thought is given to the neighbour. */
  readonly gifts: Readonly<Record<GiftGrade, number>> | null;
}

/** A style that tries what it could choose in worlds that fit what it knows; counted in worlds, never in time. */
export interface PlayingOn extends Pick<Budget, 'field' | 'rounds'> {
  readonly kind: 'playing-on';
}

export type Style = Judgement | PlayingOn | { readonly kind: 'any-legal' };

export const STYLE_DATA: Readonly<Record<StyleName, Style>> = {
  casual: { kind: 'judging', blur: 1.2, gifts: null },
  typical: { kind: 'judging', blur: 0.6, gifts: null },
  strong: { kind: 'judging', blur: 0, gifts: null },
  guarded: {
    kind: 'judging',
    blur: 0,
    gifts: { 'nothing-special': 0, flower: 0.15, neighbours: 0.25, 'like-numbers': 0.4, pair: 0.5 },
  },
  // Eight worlds a batch: 24 choices in 32 worlds, then the best 8 of them in 96 more.
  thoughtful: {
    kind: 'playing-on',
    field: 24,
    rounds: [
      { batches: 4, stay: 8 },
      { batches: 12, stay: 1 },
    ],
  },
  random: { kind: 'any-legal' },
};
