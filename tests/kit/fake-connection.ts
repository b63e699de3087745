// A socket, a ticket office and a clock in the hands of the test, for the page's connection.
import type { ApiResult } from '../../client/connection/api.ts';
import { type Connection, type ConnectionState, connect } from '../../client/connection/connection.ts';
import { openPendingRequests } from '../../client/connection/pending.ts';
import type { SocketEvents } from '../../client/connection/socket.ts';
import type { TextStorage } from '../../client/storage/browser-storage.ts';
import type { ClientMessage, ServerMessage } from '../../shared-engine/index.ts';
import { clientMessageSchema } from '../../shared-engine/index.ts';
import { memoryStorage } from './memory-storage.ts';

interface Line {
  readonly events: SocketEvents;
  readonly sent: ClientMessage[];
  closedByPage: boolean;
}

export interface FakeConnection {
  readonly connection: Connection;
  readonly lines: Line[];
  readonly states: ConnectionState[];
  readonly messages: ServerMessage[];
  readonly memory: TextStorage;
  /** Milliseconds of the pauses asked for and not called off, in order. */
  readonly pauses: () => number[];
  /** What the next ticket request answers; by default a good ticket. */
  ticket: ApiResult<{ readonly ticket: string }>;
  /** Runs the timer with this pause, as if the time had passed. */
  elapse(ms: number): void;
  /** Lets promises settle. */
  settle(): Promise<void>;
  /** Opens the newest line and answers its hello. */
  welcome(): void;
  say(message: ServerMessage): void;
}

export function fakeConnection(memory: TextStorage = memoryStorage(), chance = 0.5): FakeConnection {
  const lines: Line[] = [];
  const states: ConnectionState[] = [];
  const messages: ServerMessage[] = [];
  const timers: { ms: number; run: () => void; off: boolean }[] = [];
  let ids = 0;
  const last = () => lines.at(-1)!;
  const fake: FakeConnection = {
    connection: connect({
      askTicket: async () => fake.ticket,
      openSocket: (events) => {
        const line: Line = { events, sent: [], closedByPage: false };
        lines.push(line);
        return {
          send: (text) => line.sent.push(clientMessageSchema.parse(JSON.parse(text))),
          close: () => {
            line.closedByPage = true;
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
      pending: openPendingRequests(memory, 'requests'),
      onState: (state) => states.push(state),
      onMessage: (message) => messages.push(message),
    }),
    lines,
    states,
    messages,
    memory,
    pauses: () => timers.filter(({ off }) => !off).map(({ ms }) => ms),
    ticket: { ok: true, value: { ticket: 'ticket' } },
    elapse(ms) {
      const timer = timers.find((candidate) => !candidate.off && candidate.ms === ms);
      if (!timer) throw new Error(`no timer of ${ms} ms is running`);
      timer.off = true;
      timer.run();
    },
    settle: () => new Promise((resolve) => setImmediate(resolve)),
    welcome() {
      last().events.opened();
      const hello = last().sent.at(-1)!;
      fake.say({ kind: 'welcome', id: hello.id, version: 1 });
    },
    say: (message) => last().events.text(JSON.stringify(message)),
  };
  return fake;
}
