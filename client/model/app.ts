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
  /**
   * Keeps the review of the first play of a deal on this page, which may grow deeper, and answers it for a later
   * play. `play` is the same object for one and the same play.
   */
  reviewBefore(key: string, play: object, review: Review): Review | null;
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
  const reviews = new Map<string, { readonly play: object; readonly review: Review }>();
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
    reviewBefore(key, play, review) {
      const first = reviews.get(key);
      if (first && first.play !== play) return first.review;
      reviews.set(key, { play, review });
      return null;
    },
  };
}
