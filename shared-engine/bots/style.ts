// The ways a bot may play, as data.
import type { GiftGrade } from '../rack/gift.ts';

export const STYLES = ['casual', 'typical', 'strong', 'guarded', 'random'] as const;
export type StyleName = (typeof STYLES)[number];

/** How a style that judges its rack weighs things; every figure is in tiles, the unit of nearness. */
export interface Judgement {
  readonly kind: 'judging';
  /** How much targets behind the nearest one count (see `nearness`): small means looking at one hand only. */
  readonly softening: number;
  /** The worth of letting a tile go is misjudged by up to this much either way, anew at each step. */
  readonly blur: number;
  /** What giving tiles of each grade away costs; null when no thought is given to the neighbour. */
  readonly gifts: Readonly<Record<GiftGrade, number>> | null;
}

export type Style = Judgement | { readonly kind: 'any-legal' };

export const STYLE_DATA: Readonly<Record<StyleName, Style>> = {
  casual: { kind: 'judging', softening: 0.05, blur: 1, gifts: null },
  typical: { kind: 'judging', softening: 0.15, blur: 0.35, gifts: null },
  strong: { kind: 'judging', softening: 0.25, blur: 0, gifts: null },
  guarded: {
    kind: 'judging',
    softening: 0.25,
    blur: 0,
    gifts: { 'nothing-special': 0, flower: 0.15, neighbours: 0.25, 'like-numbers': 0.4, pair: 0.5 },
  },
  random: { kind: 'any-legal' },
};
