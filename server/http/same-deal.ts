// The same deal for friends, without a teacher: opened with tiles that the server draws, joined like a class, compared step by step.
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import {
  CLASSES_PATH,
  type Drill,
  type OpenSameDeal,
  openSameDealSchema,
  SAME_DEALS_PATH,
  SEATS,
} from '../../shared-engine/index.ts';
import { friendChoicesFor } from '../class/friend-choices.ts';
import { newerPage } from '../class/newer-page.ts';
import { playingCard } from '../playing-card.ts';
import type { Entropy } from '../ports.ts';
import { hashSecret, newSecret } from '../secrets.ts';
import { cardFromRequest } from './card-from-request.ts';
import { type AtClass, type ClassRoutes, classAt } from './classes.ts';
import { playerOf } from './cookies.ts';
import { createRateLimit } from './create-rate-limit.ts';
import { rejectWith, sendRejection } from './rejections.ts';
import { hangUpSignal, senderOf } from './sender.ts';

export function sameDealRoutes(app: FastifyInstance, ports: ClassRoutes): void {
  const { classes, clock, roomsPerMinute } = ports;

  app.post(SAME_DEALS_PATH, { config: createRateLimit(roomsPerMinute) }, (request, reply) =>
    openSameDeal(request, reply, ports),
  );

  app.get<AtClass>(`${CLASSES_PATH}/:code/choices`, async (request, reply) => {
    const live = await classAt(classes, request);
    if (!live?.state.terms.amongFriends) return rejectWith(reply, 'no-such-class');
    const player = playerOf(request, live.state);
    // The deal is there all the same: whoever deleted the own data is not told that everybody's went.
    if (player === null) return rejectWith(reply, 'not-seated');
    return newerPage({ live, clock, seen: request.query.seen }, async () => friendChoicesFor(live, player));
  });
}

async function openSameDeal(request: FastifyRequest, reply: FastifyReply, ports: ClassRoutes) {
  const signal = hangUpSignal(reply);
  const body = openSameDealSchema.safeParse(request.body);
  if (!body.success) return rejectWith(reply, 'bad-request');
  const card = await cardFromRequest(request, body.data.card, ports.cards);
  if (card === null) return rejectWith(reply, 'busy');
  if (!card.ok) return rejectWith(reply, 'bad-card', card.problems);
  const drillRequest = { card: playingCard(card.choice), sender: senderOf(request), signal };
  const prepared = await ports.drills.prepare(drillOf(body.data, ports.entropy), drillRequest);
  if (prepared === null || !prepared.ok || signal.aborted) return rejectWith(reply, 'busy');
  const { drill, deals } = prepared;
  const opened = await ports.classes.open({
    kind: 'opened',
    drill,
    deals,
    terms: { deadline: null, racks: false, names: true, cardClosed: false, amongFriends: true },
    card: card.choice,
    // Nobody is told it: whoever opened the deal sees no more of the others than they do (rule SD2).
    secretHash: hashSecret(newSecret(ports.entropy)),
  });
  if (!opened.ok) return sendRejection(reply, opened);
  const dealt = await opened.live.submit({ kind: 'deal-next' });
  return dealt.ok ? reply.code(201).send({ code: opened.live.code }) : sendRejection(reply, dealt);
}

/** One deal of chance, which nobody knows who plays it. */
function drillOf({ style, ways }: OpenSameDeal, entropy: Entropy): Drill {
  const [first = 0] = entropy.bytes(1);
  const seed = () => Buffer.from(entropy.bytes(32)).toString('hex');
  const dealer = SEATS[first % SEATS.length] ?? 0;
  return {
    format: 'quadrille-drill/1',
    title: 'The same deal',
    form: 'alone',
    ...(ways && { ways }),
    bots: { styles: [style, style, style], seed: seed() },
    deals: [{ id: 'deal-1', seat: 0, dealer, tiles: { kind: 'random', seed: seed() } }],
  };
}
