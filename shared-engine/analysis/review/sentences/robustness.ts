// Whether a costly choice is one among neighbors of every style, as a player would say it.
import { NEIGHBOR_STYLES, type NeighborStyle, type Robustness } from '../../comparison/robustness.ts';
import type { Verdict } from '../../comparison/verdict.ts';
import { listed } from './phrases.ts';

/** The end of "among strong players …" where the verdict turns; a costly one has no other. */
const TURNED: Readonly<Record<Verdict, string>> = {
  best: 'nothing is better',
  'just-as-good': 'it is just as good',
  'a-little-worse': 'it is only a little worse',
  costly: 'it is costly',
  'cant-say': 'we can’t say',
};

const PLAYERS: Readonly<Record<NeighborStyle, string>> = {
  casual: 'easy-going players',
  typical: 'club players',
  strong: 'strong players',
};

/** About a choice that was told to be costly. */
export function robustnessSentence({ turns, verdicts }: Robustness): string {
  if (turns.length === 0) {
    return `It is costly whoever the others are: ${listed(NEIGHBOR_STYLES.map((style) => PLAYERS[style]))}.`;
  }
  const told = new Set(turns.map((style) => verdicts[style]));
  const parts = [...told].map((verdict) => {
    const among = turns.filter((style) => verdicts[style] === verdict);
    return `among ${listed(among.map((style) => PLAYERS[style]))} ${TURNED[verdict]}`;
  });
  return `It depends on who the others are: ${listed(parts)}.`;
}
