// Who sent a request, for work that takes turns between senders.
import type { FastifyRequest } from 'fastify';
import { addressKey } from './address-key.ts';

/** Named so that it is no room's or class's code. */
export function senderOf({ ip }: FastifyRequest): string {
  return `sender ${addressKey(ip)}`;
}
