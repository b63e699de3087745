// Wake-ups between servers in a simulated evening: how many each server hears, and how many of them lead to a load.
import { MAX_WAKES, PAUSE_MS } from '../../../server/store/wake-postgres.ts';
import { type Random, stream } from '../../../shared-engine/rules/deal/random.ts';

/** Rows that a table of four stores in a second: an answer of each of its people every forty seconds. */
const ROWS_PER_TABLE = 4 / 40;
const SEATS = 4;
/** How long a message is under way, in milliseconds. */
const NOTIFY_MS = 1;

export interface Evening {
  readonly servers: number;
  readonly tables: number;
  /** Whether the proxy keeps the seats of a table at one server, or each of them is at any. */
  readonly together: boolean;
  readonly seconds: number;
  readonly seed: string;
  /** What a server waits after a message that is not full, in milliseconds; as the bus does where it is missing. */
  readonly pauseMs?: number;
}

/** In a second, at each server. */
export interface Heard {
  readonly messages: number;
  /** In all these messages. */
  readonly wakes: number;
  /** Of them for tables that are active there and were written to elsewhere: each is loaded. */
  readonly loads: number;
}

interface Row {
  /** Milliseconds from the beginning. */
  readonly at: number;
  readonly table: number;
}

/** Every server hears every message; the seed alone decides who answers when. */
export function hearWakes(evening: Evening): Heard {
  const { servers, tables, together, seconds, seed, pauseMs = PAUSE_MS } = evening;
  const random = stream(seed, 'wakes');
  const places = placesOf(tables, { servers, together, random });
  const rows: Row[][] = Array.from({ length: servers }, () => []);
  let loads = 0;
  for (let left = Math.round(tables * ROWS_PER_TABLE * seconds); left > 0; left--) {
    const table = random.below(tables);
    const at = random.below(seconds * 1000 * 100) / 100;
    const seats = places.subarray(table * SEATS, table * SEATS + SEATS);
    const writer = seats[random.below(SEATS)]!;
    rows[writer]!.push({ at, table });
    loads += new Set(seats).size - 1;
  }
  const sent = rows.map((own) => messagesFor(own, pauseMs));
  const sum = (of: (one: (typeof sent)[number]) => number) => sent.reduce((all, one) => all + of(one), 0);
  return {
    messages: sum(({ messages }) => messages) / seconds,
    wakes: sum(({ wakes }) => wakes) / seconds,
    loads: loads / seconds / servers,
  };
}

interface Placing {
  readonly servers: number;
  readonly together: boolean;
  readonly random: Random;
}

/** The server of each seat, four for each table. */
function placesOf(tables: number, { servers, together, random }: Placing): Uint16Array {
  const places = new Uint16Array(tables * SEATS);
  for (let table = 0; table < tables; table++) {
    const first = random.below(servers);
    for (let seat = 0; seat < SEATS; seat++) {
      places[table * SEATS + seat] = together ? first : random.below(servers);
    }
  }
  return places;
}

interface Sent {
  readonly messages: number;
  readonly wakes: number;
}

/** Of one server: what gathers after a message goes into the next. */
function messagesFor(rows: readonly Row[], pauseMs: number): Sent {
  const waiting = new Set<number>();
  let [messages, wakes, freeAt] = [0, 0, 0];
  const send = (at: number) => {
    const taken = [...waiting].slice(0, MAX_WAKES);
    for (const table of taken) waiting.delete(table);
    messages++;
    wakes += taken.length;
    freeAt = at + NOTIFY_MS + (taken.length < MAX_WAKES ? pauseMs : 0);
  };
  for (const { at, table } of [...rows].sort((a, b) => a.at - b.at)) {
    while (waiting.size > 0 && freeAt <= at) send(freeAt);
    waiting.add(table);
    if (freeAt <= at) send(at);
  }
  while (waiting.size > 0) send(freeAt);
  return { messages, wakes };
}
