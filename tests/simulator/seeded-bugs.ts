// Bugs of kinds that have been made before, each put into the simulated product; the invariants must catch every one.
import type { Append, AppendOutcome, LogRow, Store } from '../../server/ports.ts';
import type { RoomEvent } from '../../server/room/event.ts';
import { roomEvents } from '../../server/room/stored-event.ts';
import { simplestLegal } from '../../server/workers/bots.ts';
import { type ServerMessage, serverMessageSchema } from '../../shared-engine/protocol/messages.ts';
import { neighbor } from '../../shared-engine/rules/deal/seat.ts';
import type { RoundEvent } from '../../shared-engine/rules/exchange/event.ts';
import type { Assembly } from './assembly.ts';

export const SEEDED_BUGS: Readonly<Record<string, Assembly>> = {
  'a choice is told and acknowledged before it is stored': {
    store: (store) => ({
      ...store,
      async commit(batch) {
        void store.commit(batch).catch(() => {});
        return batch.map(() => 'committed');
      },
    }),
  },
  'a commit without an answer counts as stored': {
    store: (store) => ({
      ...store,
      commit: (batch) => store.commit(batch).catch(() => batch.map(() => 'committed' as const)),
    }),
  },
  'a stale version in a batch counts as committed': {
    store: (store) => ({
      ...store,
      commit: async (batch) => (await store.commit(batch)).map(() => 'committed'),
    }),
  },
  'a repeated command is applied twice': {
    store: (store) => ({
      ...store,
      load: async (code) => withoutCommandIds(await store.load(code)),
      loadAfter: async (code, version) => (await store.loadAfter(code, version))?.map(withoutIds) ?? null,
    }),
  },
  'the ids before a snapshot are lost with it': {
    store: (store) => ({ ...store, commit: (batch) => store.commit(batch.map(withoutIdsBefore)) }),
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
    store: (store) => ({ ...store, commit: (batch) => eachOf(batch, appendDespiteConflict(store)) }),
  },
  'two servers that write at once fork the log': {
    sharedStore: (rooms) => ({ ...rooms, commit: (batch) => eachOf(batch, appendOverOthers(rooms)) }),
  },
  'half of a decision is stored': {
    sharedStore: (rooms) => ({ ...rooms, commit: (batch) => rooms.commit(batch.map(withHalfOfDecision)) }),
  },
  'a server never learns what the other wrote': {
    bus: (bus) => ({ ...bus, publish: () => {}, subscribe: () => () => {} }),
    store: (store) => ({ ...store, versions: async (codes) => new Map(codes.map((code) => [code, 1])) }),
  },
  'an event is skipped while catching up': {
    store: (store) => ({
      ...store,
      loadAfter: async (code, version) => (await store.loadAfter(code, version))?.slice(1) ?? null,
    }),
  },
  'a tile changes on its way': {
    sharedStore: (rooms) => ({
      ...rooms,
      commit: (batch) => rooms.commit(batch.map((one) => withEvents(one, withSwappedTile))),
    }),
  },
  'a review is sent to the neighbor': {
    reviewedSeat: (seat) => neighbor(seat, 'right'),
  },
  'acknowledgements are lost on the way': {
    connection: (connection) => ({
      ...connection,
      send: (message) => (message.kind === 'ack' ? undefined : connection.send(message)),
    }),
  },
  'a delta leaves out the view': {
    connection: (connection) => ({
      ...connection,
      sendText: (text) => connection.send(withoutView(serverMessageSchema.parse(JSON.parse(text)))),
    }),
  },
  'a dead server never counts as gone': {
    nodes: (nodes) => ({ ...nodes, gone: async () => [] }),
  },
  'a bot passes tiles that it does not hold': {
    bots: { choose: async ({ view }) => simplestLegal({ ...view, rack: [...view.rack].reverse() }) },
    store: (store) => ({
      ...store,
      commit: (batch) => store.commit(batch.map((one) => withEvents(one, withTilesNotHeld))),
    }),
  },
};

async function eachOf(
  batch: readonly Append[],
  append: (one: Append) => Promise<AppendOutcome>,
): Promise<AppendOutcome[]> {
  const outcomes: AppendOutcome[] = [];
  for (const one of batch) outcomes.push(await append(one));
  return outcomes;
}

async function appendAlone(store: Store, one: Append): Promise<AppendOutcome> {
  return (await store.commit([one]))[0] ?? 'invalid';
}

/** Appends a scheduled action after the newest event, though the decision was made on an older state. */
function appendDespiteConflict(store: Store) {
  return async (one: Append): Promise<AppendOutcome> => {
    const { code, row } = one;
    const outcome = await appendAlone(store, one);
    const isScheduled = row.commands.some((command) => command.startsWith('server/'));
    if (!isScheduled || outcome === 'committed') return outcome;
    const last = (await store.versions([code])).get(code) ?? row.after;
    const moved = { ...row, after: last, version: last + row.version - row.after, commands: [] };
    return appendAlone(store, { code, row: moved, snapshot: null });
  };
}

/** The last writer wins. */
function appendOverOthers(rooms: Store) {
  return async (one: Append): Promise<AppendOutcome> => {
    const { code, row } = one;
    const outcome = await appendAlone(rooms, one);
    const log = await rooms.history(code);
    if (outcome !== 'conflict' || log === null) return outcome;
    const before = log.rows.filter(({ version }) => version <= row.after);
    await rooms.remove(code);
    await rooms.create(code, { ...log, snapshot: null, rows: [...before, row] });
    return 'committed';
  };
}

function withoutCommandIds<Log extends { readonly rows: readonly LogRow[] } | null>(log: Log): Log {
  return log && { ...log, rows: log.rows.map(withoutIds) };
}

function withoutIds(row: LogRow): LogRow {
  return { ...row, commands: [] };
}

function withoutIdsBefore(one: Append): Append {
  return { ...one, snapshot: one.snapshot && { ...one.snapshot, commands: [] } };
}

function withHalfOfDecision(one: Append): Append {
  const events = roomEvents.eventsFrom(one.row.events);
  if (!events.some((event) => event.kind === 'round' && event.event.kind === 'resolved')) return one;
  const { after } = one.row;
  const half = { ...one.row, version: after + 1, events: roomEvents.textOf(events.slice(0, 1)) };
  return { ...one, row: half, snapshot: null };
}

function withEvents(one: Append, change: (event: RoundEvent) => RoundEvent): Append {
  const events = roomEvents.eventsFrom(one.row.events).map((event): RoomEvent => {
    return event.kind === 'round' ? { kind: 'round', event: change(event.event) } : event;
  });
  return { ...one, row: { ...one.row, events: roomEvents.textOf(events) } };
}

function withSwappedTile(event: RoundEvent): RoundEvent {
  if (event.kind !== 'resolved' || event.outcome.kind !== 'move') return event;
  const [first, ...rest] = event.outcome.received;
  const tiles = first.map((face, at) => (at === 0 ? 'joker' : face));
  const [a, b, c] = rest;
  return { kind: 'resolved', outcome: { ...event.outcome, received: [tiles, a, b, c] } };
}

function withTilesNotHeld(event: RoundEvent): RoundEvent {
  return event.kind === 'submitted' && event.pass.by === 'bot'
    ? { ...event, pass: { ...event.pass, tiles: ['joker', 'joker', 'joker'] } }
    : event;
}

function withoutView(message: ServerMessage): ServerMessage {
  if (message.kind !== 'delta') return message;
  const { view: _, viewDelta: __, ...table } = message.table;
  return { ...message, table };
}
