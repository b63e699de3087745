// The card that somebody opens a table or a class with: the house card, or a file of their own once it is checked.
import type { FastifyRequest } from 'fastify';
import type { Cards, CheckedCard } from '../work-ports.ts';
import { senderOf } from './sender.ts';

/** `file` is whatever was sent. Null where it cannot be checked just now. */
export async function cardFromRequest(
  request: FastifyRequest,
  file: unknown,
  cards: Cards,
): Promise<CheckedCard | null> {
  if (file === null || file === undefined) return { ok: true, choice: { kind: 'house' } };
  return cards.check(file, senderOf(request));
}
