// Whether a choice that was found costly is that among neighbors of every style, as a player would say it.
import { NEIGHBOR_STYLES, type NeighborStyle, type Robustness } from '../../comparison/robustness.ts';
import type { Verdict } from '../../comparison/verdict.ts';
import { hasBetter } from '../choice-verdict.ts';
import { listed } from './phrases.ts';

const PLAYERS: Readonly<Record<NeighborStyle, string>> = {
  casual: 'easy-going',
  typical: 'club',
  strong: 'strong',
};

/** What a choice that was found costly may be among players of one style, the worst first. */
const AMONG: Readonly<Record<Verdict, string>> = {
  costly: 'it is costly',
  'a-little-worse': 'it is worse, but perhaps only a little',
  'cant-say': 'we can’t say',
  'just-as-good': 'it is just as good',
  best: 'we found nothing better',
};

/** "strong players": among whom something better is sure, where it is not so among all; null otherwise. */
export function sureAmong({ verdicts }: Robustness): string | null {
  const sure = NEIGHBOR_STYLES.filter((style) => hasBetter(verdicts[style]));
  const isPart = sure.length > 0 && sure.length < NEIGHBOR_STYLES.length;
  return isPart ? `${listed(sure.map((style) => PLAYERS[style]))} players` : null;
}

const BETWEEN = 'Our verdict takes the others for something between club and strong players.';
const NOT_COSTLY = 'So we do not call it costly.';

/** About a choice that was found costly, in one sentence or several. */
export function robustnessSentences({ verdicts, turns }: Robustness): readonly string[] {
  if (turns.length === 0) return ['It is costly whoever the others are: easy-going, club or strong players.'];
  const parts = Object.entries(AMONG).flatMap(([verdict, words]) => {
    const among = NEIGHBOR_STYLES.filter((style) => verdicts[style] === verdict);
    return among.length === 0 ? [] : [{ words, players: listed(among.map((style) => PLAYERS[style])) }];
  });
  const told =
    parts.length === 1
      ? parts.map(({ words }) => `Whoever the others are, ${words}.`)
      : [
          'It depends on who the others are.',
          ...parts.map(({ words, players }) => `Among ${players} players ${words}.`),
        ];
  // Where it is milder among all of them, it is not called costly.
  if (turns.length === NEIGHBOR_STYLES.length) return [...told, NOT_COSTLY];
  // Where it is milder among club or among strong players, a reader wonders why it is called so.
  return turns.includes('typical') !== turns.includes('strong') ? [...told, BETWEEN] : told;
}
