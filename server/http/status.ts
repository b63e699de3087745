// For whoever looks after the server: whether it lives, whether it can take people, which version it is.
import type { FastifyInstance } from 'fastify';
import type { z } from 'zod';
import { PROTOCOL_VERSIONS, VERSION_PATH, type versionSchema } from '../../shared-engine/index.ts';
import { VERSION } from '../version.ts';
import { Readiness, type ReadinessPorts } from './readiness.ts';
import { rejectWith } from './rejections.ts';

/** Asked by the machines around the server, which share an address with nobody who plays. */
const UNLIMITED = { config: { rateLimit: false } };

export function statusRoutes(app: FastifyInstance, ports: ReadinessPorts): void {
  const readiness = new Readiness(ports);

  app.get('/healthz', UNLIMITED, async () => ({ ok: true }));

  app.get('/readyz', UNLIMITED, async (_, reply) => {
    const problems = await readiness.problems();
    return problems.length === 0 ? { ok: true } : rejectWith(reply, 'not-ready', problems);
  });

  // The package's version and the protocol's alone: nothing of Node, of the system or of the packages.
  app.get(
    VERSION_PATH,
    async (): Promise<z.infer<typeof versionSchema>> => ({
      version: VERSION,
      protocol: PROTOCOL_VERSIONS,
    }),
  );
}
