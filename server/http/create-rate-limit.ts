// How often one address may open a room or a class: less often with a card of its own, which is work to check.
import type { FastifyContextConfig, FastifyRequest } from 'fastify';
import { addressKey } from './address-key.ts';

/** A card counts as this many rooms without one: the largest takes half a second to check and compile. */
const CARD_WEIGHT = 10;

/** The route's setting; `perMinute` is for rooms without a card, 0 for no limit. */
export function createRateLimit(perMinute: number): FastifyContextConfig {
  if (perMinute === 0) return {};
  return {
    rateLimit: {
      // The body tells whether a card comes with it.
      hook: 'preHandler',
      timeWindow: '1 minute',
      max: (request) => (bringsCard(request) ? Math.max(1, Math.floor(perMinute / CARD_WEIGHT)) : perMinute),
      keyGenerator: (request) => `${bringsCard(request) ? 'card' : 'room'} ${addressKey(request.ip)}`,
    },
  };
}

function bringsCard({ body }: FastifyRequest): boolean {
  return typeof body === 'object' && body !== null && 'card' in body && body.card !== null;
}
