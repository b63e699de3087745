// Where in the product the page is: the address bar as a type, and the way back.

import { classLink, tablePath } from '../../../shared-engine/index.ts';
import { dealHash, readDealHash, type SharedDeal } from './deal-link.ts';

export type Route =
  | { readonly kind: 'front' }
  | { readonly kind: 'room'; readonly code: string }
  /** A table in the page itself, for one deal. */
  | { readonly kind: 'deal'; readonly shared: SharedDeal }
  /** A class: its teacher's dashboard, or the way to a player's table. */
  | { readonly kind: 'class'; readonly code: string; readonly part: ClassPart }
  /** Where a teacher prepares a class. */
  | { readonly kind: 'prepare' }
  /** The exchange explained on an example that is played. */
  | { readonly kind: 'lesson' };

export type ClassPart = 'main' | 'big-screen' | 'report';

const PREPARE_PATH = '/lead';
const LESSON_HASH = '#how-it-goes';

export function routeOf(path: string, hash = ''): Route {
  const shared = readDealHash(hash);
  if (shared) return { kind: 'deal', shared };
  if (hash === LESSON_HASH) return { kind: 'lesson' };
  if (path === PREPARE_PATH) return { kind: 'prepare' };
  const lesson = /^\/c\/([^/]+)(?:\/(big-screen|report))?\/?$/.exec(path);
  if (lesson) return { kind: 'class', code: tidyCode(decode(lesson[1]!)), part: partOf(lesson[2]) };
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
    case 'class':
      return route.part === 'main' ? classLink(route.code) : `${classLink(route.code)}/${route.part}`;
    case 'prepare':
      return PREPARE_PATH;
    case 'lesson':
      return `/${LESSON_HASH}`;
  }
}

/** As people type codes: any case, with blanks or dashes between the letters; a pasted link counts too. */
export function tidyCode(text: string): string {
  const link = /\/[tc]\/([^/?#\s]+)/.exec(text);
  return (link?.[1] ?? text).replace(/[\s-]/g, '').toUpperCase();
}

function partOf(text: string | undefined): ClassPart {
  return text === 'big-screen' || text === 'report' ? text : 'main';
}

function decode(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}
