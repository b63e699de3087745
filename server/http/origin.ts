// Which pages may call the server: its own host, and the origins named in the configuration.
import type { FastifyRequest } from 'fastify';

/**
 * Whether a request with these headers may come in. Programs send no Origin and are let in: the check keeps
 * foreign pages from using a visitor's cookie, and a program has no cookie but its own.
 */
export function isOriginAllowed(request: FastifyRequest, allowed: readonly string[]): boolean {
  const { origin } = request.headers;
  if (origin === undefined) return true;
  if (allowed.includes(origin)) return true;
  try {
    const { host, protocol } = new URL(origin);
    return (protocol === 'http:' || protocol === 'https:') && host === request.headers.host;
  } catch {
    return false;
  }
}
