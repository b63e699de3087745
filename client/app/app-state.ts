// The state of the page as a whole: the route, the settings, the sheet on top.
import { signal } from '@preact/signals';
import { nextDealer, type Random, type Review } from '../../shared-engine/index.ts';
import type { TextStorage } from '../storage/browser-storage.ts';
import { recentPlaces } from '../storage/recent-places.ts';
import { readSettings, writeSettings } from '../storage/settings.ts';
import type { App, Sheet } from './routes/app.ts';
import { exchangeOf } from './routes/deal-link.ts';
import { pathOf, routeOf } from './routes/route.ts';

export interface AppPorts {
  readonly storage: TextStorage;
  readonly place: () => { readonly pathname: string; readonly hash: string };
  readonly origin: string;
  readonly showPath: (path: string) => void;
  readonly goBack: () => void;
  /** Runs `run` whenever the player goes back or forward, until the function that it returns is called. */
  readonly onReturn: (run: () => void) => () => void;
  readonly newSeed: () => string;
  readonly random: Random;
}

/** `close` ends what the app listens to. */
export function openApp(ports: AppPorts): App & { close(): void } {
  const here = () => routeOf(ports.place().pathname, ports.place().hash);
  const route = signal(here());
  const sheet = signal<Sheet | null>(null);
  const reviews = new Map<string, { readonly play: object; readonly review: Review }>();
  const settings = signal(readSettings(ports.storage));
  // An open sheet is a step of its own in the browser's history, so that going back closes it and leaves the table alone.
  let closesSheet = false;
  const close = ports.onReturn(() => {
    if (!closesSheet && sheet.value === null) route.value = here();
    closesSheet = false;
    sheet.value = null;
  });
  return {
    close,
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
      writeSettings(ports.storage, settings.value);
      // A choice made here replaces the order that the rack remembers.
      if (part.sort) ports.storage.write('sort', part.sort);
    },
    show(next) {
      const { pathname, hash } = ports.place();
      if (next !== null && sheet.value === null) ports.showPath(`${pathname}${hash}`);
      if (next === null && sheet.value !== null) {
        closesSheet = true;
        ports.goBack();
      }
      sheet.value = next;
    },
    freshDeal() {
      const { alone } = settings.peek().ways;
      const dealer = nextDealer({ whoIsEast: alone.whoIsEast, player: 0, last: null }, ports.random);
      return {
        deal: { seed: ports.newSeed(), dealer },
        seat: 0,
        cardOf: null,
        ways: exchangeOf(alone),
      };
    },
    recentPlaces: () => recentPlaces(ports.storage),
    linkTo: (target) => `${ports.origin}${pathOf(target)}`,
    reviewBefore(key, play, review) {
      const first = reviews.get(key);
      if (first && first.play !== play) return first.review;
      reviews.set(key, { play, review });
      return null;
    },
  };
}
