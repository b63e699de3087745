// A simulated player on the page's own connection: makes any legal choice and records everything received.
import { type Connection, type ConnectionState, connect } from '../../client/connection/connection.ts';
import {
  type ClientRequest,
  openPendingRequests,
  type PendingRequests,
} from '../../client/connection/pending.ts';
import type { OpenSocket, StartTimer } from '../../client/connection/socket.ts';
import type { Review } from '../../shared-engine/analysis/review/review.ts';
import type { ServerMessage } from '../../shared-engine/protocol/messages.ts';
import type { Table } from '../../shared-engine/protocol/table.ts';
import type { Random } from '../../shared-engine/rules/deal/random.ts';
import type { Seat } from '../../shared-engine/rules/deal/seat.ts';
import { pendingDecision } from '../../shared-engine/rules/view/pending-decision.ts';
import { anyAnswer } from '../kit/http-client.ts';
import { memoryStorage } from '../kit/memory-storage.ts';

type AskTicket = Parameters<typeof connect>[0]['askTicket'];

export interface PlayerPorts {
  readonly askTicket: AskTicket;
  readonly openWire: OpenSocket;
  readonly after: StartTimer;
  readonly now: () => number;
  readonly random: Random;
  /** The longest pause before a choice, in milliseconds. */
  readonly maxThinkingMs: number;
  /** The number of the last round that this person wants to play. */
  readonly lastRound: () => number;
}

/** A command and everything that was answered to it. */
export interface SentCommand {
  readonly command: ClientRequest;
  readonly at: number;
  readonly answers: { readonly code: string; readonly at: number }[];
}

export interface ReceivedTable {
  readonly seq: number;
  readonly table: Table;
}

export class SimulatedPlayer {
  readonly name: string;
  /** Null for a spectator. */
  readonly holder: { readonly seat: Seat; readonly since: number } | null;
  readonly sent = new Map<string, SentCommand>();
  readonly received: ReceivedTable[] = [];
  readonly reviews: { readonly round: number; readonly review: Review }[] = [];
  link: ConnectionState = { kind: 'connecting' };
  readonly #ports: PlayerPorts;
  readonly #pending: PendingRequests = openPendingRequests(memoryStorage(), 'orders');
  readonly #connection: Connection;
  #ids = 0;
  /** Ends the pause before the next choice; null where there is none. */
  #stopThinking: (() => void) | null = null;

  constructor(name: string, owner: SimulatedPlayer['holder'], ports: PlayerPorts) {
    this.name = name;
    this.holder = owner;
    this.#ports = ports;
    this.#connection = connect({
      askTicket: ports.askTicket,
      openSocket: ports.openWire,
      startTimer: ports.after,
      newId: () => `${name}-${++this.#ids}`,
      random: () => ports.random.below(1000) / 1000,
      pending: this.#pending,
      onState: (link) => {
        this.link = link;
      },
      onMessage: (message) => this.#hear(message),
    });
  }

  get last(): ReceivedTable | undefined {
    return this.received.at(-1);
  }

  /** Whether every command is answered and nothing more is to be done. */
  get isDone(): boolean {
    const table = this.last?.table;
    if (table?.view?.stage.phase !== 'closed') return false;
    return table.round >= this.#ports.lastRound() && this.#pending.all().length === 0;
  }

  /** Commands that wait for their answer. */
  get unanswered(): readonly ClientRequest[] {
    return this.#pending.all();
  }

  start(): void {
    this.#connection.start();
  }

  /** Connects anew, as after a reload. */
  reconnect(): void {
    this.#connection.start();
  }

  /** Nothing of this player goes on: a pause before a choice may last an hour. */
  stop(): void {
    this.#connection.stop();
    this.#stopThinking?.();
    this.#stopThinking = null;
  }

  #hear(message: ServerMessage): void {
    if (message.kind === 'table') this.received.push({ seq: message.seq, table: message.table });
    if (message.kind === 'review') this.reviews.push({ round: message.round, review: message.review });
    if (message.kind === 'ack' || message.kind === 'rejected') this.#answered(message);
    this.#think();
  }

  #answered(message: Extract<ServerMessage, { kind: 'ack' | 'rejected' }>): void {
    const code = message.kind === 'ack' ? 'ack' : message.code;
    const at = this.#ports.now();
    this.sent.get(message.id ?? '')?.answers.push({ code, at });
  }

  /** Plans one command at a time; after the pause the table is looked at anew. */
  #think(): void {
    if (this.#stopThinking || this.holder === null || this.#next(this.#ports.random) === null) return;
    const { random, maxThinkingMs } = this.#ports;
    this.#stopThinking = this.#ports.after(20 + random.below(maxThinkingMs), () => {
      this.#stopThinking = null;
      const command = this.#next(random);
      if (command === null) return;
      this.sent.set(command.id, { command, at: this.#ports.now(), answers: [] });
      this.#connection.send(command);
      this.#think();
    });
  }

  #next(random: Random): ClientRequest | null {
    const table = this.last?.table;
    if (!table || table.you === null || this.#pending.all().length > 0) return null;
    const { view, you: seat, round } = table;
    const id = `${this.name}-${++this.#ids}`;
    if (view === null || view.stage.phase === 'closed') {
      const info = table.seats[seat];
      const ready = info.kind === 'person' && info.ready;
      if (ready || round >= this.#ports.lastRound()) return null;
      return { kind: 'action', id, action: { kind: 'ready', ready: true } };
    }
    if (view.audience !== 'seat') return null;
    const { stage } = view;
    if (pendingDecision(view) !== null)
      return { kind: 'choose', id, round, seat, choice: anyAnswer(view, random) };
    if (stage.phase !== 'passing' || random.below(12) > 0) return null;
    return { kind: 'choose', id, round, seat, choice: { kind: 'withdraw', step: stage.step } };
  }
}
