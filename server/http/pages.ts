// The built page: its files, and the same first document for every link to a table or a class.
import { existsSync } from 'node:fs';
import path from 'node:path';
import fastifyStatic from '@fastify/static';
import type { FastifyInstance, FastifyReply } from 'fastify';

/** Files of the build carry a hash of their content in the name, so a browser may store them for good. */
const HASHED = `${path.sep}assets${path.sep}`;

const PAGE_ROUTES = ['/t/:code', '/c/:code', '/c/:code/:part', '/lead'];

// Built, this file lies in dist/server/http beside dist/client; run from source, dist is beside server.
const fromSource = import.meta.filename.endsWith('.ts');
export const BUILT_PAGE = path.resolve(
  import.meta.dirname,
  fromSource ? '../../dist/client' : '../../client',
);

/** Serves the folder of the built page. Without one, as during development, only the API answers. */
export async function servePages(app: FastifyInstance, folder: string): Promise<void> {
  if (!existsSync(path.join(folder, 'index.html'))) return;
  await app.register(fastifyStatic, {
    root: folder,
    cacheControl: false,
    // The build compresses its files; nothing is compressed while somebody waits.
    preCompressed: true,
    setHeaders(response, file) {
      const lifetime = file.includes(HASHED) ? 'public, max-age=31536000, immutable' : 'no-cache';
      response.setHeader('cache-control', lifetime);
      response.setHeader('vary', 'accept-encoding');
    },
  });
  for (const route of PAGE_ROUTES) {
    app.get(route, (_, reply: FastifyReply) => reply.sendFile('index.html'));
  }
}
