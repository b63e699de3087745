// The page as a whole: where it is, what this browser remembers, and how a room is opened on it.
import { type ReadonlySignal, signal } from '@preact/signals';
import type { Memory } from '../connection/pending.ts';
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
  /** Where a friend finds the room. */
  linkTo(code: string): string;
}

export interface AppPorts {
  readonly lasting: Memory;
  readonly path: () => string;
  readonly origin: string;
  readonly showPath: (path: string) => void;
  /** Runs when the player goes back or forward. */
  readonly onReturn: (run: () => void) => void;
  readonly room: (code: string) => Room;
}

export function openApp(ports: AppPorts): App {
  const route = signal(routeOf(ports.path()));
  const settings = signal(readSettings(ports.lasting));
  ports.onReturn(() => {
    route.value = routeOf(ports.path());
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
    linkTo: (code) => `${ports.origin}${pathOf({ kind: 'room', code })}`,
  };
}
