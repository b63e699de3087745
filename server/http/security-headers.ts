// The security headers of every answer: own scripts, styles and pictures only, nothing inline, no frames.
import type { FastifyHelmetOptions } from '@fastify/helmet';

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
  // A table's code stands in its address and must not travel to other sites.
  referrerPolicy: { policy: 'no-referrer' },
};
