// The bots layer: what a bot of some style chooses, and rounds that bots finish.

export { chooseFor } from './choose.ts';
export { botRandom, type Chooser, finishRound } from './finish-round.ts';
export { ROLLOUT_SEEDS, usesRollouts } from './rollout-bot.ts';
export { scriptedChoice } from './scripted.ts';
