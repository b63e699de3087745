// The ways a bot may play, as data.
import type { RiskGrade } from './pass-risk.ts';

export const STYLES = ['casual', 'typical', 'strong', 'guarded', 'steady', 'thoughtful', 'random'] as const;
export type StyleName = (typeof STYLES)[number];

/** A style that goes by the nearness of its rack; every figure is in tiles, the unit of nearness. */
export interface NearnessStyle {
  readonly kind: 'nearness';
  /** What losing a face costs is misjudged by up to this much either way, anew at each step. */
  readonly noise: number;
  /** What passing tiles of each grade costs; null where no thought is given to the neighbor. */
  readonly riskCosts: Readonly<Record<RiskGrade, number>> | null;
}

/** A style that plays out what it could choose in sampled deals; its effort is counted in deals, never in time. */
export interface RolloutStyle {
  readonly kind: 'rollout';
  /** How many alternatives it tries at all. */
  readonly candidates: number;
  /** How many of them are left at most after each round, and the batches of deals of that round. */
  readonly rounds: readonly { readonly batches: number; readonly survivors: number }[];
}

/** Steady play is what the rollouts play on with: see `steady.ts`. */
export type Style =
  | NearnessStyle
  | RolloutStyle
  | { readonly kind: 'steady' }
  | { readonly kind: 'any-legal' };

export const STYLE_DATA: Readonly<Record<StyleName, Style>> = {
  casual: { kind: 'nearness', noise: 1.2, riskCosts: null },
  typical: { kind: 'nearness', noise: 0.6, riskCosts: null },
  strong: { kind: 'nearness', noise: 0, riskCosts: null },
  guarded: {
    kind: 'nearness',
    noise: 0,
    riskCosts: { none: 0, flower: 0.15, 'same-suit': 0.25, 'like-numbers': 0.4, pair: 0.5 },
  },
  steady: { kind: 'steady' },
  // Eight deals a batch: 24 choices in 32 deals, then the best 8 of them in 96 more.
  thoughtful: {
    kind: 'rollout',
    candidates: 24,
    rounds: [
      { batches: 4, survivors: 8 },
      { batches: 12, survivors: 1 },
    ],
  },
  random: { kind: 'any-legal' },
};
