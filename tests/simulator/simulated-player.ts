// Somebody at the table with the page's own connection: plays any legal choice, and remembers all that was said.
import { type Connection, connect, type LinkState } from '../../client/connection/connection.ts';
import { keepPending, type Order, type Pending } from '../../client/connection/pending.ts';
import type { After, OpenWire } from '../../client/connection/wire.ts';
import type { Random, Review, Seat, ServerMessage, Table } from '../../shared-engine/index.ts';
import { anyAnswer } from '../kit/http-client.ts';
import { textMemory } from '../kit/memory-storage.ts';

type AskTicket = Parameters<typeof connect>[0]['askTicket'];

export interface ResidentPorts {
  readonly askTicket: AskTicket;
  readonly openWire: OpenWire;
  readonly after: After;
  readonly now: () => number;
  readonly random: Random;
  /** The longest pause before a choice, in milliseconds. */
  readonly thinking: number;
  /** The number of the last round that this person wants to play. */
  readonly rounds: () => number;
}

/** A command and everything that was answered to it. */
export interface Ordered {
  readonly order: Order;
  readonly at: number;
  readonly answers: { readonly code: string; readonly at: number }[];
}

export interface Told {
  readonly seq: number;
  readonly table: Table;
}

export class Resident {
  readonly name: string;
  /** Null for somebody who only watches. */
  readonly owner: { readonly seat: Seat; readonly since: number } | null;
  readonly ordered = new Map<string, Ordered>();
  readonly told: Told[] = [];
  readonly reviews: { readonly round: number; readonly review: Review }[] = [];
  link: LinkState = { kind: 'connecting' };
  readonly #ports: ResidentPorts;
  readonly #pending: Pending = keepPending(textMemory(), 'orders');
  readonly #connection: Connection;
  #ids = 0;
  #thinks = false;

  constructor(name: string, owner: Resident['owner'], ports: ResidentPorts) {
    this.name = name;
    this.owner = owner;
    this.#ports = ports;
    this.#connection = connect({
      askTicket: ports.askTicket,
      openWire: ports.openWire,
      after: ports.after,
      newId: () => `${name}-${++this.#ids}`,
      chance: () => ports.random.below(1000) / 1000,
      pending: this.#pending,
      onState: (link) => {
        this.link = link;
      },
      onMessage: (message) => this.#hear(message),
    });
  }

  get last(): Told | undefined {
    return this.told.at(-1);
  }

  /** Whether every command is answered and nothing more is to be done. */
  get isDone(): boolean {
    const table = this.last?.table;
    if (table?.view?.stage.phase !== 'closed') return false;
    return table.round >= this.#ports.rounds() && this.#pending.all().length === 0;
  }

  /** Commands that wait for their answer. */
  get unanswered(): readonly Order[] {
    return this.#pending.all();
  }

  start(): void {
    this.#connection.start();
  }

  /** As after a reload or a nudge by the browser. */
  again(): void {
    this.#connection.start();
  }

  stop(): void {
    this.#connection.stop();
  }

  #hear(message: ServerMessage): void {
    if (message.kind === 'table') this.told.push({ seq: message.seq, table: message.table });
    if (message.kind === 'review') this.reviews.push({ round: message.round, review: message.review });
    if (message.kind === 'ack' || message.kind === 'refused') this.#answered(message);
    this.#think();
  }

  #answered(message: Extract<ServerMessage, { kind: 'ack' | 'refused' }>): void {
    const code = message.kind === 'ack' ? 'ack' : message.code;
    const at = this.#ports.now();
    this.ordered.get(message.id ?? '')?.answers.push({ code, at });
  }

  /** One thought at a time; what was thought of is looked at anew when the pause is over. */
  #think(): void {
    if (this.#thinks || this.owner === null || this.#next(this.#ports.random) === null) return;
    this.#thinks = true;
    const { random, thinking } = this.#ports;
    this.#ports.after(20 + random.below(thinking), () => {
      this.#thinks = false;
      const order = this.#next(random);
      if (order === null) return;
      this.ordered.set(order.id, { order, at: this.#ports.now(), answers: [] });
      this.#connection.order(order);
      this.#think();
    });
  }

  #next(random: Random): Order | null {
    const table = this.last?.table;
    if (!table || table.you === null || this.#pending.all().length > 0) return null;
    const { view, you: seat, round } = table;
    const id = `${this.name}-${++this.#ids}`;
    if (view === null || view.stage.phase === 'closed') {
      const info = table.seats[seat];
      const ready = info.kind === 'person' && info.ready;
      if (ready || round >= this.#ports.rounds()) return null;
      return { kind: 'act', id, act: { kind: 'ready', ready: true } };
    }
    if (view.audience !== 'seat') return null;
    const { stage } = view;
    if (stage.phase === 'giving' && stage.counts[seat] === 0) return null;
    if (view.answer === null) return { kind: 'choose', id, round, seat, choice: anyAnswer(view, random) };
    if (stage.phase !== 'passing' || random.below(12) > 0) return null;
    return { kind: 'choose', id, round, seat, choice: { kind: 'take-back', step: stage.step } };
  }
}
