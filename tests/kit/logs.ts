// Logs of rooms for the tests of the stores: short ones with plain events, whole ones of played rounds.

import type { Logged, RoomEvent } from '../../server/room/event.ts';
import { logged } from '../../server/room/room.ts';

const OPENED: RoomEvent = {
  kind: 'opened',
  door: 'friends',
  terms: { deadline: null, layOpen: false },
  card: { kind: 'house' },
};

/** The time of a log's first event; the others follow a second apart. */
export const LOG_START = 1_750_000_000_000;

/** The first events of a room: opened, then as many more. */
export function opening(more = 0): Logged[] {
  return [...logged([OPENED], { after: 0, at: LOG_START, command: null }), ...following(1, more)];
}

/** Events behind number `after`, the first caused by `command`. */
export function following(after: number, count = 1, command: string | null = null, name = 'Ines'): Logged[] {
  return Array.from({ length: count }, (_, index) => {
    const event: RoomEvent = { kind: 'seat-taken', seat: 0, name, key: 'k'.repeat(64) };
    const place = { after: after + index, at: LOG_START + 1000 * (after + index) };
    return logged([event], { ...place, command: index === 0 ? command : null })[0]!;
  });
}
