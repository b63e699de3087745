// Where in the product the page is: the address bar as a type, and the way back.

import { tablePath } from '../../shared-engine/index.ts';
import { dealHash, readDealHash, type SharedDeal } from '../practice/deal-link.ts';

export type Route =
  | { readonly kind: 'front' }
  | { readonly kind: 'room'; readonly code: string }
  /** A table in the page itself, for one deal. */
  | { readonly kind: 'deal'; readonly shared: SharedDeal }
  /** The exchange explained on an example that is played. */
  | { readonly kind: 'lesson' };

const LESSON_HASH = '#how-it-goes';

export function routeOf(path: string, hash = ''): Route {
  const shared = readDealHash(hash);
  if (shared) return { kind: 'deal', shared };
  if (hash === LESSON_HASH) return { kind: 'lesson' };
  const match = /^\/t\/([^/]+)\/?$/.exec(path);
  if (!match) return { kind: 'front' };
  return { kind: 'room', code: tidyCode(decode(match[1]!)) };
}

export function pathOf(route: Route): string {
  switch (route.kind) {
    case 'front':
      return '/';
    case 'room':
      return tablePath(route.code);
    case 'deal':
      return `/${dealHash(route.shared)}`;
    case 'lesson':
      return `/${LESSON_HASH}`;
  }
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
