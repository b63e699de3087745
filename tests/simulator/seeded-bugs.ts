// Bugs put in at the seams of the simulation, each of a kind that has been made before; every one must be caught.
import type { Store } from '../../server/ports.ts';
import type { Logged, RoomEvent } from '../../server/room/event.ts';
import { simplestLegal } from '../../server/work/bots.ts';
import { neighbour, type RoundEvent, type ServerMessage } from '../../shared-engine/index.ts';
import type { Assembly } from './assembly.ts';

export const PLANTED: Readonly<Record<string, Assembly>> = {
  'acknowledged before it is kept': {
    store: (store) => ({
      ...store,
      async append(code, after, log) {
        void store.append(code, after, log).catch(() => {});
        return 'kept';
      },
    }),
  },
  'the same command twice': {
    store: (store) => ({ ...store, load: async (code, after) => anonymous(await store.load(code, after)) }),
    place: (rooms) => ({ ...rooms, append: (code, after, log) => again(rooms, code, after, log) }),
  },
  'a watcher sees a seat': {
    tickets: (tickets) => ({
      issue: (grant) =>
        tickets.issue(grant.owner === null ? { ...grant, owner: { seat: 0, since: 2 } } : grant),
      redeem: (ticket) => tickets.redeem(ticket),
    }),
  },
  'a seat sees its neighbour': {
    tickets: (tickets) => ({
      issue: (grant) =>
        tickets.issue(grant.owner?.seat === 1 ? { ...grant, owner: { seat: 2, since: 5 } } : grant),
      redeem: (ticket) => tickets.redeem(ticket),
    }),
  },
  'a deadline taken twice': {
    store: (store) => ({ ...store, append: (code, after, log) => insist(store, code, after, log) }),
  },
  'a fork where two write at once': {
    place: (rooms) => ({
      ...rooms,
      append: (code, after, log) => overwrite(rooms, code, after, log),
    }),
  },
  'half of a decision kept': {
    place: (rooms) => ({
      ...rooms,
      append: (code, after, log) => rooms.append(code, after, settles(log) ? log.slice(0, 1) : log),
    }),
  },
  'nobody told of what the other server wrote': {
    bus: (bus) => ({ ...bus, publish: () => {}, subscribe: () => () => {} }),
    store: (store) => ({ ...store, versions: async (codes) => new Map(codes.map((code) => [code, 1])) }),
  },
  'an event passed over in catching up': {
    store: (store) => ({
      ...store,
      load: async (code, after) => (await store.load(code, after))?.slice(after ? 1 : 0) ?? null,
    }),
  },
  'a tile changed on its way': {
    place: (rooms) => ({
      ...rooms,
      append: (code, after, log) => rooms.append(code, after, log.map(swapped)),
    }),
  },
  'a review sent to the neighbour': {
    reviewed: (seat) => neighbour(seat, 'right'),
  },
  'answers lost on the way': {
    line: (line) => ({
      ...line,
      send: (message) => (message.kind === 'ack' ? undefined : line.send(message)),
    }),
  },
  'news that leave out the view': {
    line: (line) => ({ ...line, send: (message) => line.send(withoutView(message)) }),
  },
  'a server that never counts as gone': {
    nodes: (nodes) => ({ ...nodes, gone: async () => [] }),
  },
  'a bot that plays what it does not hold': {
    bots: { choose: async ({ view }) => simplestLegal({ ...view, rack: [...view.rack].reverse() }) },
    store: (store) => ({
      ...store,
      append: (code, after, log) => store.append(code, after, log.map(cheated)),
    }),
  },
};

/** Writes behind whatever is there, though it was decided on something older. */
async function insist(store: Store, code: string, after: number, log: readonly Logged[]) {
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
async function overwrite(rooms: Store, code: string, after: number, log: readonly Logged[]) {
  const outcome = await rooms.append(code, after, log);
  if (outcome !== 'conflict') return outcome;
  const before = ((await rooms.load(code)) ?? []).slice(0, after);
  await rooms.remove(code);
  await rooms.create(code, [...before, ...log]);
  return 'kept' as const;
}

function anonymous(log: readonly Logged[] | null) {
  return log?.map((one) => ({ ...one, command: null })) ?? null;
}

/** A command that is there already is kept once more, under a name that the place does not know. */
async function again(rooms: Store, code: string, after: number, log: readonly Logged[]) {
  const outcome = await rooms.append(code, after, log);
  if (outcome !== 'repeated') return outcome;
  return rooms.append(
    code,
    after,
    log.map((one) => ({ ...one, command: one.command && `${one.command} again at ${one.seq}` })),
  );
}

function settles(log: readonly Logged[]): boolean {
  return log.some(({ event }) => event.kind === 'round' && event.event.kind === 'settled');
}

function withEvent(logged: Logged, change: (event: RoundEvent) => RoundEvent): Logged {
  const { event } = logged;
  if (event.kind !== 'round') return logged;
  const changed: RoomEvent = { kind: 'round', event: change(event.event) };
  return { ...logged, event: changed };
}

function swapped(logged: Logged): Logged {
  return withEvent(logged, (event) => {
    if (event.kind !== 'settled' || event.outcome.kind !== 'move') return event;
    const [first, ...rest] = event.outcome.kept;
    const tiles = first.map((face, at) => (at === 0 ? 'joker' : face));
    const [a, b, c] = rest;
    return { kind: 'settled', outcome: { ...event.outcome, kept: [tiles, a, b, c] } };
  });
}

function cheated(logged: Logged): Logged {
  return withEvent(logged, (event) =>
    event.kind === 'sealed' && event.pass.by === 'bot'
      ? { ...event, pass: { ...event.pass, tiles: ['joker', 'joker', 'joker'] } }
      : event,
  );
}

function withoutView(message: ServerMessage): ServerMessage {
  if (message.kind !== 'news') return message;
  const { view: _, viewNews: __, ...table } = message.table;
  return { ...message, table };
}
