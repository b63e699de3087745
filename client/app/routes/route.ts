// Where in the product the page is: the address bar as a type, and the way back.

import {
  CLASS_PAGES,
  classLink,
  clubLink,
  drillLink,
  PREPARE_PATH,
  readDate,
  tablePath,
} from '../../../shared-engine/index.ts';
import { dealHash, readDealHash, type SharedDeal } from './deal-link.ts';

export type Route =
  | { readonly kind: 'front' }
  | { readonly kind: 'room'; readonly code: string }
  /** A table in the page itself, for one deal. */
  | { readonly kind: 'deal'; readonly shared: SharedDeal }
  /** A class: its teacher's dashboard, or the way to a player's table. */
  | { readonly kind: 'class'; readonly code: string; readonly part: ClassPart }
  /** A drill that everybody plays when they like, or its teacher's page. */
  | { readonly kind: 'drill'; readonly code: string }
  /** The page of a club. */
  | { readonly kind: 'club'; readonly code: string }
  /** Where a teacher prepares a class: with a drill of this device, or with a new one. */
  | { readonly kind: 'prepare'; readonly drill: string | null }
  /** The drills and classes of a teacher on this device, or the classes of one group side by side. */
  | { readonly kind: 'teaching' }
  | { readonly kind: 'group'; readonly name: string }
  /** The exchange explained on an example that is played. */
  | { readonly kind: 'lesson' }
  /** Practice with real tiles, laid in by hand. */
  | { readonly kind: 'own-tiles' }
  /** The rounds that this browser stores, and the review of one of them. */
  | { readonly kind: 'rounds' }
  | { readonly kind: 'past-round'; readonly id: string }
  /** The deals of the days, or the table in the page for that of one day, as in `2026-11-26`. */
  | { readonly kind: 'days' }
  | { readonly kind: 'day'; readonly date: string }
  /** A deal of a class, taken home: the table at which it was played there, and the number of that round. */
  | { readonly kind: 'home-deal'; readonly room: string; readonly round: number }
  /** Ten racks, one question. */
  | { readonly kind: 'racks' }
  /** One's own choices again. */
  | { readonly kind: 'exercises' }
  /** The cards on this device, or one of them in the editor. */
  | { readonly kind: 'cards'; readonly open: string | null }
  /** A card that somebody sends, packed. */
  | { readonly kind: 'card-link'; readonly packed: string }
  /** A lesson to play along, packed; empty where a file is to be opened. */
  | { readonly kind: 'lesson-link'; readonly packed: string }
  /** What one's own choices keep costing. */
  | { readonly kind: 'habits' }
  /** Nothing of ours is at this address, or a deal link that is not whole. */
  | { readonly kind: 'missing'; readonly path: string; readonly what: 'page' | 'deal' };

export type ClassPart = 'main' | (typeof CLASS_PAGES)[number];

/** The first document, which a server may give under its name too. */
const FRONT_PATHS: readonly string[] = ['/', '/index.html'];
const LESSON_HASH = '#how-it-goes';
const OWN_TILES_HASH = '#own-tiles';
/** What a browser stores is named behind the #, where no server is told of it. */
const ROUNDS_HASH = '#my-rounds';
const HOME_DEAL_HASH = '#class-deal';
const DAY_HASH = '#deal-of-the-day';
const RACKS_HASH = '#ten-racks';
const EXERCISES_HASH = '#ten-minutes';
const CARDS_HASH = '#my-cards';
const CARD_HASH = '#card=';
const LESSON_LINK_HASH = '#lesson=';
const HABITS_HASH = '#what-costs-me';
const TEACHING_HASH = '#my-classes';
const DRILL_HASH = '#drill=';

/** What a message puts behind a link: the end of a sentence, a bracket, a blank. */
const BEHIND_LINKS = /(?:[.,;:!?)\]>"'’”]|\s|%20|%3E|%22)+$/;

