// The page as a whole: where it is, what this browser remembers, which sheet lies on top.
import { type ReadonlySignal, signal } from '@preact/signals';
import type { Review } from '../../shared-engine/index.ts';
import type { Memory } from '../connection/pending.ts';
import type { SharedDeal } from '../practice/deal-link.ts';
import { pathOf, type Route, routeOf } from './route.ts';
import { readSettings, type Settings, writeSettings } from './settings.ts';

/** What may lie over any screen without leaving it. */
export type Sheet = 'settings' | 'help';

export interface App {
  readonly route: ReadonlySignal<Route>;
  readonly settings: ReadonlySignal<Settings>;
  readonly sheet: ReadonlySignal<Sheet | null>;
  go(route: Route): void;
  change(part: Partial<Settings>): void;
  show(sheet: Sheet | null): void;
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
  readonly freshDeal: () => SharedDeal;
}

export function openApp(ports: AppPorts): App {
  const here = () => routeOf(ports.place().pathname, ports.place().hash);
  const route = signal(here());
  const sheet = signal<Sheet | null>(null);
  const reviews = new Map<string, Review>();
  const settings = signal(readSettings(ports.lasting));
  ports.onReturn(() => {
    route.value = here();
    sheet.value = null;
  });
  return {
    route,
    settings,
    sheet,
    go(next) {
      ports.showPath(pathOf(next));
      route.value = next;
      sheet.value = null;
    },
    change(part) {
      settings.value = { ...settings.value, ...part };
      writeSettings(ports.lasting, settings.value);
      // What the rack remembers gives way to a wish said here.
      if (part.sort) ports.lasting.write('sort', part.sort);
    },
    show(next) {
      sheet.value = next;
    },
    freshDeal: ports.freshDeal,
    linkTo: (target) => `${ports.origin}${pathOf(target)}`,
    firstReview: (key) => reviews.get(key) ?? null,
    keepReview(key, review) {
      if (!reviews.has(key)) reviews.set(key, review);
    },
  };
}
