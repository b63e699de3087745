// The ways a bot may play, as data.
import type { GiftGrade } from '../rack/gift.ts';

export const STYLES = ['casual', 'typical', 'strong', 'guarded', 'random'] as const;
export type StyleName = (typeof STYLES)[number];

/** How a style that judges its rack weighs things; every figure is in tiles, the unit of nearness. */
export interface Judgement {
  readonly kind: 'judging';
  /** The worth of letting a face go is misjudged by up to this much either way, anew at each step. */
  readonly blur: number;
  /** What giving tiles of each grade away costs; null where no thought is given to the neighbour. */
  readonly gifts: Readonly<Record<GiftGrade, number>> | null;
}

export type Style = Judgement | { readonly kind: 'any-legal' };

export const STYLE_DATA: Readonly<Record<StyleName, Style>> = {
  casual: { kind: 'judging', blur: 1.2, gifts: null },
  typical: { kind: 'judging', blur: 0.6, gifts: null },
  strong: { kind: 'judging', blur: 0, gifts: null },
  guarded: {
    kind: 'judging',
    blur: 0,
    gifts: { 'nothing-special': 0, flower: 0.15, neighbours: 0.25, 'like-numbers': 0.4, pair: 0.5 },
  },
  random: { kind: 'any-legal' },
};
