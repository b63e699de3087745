// The built page: its files, and the same first document for every link to a table or a class.
import { existsSync } from 'node:fs';
import path from 'node:path';
import fastifyStatic from '@fastify/static';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';

/** Files of the build carry a hash of their content in the name, so a browser may store them for good. */
const HASHED = `${path.sep}assets${path.sep}`;

const PAGE_ROUTES = ['/t/:code', '/c/:code', '/c/:code/:part', '/lead'];
/** Where the files are registered. */
const FILES_ROUTE = '/*';

// Built, this file lies in dist/server/http beside dist/client; run from source, dist is beside server.
const fromSource = import.meta.filename.endsWith('.ts');
export const BUILT_PAGE = path.resolve(
  import.meta.dirname,
  fromSource ? '../../dist/client' : '../../client',
);

/** Whether a file of the page is asked for; who may ask for what says nothing, and no store is read. */
export function isForPage({ routeOptions }: FastifyRequest): boolean {
  const { url } = routeOptions;
  return url === FILES_ROUTE || (url !== undefined && PAGE_ROUTES.includes(url));
}

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
