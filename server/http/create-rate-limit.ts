// How often one address may open a room or a class: less often with a card or a drill, which are work to prepare.
import type { FastifyContextConfig, FastifyRequest } from 'fastify';
import { addressKey } from './address-key.ts';

/** With a card or a drill a room counts as this many without: the largest take a worker half a second and more. */
const FILE_WEIGHT = 10;

/** The route's setting; `perMinute` is for rooms without a file, 0 for no limit. */
export function createRateLimit(perMinute: number): FastifyContextConfig {
  if (perMinute === 0) return {};
  return {
    rateLimit: {
      // The body tells whether a file comes with it.
      hook: 'preHandler',
      timeWindow: '1 minute',
      max: (request) => (bringsFile(request) ? Math.max(1, Math.floor(perMinute / FILE_WEIGHT)) : perMinute),
      keyGenerator: (request) => `${bringsFile(request) ? 'file' : 'room'} ${addressKey(request.ip)}`,
    },
  };
}

function bringsFile({ body }: FastifyRequest): boolean {
  if (typeof body !== 'object' || body === null) return false;
  return 'drill' in body || ('card' in body && body.card !== null);
}
