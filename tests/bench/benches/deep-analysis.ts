// From the last pass of a round of four people to their first reviews, and on to the last deep analysis.
import { setTimeout as wait } from 'node:timers/promises';
import type { ServerMessage } from '../../../shared-engine/protocol/messages.ts';
import { stream } from '../../../shared-engine/rules/deal/random.ts';
import { anyAnswer, deal, isAsked, isClosed, ownView, tableOfFour } from '../../kit/http-client.ts';
import { startProcess } from '../../kit/server-process.ts';
import type { Peer } from '../../kit/sockets.ts';
import type { Bench } from '../bench.ts';

const ROUNDS = 2;
/** Thinking time before each choice, in milliseconds; people take longer. */
const THINKING_MS = 3000;

export const bench: Bench = {
  summary: 'Milliseconds from the close to the first and to the deepest reviews of four people, by round.',
  async run({ seed }) {
    const server = startProcess({ REQUESTS_PER_MINUTE: '0', ROOMS_PER_MINUTE: '0' });
    const rounds: { first: number; ready: number; deepest: number }[] = [];
    try {
      const { peers } = await tableOfFour({ url: await server.url });
      for (let round = 1; round <= ROUNDS; round++) {
        await deal(peers);
        await Promise.all(peers.map((peer) => playSlowly(peer, `${seed} ${round}`)));
        const closed = performance.now();
        const since = () => Math.round(performance.now() - closed);
        const shares = await Promise.all(peers.map((peer) => shareAnalyzed(peer, round, 0)));
        const first = since();
        await Promise.all(peers.map((peer) => shareAnalyzed(peer, round, 1)));
        rounds.push({ first, ready: Math.round(25 * shares.reduce((a, b) => a + b)), deepest: since() });
      }
    } finally {
      server.child.kill('SIGTERM');
      await server.ended;
    }
    const each = (what: keyof (typeof rounds)[0]) => rounds.map((round) => round[what]).join(' ');
    return {
      thinkMs: THINKING_MS,
      firstReviewsMs: each('first'),
      judgedByThenInPerCent: each('ready'),
      deepestReviewsMs: each('deepest'),
    };
  },
};

async function playSlowly(peer: Peer, seed: string): Promise<void> {
  const random = stream(seed, `guest/${peer.table.you}`);
  for (;;) {
    await peer.untilTable(() => isAsked(peer) || isClosed(peer));
    if (isClosed(peer)) return;
    await wait(THINKING_MS);
    await peer.choose(anyAnswer(ownView(peer), random));
  }
}

/** The share of deeply analyzed choices in the first review of the round that reaches `least`. */
function shareAnalyzed(peer: Peer, round: number, least: number): Promise<number> {
  return peer
    .until('a review that is deep enough', (message: ServerMessage) => {
      if (message.kind !== 'review' || message.round !== round) return null;
      const { choices } = message.review;
      const share = choices.filter(({ analysis }) => analysis.depth === 'deep').length / choices.length;
      return share >= least && [share];
    })
    .then(([share]) => share!);
}
