// The built page: its files, and the same first document for every link to a table.
import { existsSync } from 'node:fs';
import path from 'node:path';
import fastifyStatic from '@fastify/static';
import type { FastifyInstance, FastifyReply } from 'fastify';

/** Files of the build carry a hash of their content in the name, so they may be kept for good. */
const HASHED = `${path.sep}assets${path.sep}`;

/** Serves the folder of the built page. Without one (during development) only the API answers. */
export async function pages(app: FastifyInstance, folder: string): Promise<void> {
  if (!existsSync(path.join(folder, 'index.html'))) return;
  await app.register(fastifyStatic, {
    root: folder,
    cacheControl: false,
    // The build packs its files; nothing is packed while somebody waits.
    preCompressed: true,
    setHeaders(response, file) {
      const kept = file.includes(HASHED) ? 'public, max-age=31536000, immutable' : 'no-cache';
      response.setHeader('cache-control', kept);
      response.setHeader('vary', 'accept-encoding');
    },
  });
  for (const page of ['/t/:code', '/c/:code', '/c/:code/:part', '/lead']) {
    app.get(page, (_, reply: FastifyReply) => reply.sendFile('index.html'));
  }
}
