// Kinds of players as a belief tells them apart: by how sharply they see what a tile is worth.

/** Sharpest first. The kind "typical" is our guess at a club player. */
const PLAYER_KINDS = ['strong', 'typical', 'casual', 'random'] as const;
type PlayerKind = (typeof PLAYER_KINDS)[number];

/**
 * The share of the near hands' weight that makes a tile e times less likely to be passed. Fitted to 350 passes of each
 * style of bot: with these a pass is likelier by 3.9, 1.2 and 0.5 nats than any legal pass; see `prove -- belief`.
 */
export const TEMPERATURES: Readonly<Record<PlayerKind, number>> = {
  strong: 0.03,
  typical: 0.25,
  casual: 0.45,
  random: 1e9,
};
