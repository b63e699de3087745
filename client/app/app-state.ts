// The state of the page as a whole: the route, the settings, the sheet on top.
import { signal } from '@preact/signals';
import { nextDealer, type Random } from '../../shared-engine/index.ts';
import type { TextStorage } from '../storage/browser-storage.ts';
import { recentPlaces } from '../storage/recent-places.ts';
import { readSettings, writeSettings } from '../storage/settings.ts';
import type { App, ReviewedPlay, Sheet } from './routes/app.ts';
import { exchangeOf } from './routes/deal-link.ts';
import { pathOf, type Route, routeOf } from './routes/route.ts';

export interface AppPorts {
  readonly storage: TextStorage;
  /** Where the browser is in its history, and whether that step was made for something over the screen. */
  readonly place: () => { readonly pathname: string; readonly hash: string; readonly over: boolean };
  readonly origin: string;
  readonly showPath: (path: string, over: boolean) => void;
  /** Puts this path in the place of the one that is shown. */
  readonly renamePath: (path: string) => void;
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
  const reviews = new Map<string, ReviewedPlay>();
  const settings = signal(readSettings(ports.storage));
  const left = signal<Route | null>(null);
  // What lies over the screen is a step of its own in the browser's history, so that going back closes it and leaves the
  // table alone. What was opened last is closed first.
  const overScreen: (() => void)[] = [];
  let ownStepsBack = 0;
  let closeSheet = () => {};
  const close = ports.onReturn(() => {
    const { over } = ports.place();
    if (ownStepsBack > 0) ownStepsBack--;
    else if (overScreen.length > 0) overScreen.pop()?.();
    else if (!over) moveTo(here());
    // A step from before a reload, or one that was gone back from: nothing lies over the screen any more.
    if (over && overScreen.length === 0) stepBack();
  });

  function stepBack() {
    ownStepsBack++;
    ports.goBack();
  }

  function moveTo(next: Route) {
    left.value = next.kind === 'front' ? route.value : null;
    route.value = next;
  }

  function layOver(onBack: () => void): () => void {
    const { pathname, hash } = ports.place();
    ports.showPath(`${pathname}${hash}`, true);
    const closing = () => onBack();
    overScreen.push(closing);
    return () => {
      const at = overScreen.indexOf(closing);
      if (at < 0) return;
      overScreen.splice(at, 1);
      stepBack();
    };
  }

  return {
    close,
    route,
    left,
    settings,
    sheet,
    layOver,
    go(next) {
      overScreen.length = 0;
      ports.showPath(pathOf(next), false);
      moveTo(next);
      sheet.value = null;
    },
    rename: (next) => ports.renamePath(pathOf(next)),
    change(part) {
      settings.value = { ...settings.value, ...part };
      writeSettings(ports.storage, settings.value);
      // A choice made here replaces the order that the rack remembers.
      if (part.sort) ports.storage.write('sort', part.sort);
    },
    show(next) {
      const opens = next !== null && sheet.value === null;
      sheet.value = next;
      if (next === null) closeSheet();
      if (opens) {
        closeSheet = layOver(() => {
          sheet.value = null;
        });
      }
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
    reviewBefore(deal, play) {
      const first = reviews.get(deal);
      if (first && first.room !== play.room) return play.isPast ? null : first.review;
      reviews.set(deal, play);
      return null;
    },
  };
}
