// Bugs of kinds that have been made before, each put into the simulated product; the invariants must catch every one.
import type { Store } from '../../server/ports.ts';
import type { Logged, RoomEvent } from '../../server/room/event.ts';
import { simplestLegal } from '../../server/workers/bots.ts';
import { neighbour, type RoundEvent, type ServerMessage } from '../../shared-engine/index.ts';
import type { Assembly } from './assembly.ts';

export const SEEDED_BUGS: Readonly<Record<string, Assembly>> = {
  'a choice is acknowledged before it is stored': {
    store: (store) => ({
      ...store,
      async append(code, after, log) {
        void store.append(code, after, log).catch(() => {});
        return 'kept';
      },
    }),
  },
  'a repeated command is applied twice': {
    store: (store) => ({
      ...store,
      load: async (code, after) => withoutCommandIds(await store.load(code, after)),
    }),
    sharedStore: (rooms) => ({
      ...rooms,
      append: (code, after, log) => appendDuplicate(rooms, code, after, log),
    }),
  },
  'a spectator sees what a seat sees': {
    tickets: (tickets) => ({
      issue: (grant) =>
        tickets.issue(grant.holder === null ? { ...grant, holder: { seat: 0, since: 2 } } : grant),
      redeem: (ticket) => tickets.redeem(ticket),
    }),
  },
  'a seat sees what its neighbor sees': {
    tickets: (tickets) => ({
      issue: (grant) =>
        tickets.issue(grant.holder?.seat === 1 ? { ...grant, holder: { seat: 2, since: 5 } } : grant),
      redeem: (ticket) => tickets.redeem(ticket),
    }),
  },
  'two servers act on one deadline': {
    store: (store) => ({
      ...store,
      append: (code, after, log) => appendDespiteConflict(store, code, after, log),
    }),
  },
  'two servers that write at once fork the log': {
    sharedStore: (rooms) => ({
      ...rooms,
      append: (code, after, log) => appendOverOthers(rooms, code, after, log),
    }),
  },
  'half of a decision is stored': {
    sharedStore: (rooms) => ({
      ...rooms,
      append: (code, after, log) => rooms.append(code, after, resolvesStep(log) ? log.slice(0, 1) : log),
    }),
  },
  'a server never learns what the other wrote': {
    bus: (bus) => ({ ...bus, publish: () => {}, subscribe: () => () => {} }),
    store: (store) => ({ ...store, versions: async (codes) => new Map(codes.map((code) => [code, 1])) }),
  },
  'an event is skipped while catching up': {
    store: (store) => ({
      ...store,
      load: async (code, after) => (await store.load(code, after))?.slice(after ? 1 : 0) ?? null,
    }),
  },
  'a tile changes on its way': {
    sharedStore: (rooms) => ({
      ...rooms,
      append: (code, after, log) => rooms.append(code, after, log.map(withSwappedTile)),
    }),
  },
  'a review is sent to the neighbor': {
    reviewedSeat: (seat) => neighbour(seat, 'right'),
  },
  'acknowledgements are lost on the way': {
    connection: (line) => ({
      ...line,
      send: (message) => (message.kind === 'ack' ? undefined : line.send(message)),
    }),
  },
  'news that leave out the view': {
    connection: (line) => ({ ...line, send: (message) => line.send(withoutView(message)) }),
  },
  'a dead server never counts as gone': {
    nodes: (nodes) => ({ ...nodes, gone: async () => [] }),
  },
  'a bot passes tiles that it does not hold': {
    bots: { choose: async ({ view }) => simplestLegal({ ...view, rack: [...view.rack].reverse() }) },
    store: (store) => ({
      ...store,
      append: (code, after, log) => store.append(code, after, log.map(withTilesNotHeld)),
    }),
  },
};

/** Appends after the newest event, though the decision was made on an older state. */
async function appendDespiteConflict(store: Store, code: string, after: number, log: readonly Logged[]) {
  const house = log[0]?.command?.startsWith('house/') ?? false;
  const outcome = await store.append(code, after, log);
  if (!house || outcome === 'kept') return outcome;
  const last = (await store.versions([code])).get(code) ?? after;
  return store.append(
    code,
    last,
    log.map((one, at) => ({ ...one, seq: last + 1 + at, command: null })),
  );
}

/** The last writer wins. */
async function appendOverOthers(rooms: Store, code: string, after: number, log: readonly Logged[]) {
  const outcome = await rooms.append(code, after, log);
  if (outcome !== 'conflict') return outcome;
  const before = ((await rooms.load(code)) ?? []).slice(0, after);
  await rooms.remove(code);
  await rooms.create(code, [...before, ...log]);
  return 'kept' as const;
}

function withoutCommandIds(log: readonly Logged[] | null) {
  return log?.map((one) => ({ ...one, command: null })) ?? null;
}

/** Stores a command that is there already once more, under an id that the store does not know. */
async function appendDuplicate(rooms: Store, code: string, after: number, log: readonly Logged[]) {
  const outcome = await rooms.append(code, after, log);
  if (outcome !== 'repeated') return outcome;
  return rooms.append(
    code,
    after,
    log.map((one) => ({ ...one, command: one.command && `${one.command} again at ${one.seq}` })),
  );
}

function resolvesStep(log: readonly Logged[]): boolean {
  return log.some(({ event }) => event.kind === 'round' && event.event.kind === 'resolved');
}

function withEvent(logged: Logged, change: (event: RoundEvent) => RoundEvent): Logged {
  const { event } = logged;
  if (event.kind !== 'round') return logged;
  const changed: RoomEvent = { kind: 'round', event: change(event.event) };
  return { ...logged, event: changed };
}

function withSwappedTile(logged: Logged): Logged {
  return withEvent(logged, (event) => {
    if (event.kind !== 'resolved' || event.outcome.kind !== 'move') return event;
    const [first, ...rest] = event.outcome.kept;
    const tiles = first.map((face, at) => (at === 0 ? 'joker' : face));
    const [a, b, c] = rest;
    return { kind: 'resolved', outcome: { ...event.outcome, kept: [tiles, a, b, c] } };
  });
}

function withTilesNotHeld(logged: Logged): Logged {
  return withEvent(logged, (event) =>
    event.kind === 'submitted' && event.pass.by === 'bot'
      ? { ...event, pass: { ...event.pass, tiles: ['joker', 'joker', 'joker'] } }
      : event,
  );
}

function withoutView(message: ServerMessage): ServerMessage {
  if (message.kind !== 'news') return message;
  const { view: _, viewDelta: __, ...table } = message.table;
  return { ...message, table };
}
