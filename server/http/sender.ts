// Who sent a request, for work that takes turns between senders, and whether they are still there.
import type { FastifyReply, FastifyRequest } from 'fastify';
import { addressKey } from './address-key.ts';

/** Named so that it is no room's or class's code. */
export function senderOf({ ip }: FastifyRequest): string {
  return `sender ${addressKey(ip)}`;
}

/** Aborted when the connection closes before the answer is out: nobody waits for it any more. */
export function hangUpSignal({ raw }: FastifyReply): AbortSignal {
  const hangUp = new AbortController();
  raw.once('close', () => {
    if (!raw.writableFinished) hangUp.abort();
  });
  return hangUp.signal;
}