export function routeOf(path: string, given = ''): Route {
  // The name of a group is free text and may end so itself.
  const hash = given.startsWith(`${TEACHING_HASH}=`) ? given : given.replace(BEHIND_LINKS, '');
  const shared = readDealHash(hash);
  if (shared) return { kind: 'deal', shared };
  if (hash === LESSON_HASH) return { kind: 'lesson' };
  if (hash === OWN_TILES_HASH) return { kind: 'own-tiles' };
  if (hash === ROUNDS_HASH) return { kind: 'rounds' };
  const past = /^#my-rounds=([0-9a-f]{32})$/.exec(hash);
  if (past) return { kind: 'past-round', id: past[1]! };
  const home = /^#class-deal=([0-9A-Z]{8})\/([1-9]\d{0,4})$/.exec(hash);
  if (home) return { kind: 'home-deal', room: home[1]!, round: Number(home[2]) };
  if (hash === DAY_HASH) return { kind: 'days' };
  if (hash === RACKS_HASH) return { kind: 'racks' };
  if (hash === HABITS_HASH) return { kind: 'habits' };
  if (hash === EXERCISES_HASH) return { kind: 'exercises' };
  const date = hash.startsWith(`${DAY_HASH}=`) ? readDate(hash.slice(DAY_HASH.length + 1)) : null;
  if (date) return { kind: 'day', date };
  if (hash.startsWith('#deal')) return { kind: 'missing', path: `${path}${hash}`, what: 'deal' };
  if (hash.startsWith(CARD_HASH)) return { kind: 'card-link', packed: hash.slice(CARD_HASH.length) };
  if (hash.startsWith(LESSON_LINK_HASH)) {
    return { kind: 'lesson-link', packed: hash.slice(LESSON_LINK_HASH.length) };
  }
  const cards = /^#my-cards(?:\/(\w+))?$/.exec(hash);
  if (cards) return { kind: 'cards', open: cards[1] ?? null };
  if (hash === TEACHING_HASH) return { kind: 'teaching' };
  if (hash.startsWith(`${TEACHING_HASH}=`)) {
    return { kind: 'group', name: decode(hash.slice(TEACHING_HASH.length + 1)) };
  }
  if (path === PREPARE_PATH) {
    const drill = hash.startsWith(DRILL_HASH) ? hash.slice(DRILL_HASH.length) : null;
    return { kind: 'prepare', drill };
  }
  const lesson = /^\/c\/([^/]+)(?:\/(big-screen|report))?\/?$/.exec(path);
  if (lesson) return { kind: 'class', code: tidyCode(lesson[1]!), part: partOf(lesson[2]) };
  const drill = /^\/d\/([^/]+)\/?$/.exec(path);
  if (drill) return { kind: 'drill', code: tidyCode(drill[1]!) };
  const club = /^\/club\/([^/]+)\/?$/.exec(path);
  if (club) return { kind: 'club', code: tidyCode(club[1]!) };
  const match = /^\/t\/([^/]+)\/?$/.exec(path);
  if (!match) return FRONT_PATHS.includes(path) ? { kind: 'front' } : { kind: 'missing', path, what: 'page' };
  return { kind: 'room', code: tidyCode(match[1]!) };
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
      return classLink(route.code, route.part === 'main' ? null : route.part);
    case 'drill':
      return drillLink(route.code);
    case 'club':
      return clubLink(route.code);
    case 'prepare':
      return route.drill === null ? PREPARE_PATH : `${PREPARE_PATH}${DRILL_HASH}${route.drill}`;
    case 'teaching':
      return `/${TEACHING_HASH}`;
    case 'group':
      return `/${TEACHING_HASH}=${encodeURIComponent(route.name)}`;
    case 'lesson':
      return `/${LESSON_HASH}`;
    case 'own-tiles':
      return `/${OWN_TILES_HASH}`;
    case 'rounds':
      return `/${ROUNDS_HASH}`;
    case 'past-round':
      return `/${ROUNDS_HASH}=${route.id}`;
    case 'home-deal':
      return `/${HOME_DEAL_HASH}=${route.room}/${route.round}`;
    case 'habits':
      return `/${HABITS_HASH}`;
    case 'exercises':
      return `/${EXERCISES_HASH}`;
    case 'racks':
      return `/${RACKS_HASH}`;
    case 'days':
      return `/${DAY_HASH}`;
    case 'day':
      return `/${DAY_HASH}=${route.date}`;
    case 'cards':
      return `/${CARDS_HASH}${route.open === null ? '' : `/${route.open}`}`;
    case 'card-link':
      return `/${CARD_HASH}${route.packed}`;
    case 'lesson-link':
      return `/${LESSON_LINK_HASH}${route.packed}`;
    case 'missing':
      return route.path;
  }
}

/** As people type codes: any case, with blanks, dashes or a full stop between or behind them; a pasted link counts too. */
export function tidyCode(text: string): string {
  const link = /\/(?:[tcd]|club)\/([^/?#\s]+)/i.exec(text);
  return decode(link?.[1] ?? text)
    .replace(/[^0-9a-z]/gi, '')
    .toUpperCase();
}

function partOf(text: string | undefined): ClassPart {
  return CLASS_PAGES.find((page) => page === text) ?? 'main';
}

function decode(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}
