// How often one address may open a room or a class, less often with a card or a drill, which are work to prepare; and how
// often it may try something besides the limit of all routes.
import type { FastifyContextConfig, FastifyInstance, FastifyRequest } from 'fastify';
import { addressKey } from './address-key.ts';

/**
 * With a card or a drill a room counts as this many without: the largest take a worker half a second and more. So does the
 * page of a club, which is stored as long as a class and needs nobody at it.
 */
const FILE_WEIGHT = 10;

/** The route's setting; `perMinute` is for rooms without a file, 0 for no limit. `weighs` says which count as ten. */
export function createRateLimit(
  perMinute: number,
  weighs: (request: FastifyRequest) => boolean = bringsFile,
): FastifyContextConfig {
  if (perMinute === 0) return {};
  return {
    rateLimit: {
      // The body tells whether a file comes with it.
      hook: 'preHandler',
      timeWindow: '1 minute',
      max: (request) => (weighs(request) ? Math.max(1, Math.floor(perMinute / FILE_WEIGHT)) : perMinute),
      keyGenerator: (request) => `${weighs(request) ? 'file' : 'room'} ${addressKey(request.ip)}`,
    },
  };
}

/** Counts requests of one address in a minute or an hour, and says whether this one is one too many. */
export function createTries(
  app: FastifyInstance,
  max: number,
  timeWindow: '1 minute' | '1 hour' = '1 minute',
): (request: FastifyRequest) => Promise<boolean> {
  const count = app.createRateLimit({
    max,
    timeWindow,
    keyGenerator: ({ ip }) => addressKey(ip),
  });
  return async (request) => {
    const counted = await count(request);
    return !counted.isAllowed && counted.isExceeded;
  };
}

function bringsFile({ body }: FastifyRequest): boolean {
  if (typeof body !== 'object' || body === null) return false;
  return 'drill' in body || ('card' in body && body.card !== null);
}
