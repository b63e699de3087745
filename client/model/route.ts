// Where in the product the page is: the address bar as a type, and the way back.
import { tablePath } from '../../shared-engine/index.ts';

export type Route = { readonly kind: 'front' } | { readonly kind: 'room'; readonly code: string };

export function routeOf(path: string): Route {
  const match = /^\/t\/([^/]+)\/?$/.exec(path);
  if (!match) return { kind: 'front' };
  return { kind: 'room', code: tidyCode(decode(match[1]!)) };
}

export function pathOf(route: Route): string {
  return route.kind === 'front' ? '/' : tablePath(route.code);
}

/** As people type codes: any case, with blanks or dashes between the letters; a pasted link counts too. */
export function tidyCode(text: string): string {
  const link = /\/t\/([^/?#\s]+)/.exec(text);
  return (link?.[1] ?? text).replace(/[\s-]/g, '').toUpperCase();
}

function decode(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}
