// A socket, a ticket office and a clock in the hands of the test, for the page's connection.
import type { Answered } from '../../client/connection/api.ts';
import { type Connection, connect, type LinkState } from '../../client/connection/connection.ts';
import { keepPending } from '../../client/connection/pending.ts';
import type { Memory } from '../../client/storage/browser-storage.ts';
import type { WireEvents } from '../../client/connection/wire.ts';
import type { ClientMessage, ServerMessage } from '../../shared-engine/index.ts';
import { clientMessageSchema } from '../../shared-engine/index.ts';
import { textMemory } from './memory-storage.ts';

interface Line {
  readonly events: WireEvents;
  readonly sent: ClientMessage[];
  closedByPage: boolean;
}

export interface FakeLine {
  readonly connection: Connection;
  readonly lines: Line[];
  readonly states: LinkState[];
  readonly messages: ServerMessage[];
  readonly memory: Memory;
  /** Milliseconds of the pauses asked for and not called off, in order. */
  readonly pauses: () => number[];
  /** What the next ticket request answers; by default a good ticket. */
  ticket: Answered<{ readonly ticket: string }>;
  /** Runs the timer with this pause, as if the time had passed. */
  elapse(ms: number): void;
  /** Lets promises settle. */
  settle(): Promise<void>;
  /** Opens the newest line and answers its hello. */
  welcome(): void;
  say(message: ServerMessage): void;
}

export function fakeLine(memory: Memory = textMemory(), chance = 0.5): FakeLine {
  const lines: Line[] = [];
  const states: LinkState[] = [];
  const messages: ServerMessage[] = [];
  const timers: { ms: number; run: () => void; off: boolean }[] = [];
  let ids = 0;
  const last = () => lines.at(-1)!;
  const fake: FakeLine = {
    connection: connect({
      askTicket: async () => fake.ticket,
      openWire: (events) => {
        const line: Line = { events, sent: [], closedByPage: false };
        lines.push(line);
        return {
          send: (text) => line.sent.push(clientMessageSchema.parse(JSON.parse(text))),
          close: () => {
            line.closedByPage = true;
          },
        };
      },
      after: (ms, run) => {
        const timer = { ms, run, off: false };
        timers.push(timer);
        return () => {
          timer.off = true;
        };
      },
      newId: () => `id-${++ids}`,
      chance: () => chance,
      pending: keepPending(memory, 'orders'),
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
