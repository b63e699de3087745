// The page as a whole: where it is, what this browser remembers, which sheet lies on top.
import { signal } from '@preact/signals';
import type { Review } from '../../shared-engine/index.ts';
import type { TextStorage } from '../storage/browser-storage.ts';
import { readSettings, writeSettings } from '../storage/settings.ts';
import type { App, Sheet } from './routes/app.ts';
import type { SharedDeal } from './routes/deal-link.ts';
import { pathOf, routeOf } from './routes/route.ts';

export interface AppPorts {
  readonly storage: TextStorage;
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
  const settings = signal(readSettings(ports.storage));
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
      writeSettings(ports.storage, settings.value);
      // What the rack remembers gives way to a wish said here.
      if (part.sort) ports.storage.write('sort', part.sort);
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
