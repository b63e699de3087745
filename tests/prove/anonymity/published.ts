// A published drill of which everything is fetched after every round that somebody sends.
import { drillPath } from '../../../shared-engine/protocol/paths.ts';
import {
  device,
  openDrill,
  playAtRandom,
  playDeal,
  publish,
  quickDrill,
  sendRound,
} from '../../kit/published.ts';
import { startServer } from '../../kit/server.ts';
import type { Fetched } from './evening.ts';

export interface PublishedPlan {
  readonly seed: string;
  readonly players: number;
  /** Who plays by whose opinion and asks whose question; everybody else by their own. */
  readonly as?: Readonly<Record<number, number>>;
}

/** Opinions that several share, so that something is told. */
const OPINIONS = 3;
const PAGES = ['dashboard', 'report', 'released'] as const;

export async function playPublished({ seed, players, as = {} }: PublishedPlan): Promise<readonly Fetched[]> {
  const at = await startServer({ seed: `anonymous ${seed}` });
  const { code, secret } = await publish(at, quickDrill());
  const drill = await openDrill(at, code, device('onlooker'));
  const opinions = Array.from({ length: OPINIONS }, (_, n) => {
    return playDeal(drill, 0, playAtRandom(`${seed} ${n}`)).choices;
  });
  const fetched: Fetched[] = [];
  for (let player = 0; player < players; player++) {
    const like = as[player] ?? player;
    await sendRound(at, code, device(`${seed} ${player}`), {
      id: `anonymous-${player}`,
      deal: drill.deals[0]!.id,
      choices: opinions[like % OPINIONS]!,
      questions: like % 4 === 0 ? [{ step: 'first-right', text: `What would ${like} pass?` }] : [],
    });
    const headers = { authorization: `Bearer ${secret}` };
    const texts = PAGES.map(async (page) => {
      return [page, await (await fetch(`${at.url}${drillPath(code, page)}`, { headers })).text()] as const;
    });
    fetched.push(Object.fromEntries(await Promise.all(texts)));
  }
  await at.stop();
  return fetched;
}
