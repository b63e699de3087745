// Sockets, tickets and timers for the page's connection, all of them run by the test.
import type { ApiResult } from '../../client/connection/api.ts';
import { type ConnectionState, connect, type ServerConnection } from '../../client/connection/connection.ts';
import { openPendingRequests } from '../../client/connection/pending.ts';
import type { SocketEvents } from '../../client/connection/socket.ts';
import type { TextStorage } from '../../client/storage/browser-storage.ts';
import type { ClientMessage, ServerMessage } from '../../shared-engine/protocol/messages.ts';
import { clientMessageSchema } from '../../shared-engine/protocol/messages.ts';
import { memoryStorage } from './memory-storage.ts';

interface FakeSocket {
  readonly events: SocketEvents;
  readonly sent: ClientMessage[];
  closedByPage: boolean;
}

export interface FakeConnection {
  readonly connection: ServerConnection;
  readonly sockets: FakeSocket[];
  readonly states: ConnectionState[];
  readonly messages: ServerMessage[];
  /** One for each ticket asked for. */
  readonly ticketRequests: readonly AbortSignal[];
  readonly storage: TextStorage;
  /** Milliseconds of the pauses started and not canceled, in order. */
  readonly pauses: () => number[];
  /** What the next ticket request answers; by default a good ticket. */
  ticket: ApiResult<{ readonly ticket: string }>;
  /** Runs the timer with this pause, as if the time had passed. */
  elapse(ms: number): void;
  /** Lets promises that are ready run. */
  runPromises(): Promise<void>;
  /** Opens the newest socket and answers its hello. */
  welcome(): void;
  receive(message: ServerMessage): void;
}

export function fakeConnection(storage: TextStorage = memoryStorage(), chance = 0.5): FakeConnection {
  const sockets: FakeSocket[] = [];
  const states: ConnectionState[] = [];
  const messages: ServerMessage[] = [];
  const ticketRequests: AbortSignal[] = [];
  const timers: { ms: number; run: () => void; off: boolean }[] = [];
  let ids = 0;
  const last = () => sockets.at(-1)!;
  const fake: FakeConnection = {
    connection: connect({
      askTicket: async (signal) => {
        ticketRequests.push(signal);
        return fake.ticket;
      },
      openSocket: (events) => {
        const socket: FakeSocket = { events, sent: [], closedByPage: false };
        sockets.push(socket);
        return {
          send: (text) => socket.sent.push(clientMessageSchema.parse(JSON.parse(text))),
          close: () => {
            socket.closedByPage = true;
          },
        };
      },
      startTimer: (ms, run) => {
        const timer = { ms, run, off: false };
        timers.push(timer);
        return () => {
          timer.off = true;
        };
      },
      newId: () => `id-${++ids}`,
      random: () => chance,
      pending: openPendingRequests(storage, 'requests'),
      onState: (state) => states.push(state),
      onMessage: (message) => messages.push(message),
    }),
    sockets,
    states,
    ticketRequests,
    messages,
    storage,
    pauses: () => timers.filter(({ off }) => !off).map(({ ms }) => ms),
    ticket: { ok: true, value: { ticket: 'ticket' } },
    elapse(ms) {
      const timer = timers.find((candidate) => !candidate.off && candidate.ms === ms);
      if (!timer) throw new Error(`no timer of ${ms} ms is running`);
      timer.off = true;
      timer.run();
    },
    runPromises: () => new Promise((resolve) => setImmediate(resolve)),
    welcome() {
      last().events.opened();
      const hello = last().sent.at(-1)!;
      fake.receive({ kind: 'welcome', id: hello.id, version: 1 });
    },
    receive: (message) => last().events.text(JSON.stringify(message)),
  };
  return fake;
}
