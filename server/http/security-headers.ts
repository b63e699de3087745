// The security headers of every answer: own scripts, styles and pictures only, nothing inline, no frames.
import type { FastifyHelmetOptions } from '@fastify/helmet';
import type { FastifyInstance } from 'fastify';

const DAY_SECONDS = 24 * 60 * 60;

export const securityHeaders: FastifyHelmetOptions = {
  contentSecurityPolicy: {
    // The defaults would turn http into https, which breaks a table served in a home network.
    useDefaults: false,
    directives: {
      defaultSrc: ["'self'"],
      // The page runs the engine's SIMD module; this allows WebAssembly and nothing else.
      scriptSrc: ["'self'", "'wasm-unsafe-eval'"],
      // The page reviews its own rounds in a worker, and a service worker stores it for times without a network.
      workerSrc: ["'self'"],
      styleSrc: ["'self'"],
      imgSrc: ["'self'", 'data:'],
      connectSrc: ["'self'"],
      objectSrc: ["'none'"],
      baseUri: ["'none'"],
      formAction: ["'self'"],
      frameAncestors: ["'none'"],
    },
  },
  // Said over TLS alone, and only where the operator asks for it.
  strictTransportSecurity: false,
  // A table's code stands in its address and must not travel to other sites.
  referrerPolicy: { policy: 'no-referrer' },
};

/** Tells browsers that come over TLS, through a trusted proxy, to use nothing else for so many days; 0 for nothing. */
export function requireTls(app: FastifyInstance, days: number): void {
  if (days === 0) return;
  app.addHook('onRequest', async ({ protocol }, reply) => {
    if (protocol === 'https') reply.header('strict-transport-security', `max-age=${days * DAY_SECONDS}`);
  });
}
