// The page as a whole: where it is, what this browser remembers, and how a room is opened on it.
import { type ReadonlySignal, signal } from '@preact/signals';
import type { Review } from '../../shared-engine/index.ts';
import type { Memory } from '../connection/pending.ts';
import type { SharedDeal } from '../practice/deal-link.ts';
import type { Room } from './room.ts';
import { pathOf, type Route, routeOf } from './route.ts';
import { readSettings, type Settings, writeSettings } from './settings.ts';

export interface App {
  readonly route: ReadonlySignal<Route>;
  readonly settings: ReadonlySignal<Settings>;
  go(route: Route): void;
  change(part: Partial<Settings>): void;
  /** A room's model; the caller starts it and lets it go. */
  room(code: string): Room;
  /** A table in the page for this deal. */
  practice(shared: SharedDeal): Room;
  /** A fresh deal for a table in the page. */
  freshDeal(): SharedDeal;
  /** The address a friend can open. */
  linkTo(route: Route): string;
  /** The first review of a deal on this page, to lay a later one beside. */
  firstReview(key: string): Review | null;
  keepReview(key: string, review: Review): void;
}

export interface AppPorts {
  readonly lasting: Memory;
  readonly place: () => { readonly pathname: string; readonly hash: string };
  readonly origin: string;
  readonly showPath: (path: string) => void;
  /** Runs when the player goes back or forward. */
  readonly onReturn: (run: () => void) => void;
  readonly room: (code: string) => Room;
  readonly practice: (shared: SharedDeal, settings: Settings) => Room;
  readonly freshDeal: () => SharedDeal;
}

export function openApp(ports: AppPorts): App {
  const here = () => routeOf(ports.place().pathname, ports.place().hash);
  const route = signal(here());
  const reviews = new Map<string, Review>();
  const settings = signal(readSettings(ports.lasting));
  ports.onReturn(() => {
    route.value = here();
  });
  return {
    route,
    settings,
    go(next) {
      ports.showPath(pathOf(next));
      route.value = next;
    },
    change(part) {
      settings.value = { ...settings.value, ...part };
      writeSettings(ports.lasting, settings.value);
    },
    room: ports.room,
    practice: (shared) => ports.practice(shared, settings.value),
    freshDeal: ports.freshDeal,
    linkTo: (target) => `${ports.origin}${pathOf(target)}`,
    firstReview: (key) => reviews.get(key) ?? null,
    keepReview(key, review) {
      if (!reviews.has(key)) reviews.set(key, review);
    },
  };
}
