// Every route of the assembly that ships, and what an answer of the server must and must not say.
import type { FastifyInstance } from 'fastify';
import { ROOM_REJECTIONS } from '../../shared-engine/protocol/rejections.ts';
import { httpRejectionSchema } from '../../shared-engine/protocol/room-http.ts';

/** Stands where the pattern of a route has a parameter; no room has it. */
export const NO_CODE = 'ABCD2345';

/** What only the framework, a file or a driver would say. */
const LEAKS = ['FST_', 'statusCode', 'node_modules', 'at Object', 'SQLITE', 'quadrille.db'] as const;

export interface Route {
  readonly method: string;
  /** With `:name` for each parameter. */
  readonly pattern: string;
  /** With a code that no room has in its place. */
  readonly path: string;
}

/** As the app itself lists them, without the one behind which the page's files are. */
export function routesOf(app: FastifyInstance): Route[] {
  const above: string[] = [];
  return app
    .printRoutes({ commonPrefix: false })
    .split('\n')
    .flatMap((line) => {
      const [, tree, part, methods] = /^([│├└─ ]*)(\/\S*) \(([A-Z, ]+)\)/.exec(line) ?? [];
      if (tree === undefined || part === undefined || methods === undefined) return [];
      // Four characters a level; a route stands below the one that its path begins with.
      const level = tree.length / 4 - 1;
      above.splice(level, above.length, part);
      const pattern = above.join('');
      const path = pattern.replaceAll(/:\w+/g, NO_CODE);
      return methods.split(', ').map((method) => ({ method, pattern, path }));
    });
}

export interface ReadAnswer {
  readonly status: number;
  /** Null for an answer that is no rejection. */
  readonly code: string | null;
  /** Of the answer's request, where it has one. */
  readonly requestId: string | null;
}

/** Throws for an answer that is neither good nor a rejection of ours, or that holds one of `secrets`. */
export async function readAnswer(
  { url }: { readonly url: string },
  path: string,
  init: RequestInit = {},
  secrets: readonly string[] = [],
): Promise<ReadAnswer> {
  const response = await fetch(`${url}${path}`, init);
  const { status } = response;
  const text = await response.text();
  const requestId = response.headers.get('request-id');
  const leak = [...LEAKS, ...secrets].find((one) => text.includes(one));
  if (leak !== undefined) throw new Error(`${path} answers ${status} and tells ${leak}`);
  if (status < 400 || init.method === 'HEAD') return { status, code: null, requestId };
  const { code, message } = httpRejectionSchema.strict().parse(JSON.parse(text));
  if (message !== ROOM_REJECTIONS[code as keyof typeof ROOM_REJECTIONS])
    throw new Error(`${path} answers ${status} in other words: ${message}`);
  return { status, code, requestId };
}
