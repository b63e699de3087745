// From the close of a round to its last deep analysis: alone at a server, in a page, and three people at one table.
import { startPageServer } from '../../../client/tools/page-server.ts';
import { chooseFor } from '../../../shared-engine/bots/choose.ts';
import { botRandom } from '../../../shared-engine/bots/finish-round.ts';
import { stepOf } from '../../../shared-engine/rules/exchange/pending-decision.ts';
import {
  ALONE,
  deal,
  FRIENDS,
  isAsked,
  isClosed,
  openRoom,
  ownView,
  sitDown,
  takeSeat,
} from '../../kit/http-client.ts';
import { houseKernel } from '../../kit/reviews.ts';
import { seedNamed } from '../../kit/rounds.ts';
import type { Peer } from '../../kit/sockets.ts';
import type { Bench } from '../bench.ts';
import { secondsInPage } from '../close/page-close.ts';

/** How long somebody thinks at each step, in milliseconds. */
const PACES = { quick: 800, usual: 2500, slow: 4000 } as const;
const TIMEOUT_MS = 240_000;

interface Address {
  readonly url: string;
}

export const bench: Bench = {
  summary: 'Seconds from the close of a round to its last deep analysis, with a server and without.',
  async run({ seed }) {
    const server = await startPageServer();
    try {
      const at = { url: server.origin };
      const [quick, usual, slow] = [
        await both(at, PACES.quick, seed),
        await both(at, PACES.usual, seed),
        await both(at, PACES.slow, seed),
      ];
      const { page, offline } = await secondsInPage(PACES.usual);
      return {
        server_s: usual.alone,
        page_s: tenth(page),
        offline_s: tenth(offline),
        three_people_s: usual.three,
        worst_s: Math.max(usual.alone, tenth(page), tenth(offline), usual.three),
        server_at_0_8_s: quick.alone,
        three_people_at_0_8_s: quick.three,
        server_at_4_s: slow.alone,
        three_people_at_4_s: slow.three,
      };
    } finally {
      await server.stop();
    }
  },
};

async function both(server: Address, pace: number, seed: string) {
  const host = await openRoom(server, ALONE);
  const alone = await secondsAfterClose([await sitDown(server, host)], pace, `${seed} alone ${pace}`);
  const friend = await openRoom(server, { ...FRIENDS, bots: [null, null, 'strong'] });
  const guests = [friend, await takeSeat(server, friend.code), await takeSeat(server, friend.code)];
  const peers: Peer[] = [];
  for (const guest of guests) peers.push(await sitDown(server, guest));
  await deal(peers);
  const three = await secondsAfterClose(peers, pace, `${seed} three ${pace}`);
  return { alone, three };
}

/** Everybody thinks for so long at each step. */
async function secondsAfterClose(peers: readonly Peer[], pace: number, noise: string): Promise<number> {
  await Promise.all(peers.map((peer) => peer.untilTable(({ round }) => round === 1)));
  while (!peers.every(isClosed)) {
    await Promise.all(peers.map((peer) => peer.untilTable(() => isAsked(peer) || isClosed(peer))));
    await new Promise((resolve) => setTimeout(resolve, pace));
    await Promise.all(peers.map((peer, n) => (isAsked(peer) ? answer(peer, `${noise} ${n}`) : null)));
  }
  const closed = performance.now();
  while (!peers.every(isReviewed)) {
    if (performance.now() - closed > TIMEOUT_MS) throw new Error('The deep analyses did not come.');
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
  const seconds = tenth((performance.now() - closed) / 1000);
  for (const peer of peers) peer.socket.terminate();
  return seconds;
}

async function answer(peer: Peer, noise: string): Promise<void> {
  const view = ownView(peer);
  const steps = view.record.steps.length;
  const random = botRandom(seedNamed(noise), stepOf(view.stage)!, view.record.seat);
  const choice = chooseFor('typical', view, houseKernel, random);
  if (choice === null) return;
  const reply = await peer.choose(choice);
  if (reply.kind === 'rejected') throw new Error(reply.message);
  await peer.untilTable(() => ownView(peer).record.steps.length > steps || ownView(peer).answer !== null);
}

function isReviewed(peer: Peer): boolean {
  const last = peer.messages.findLast((message) => message.kind === 'review');
  if (last?.kind !== 'review' || last.more) return false;
  return last.review.choices.every(({ analysis }) => analysis.depth === 'deep');
}

function tenth(value: number): number {
  return Math.round(value * 10) / 10;
}
