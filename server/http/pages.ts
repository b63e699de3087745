// The built page: its files, and the same first document for every link to a table or a class.
import { existsSync } from 'node:fs';
import path from 'node:path';
import fastifyStatic from '@fastify/static';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { PREPARE_PATH } from '../../shared-engine/index.ts';
import { meantPath } from './page-address.ts';
import { rejectWith } from './rejections.ts';

/** Files of the build carry a hash of their content in the name, so a browser may store them for good. */
const HASHED = `${path.sep}assets${path.sep}`;
const FIRST_DOCUMENT = 'index.html';

const PAGE_ROUTES: readonly string[] = [
  '/t/:code',
  '/c/:code',
  '/c/:code/:page',
  '/d/:code',
  '/club/:code',
  PREPARE_PATH,
];
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

/** Without a built page, as during development, only the API answers. */
export function hasPage(folder: string): boolean {
  return existsSync(path.join(folder, FIRST_DOCUMENT));
}

/** Serves the folder of the built page. Whether a room or class has the code of a link, the page asks by itself. */
export async function servePages(app: FastifyInstance, folder: string): Promise<void> {
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
    app.get(route, (request, reply: FastifyReply) => {
      const asked = pathOf(request);
      return meantPath(asked) === asked ? reply.sendFile(FIRST_DOCUMENT) : reply.callNotFound();
    });
  }
}

/** For what no route answers where `servePages` was called: an address that was meant, or the page that says there is none. */
export function answerMissing(request: FastifyRequest, reply: FastifyReply) {
  const asked = pathOf(request);
  const isRead = request.method === 'GET' || request.method === 'HEAD';
  if (!isRead || asked.startsWith('/api/')) return rejectWith(reply, 'not-found');
  const meant = meantPath(asked);
  if (meant !== null) return reply.redirect(meant);
  // Programs and scripts of the page want a reason; a person who follows a link wants a way on.
  if (!request.headers.accept?.includes('text/html')) return rejectWith(reply, 'not-found');
  return reply.code(404).sendFile(FIRST_DOCUMENT);
}

function pathOf({ url }: FastifyRequest): string {
  return url.split('?')[0]!;
}
