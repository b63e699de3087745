// The people around a room: who listens from where, and what each of them is told after every change.
import {
  CLOSE,
  type PageLine,
  type Resume,
  type Review,
  SEATS,
  type Seat,
  type ServerMessage,
} from '../../shared-engine/index.ts';
import type { Clock, Undo } from '../ports.ts';
import { type TableFacts, tableFor } from './audience.ts';
import type { Owner } from './command.ts';
import { sizeAtMost } from './even-size.ts';
import { type Heard, newsBetween } from './news.ts';
import type { Room } from './room.ts';
import { personAt, type RoomState } from './state.ts';

/** Sockets that may watch one room besides its four owners. */
const MOST_WATCHERS = 40;

/** One socket, as the table sees it. */
export interface Line {
  /** `text` is the message as it goes out, where it is written already. */
  send(message: ServerMessage, text?: string): void;
  /** `reason` is for the peer's program. */
  end(code: number, reason?: string): void;
}

/** What somebody says of himself who opens a line. */
export interface Coming {
  /** Which table the other side has from an earlier line; null when it has none. */
  readonly knows: Resume | null;
  /** Null where the other side does not say. */
  readonly from: PageLine | null;
}

interface Listener extends Coming {
  readonly line: Line;
  /** Null for a watcher; an owner who lost the seat is told what a watcher is told. */
  readonly owner: Owner | null;
  /** Names the connection. */
  readonly name: string;
  /** What was told last; null as long as the room has to know of the connection before anything is told. */
  told: Heard | null;
  /** Whether the room has known of the connection. */
  known: boolean;
}

type Told = Listener & { told: Heard };

/** What a person finds on coming back besides the table: the review of the last round, once it is there. */
export type Waiting = (owner: Owner) => { readonly round: number; readonly review: Review } | null;

export interface TablePorts {
  readonly clock: Clock;
  readonly node: string;
}

export class Table {
  readonly #room: Room;
  readonly #ports: TablePorts;
  readonly #card: TableFacts['card'];
  readonly #listeners = new Set<Listener>();
  #names = 0;

  constructor(room: Room, card: TableFacts['card'], ports: TablePorts) {
    this.#room = room;
    this.#card = card;
    this.#ports = ports;
    room.onChange(() => {
      const entered = [...this.#listeners].filter(wasTold);
      for (const listener of [...this.#listeners]) this.#meet(listener);
      this.#tellAlike(entered.filter((listener) => this.#listeners.has(listener)));
    });
  }

  get listeners(): number {
    return this.#listeners.size;
  }

  get hasRoomToWatch(): boolean {
    return [...this.#listeners].filter(({ owner }) => owner === null).length < MOST_WATCHERS;
  }

  /**
   * Lets somebody listen; a newer line of the same person replaces the older one.
   */
  attach(line: Line, owner: Owner | null, waiting: Waiting, coming: Coming): Undo {
    const name = `${this.#ports.node}.${++this.#names}`;
    const listener: Listener = { ...coming, line, owner, name, told: null, known: false };
    this.#listeners.add(listener);
    void this.#enter(listener, waiting);
    return () => {
      if (!this.#listeners.delete(listener) || owner === null) return;
      void this.#leave(owner.seat, name);
    };
  }

  /** To the owner of a seat alone, if that person is here. */
  tellOwner(owner: Owner, message: ServerMessage): void {
    for (const listener of this.#listeners) {
      const here = listener.owner?.seat === owner.seat && listener.owner.since === owner.since;
      if (here && listener.told !== null) listener.line.send(message);
    }
  }

  tellEverybody(message: ServerMessage): void {
    for (const { line } of this.#listeners) line.send(message);
  }

  /** Ends every line. */
  endAll(code: number): void {
    for (const { line } of [...this.#listeners]) line.end(code);
  }

  /** Tells the room again what it should know of this server's lines and does not. */
  async makeGood(): Promise<void> {
    const { chairs } = this.#room.state;
    for (const listener of [...this.#listeners]) {
      const { owner, known } = listener;
      const person = owner && personAt(this.#room.state, owner.seat, owner.since);
      if (person && (!known || person.presence.kind === 'gone')) await this.#come(listener);
    }
    for (const seat of SEATS) {
      const chair = chairs[seat];
      if (chair.kind !== 'person' || chair.presence.kind === 'gone') continue;
      const { node, line } = chair.presence;
      const listens = [...this.#listeners].some(({ name }) => name === line);
      if (node === this.#ports.node && !listens) await this.#leave(seat, line);
    }
  }

  /** These servers are gone, and with them the lines they had. */
  async withoutNodes(gone: readonly string[]): Promise<void> {
    for (const seat of SEATS) {
      const chair = this.#room.state.chairs[seat];
      if (chair.kind !== 'person' || chair.presence.kind === 'gone') continue;
      const { node, line } = chair.presence;
      if (gone.includes(node)) await this.#leave(seat, line);
    }
  }

  async #enter(listener: Listener, waiting: Waiting): Promise<void> {
    const { owner, line } = listener;
    if (owner !== null) await this.#come(listener);
    if (!this.#listeners.has(listener)) return;
    if (listener.told === null) this.#tellFirst(listener);
    const review = owner && waiting(owner);
    if (review) line.send({ kind: 'review', ...review });
  }

  /** A connection of which the room cannot be told just now is told of at the next roll call. */
  async #come({ owner, name, from }: Listener): Promise<void> {
    const { node } = this.#ports;
    if (owner === null) return;
    await this.#room.submit({ kind: 'come', owner, node, line: name, ...(from && { from }) });
  }

  async #leave(seat: Seat, line: string): Promise<void> {
    await this.#room.submit({ kind: 'go', seat, line }, `go/${line}`);
  }

  /** Looks at what the room knows of this connection: that it came, or that another one came after it. */
  #meet(listener: Listener): void {
    const { owner, name, line } = listener;
    const person = owner && personAt(this.#room.state, owner.seat, owner.since);
    if (!person) return;
    const { presence } = person;
    if (presence.kind === 'here' && presence.line === name) {
      listener.known = true;
      if (listener.told !== null) return;
      this.#tellFirst(listener);
    }
    if (presence.kind === 'here' && presence.line !== name && listener.known) {
      this.#listeners.delete(listener);
      line.end(CLOSE.replaced);
    }
  }

  /** In one turn and in frames of one size, whatever is in them: when and how much somebody hears tells nothing. */
  #tellAlike(listeners: readonly Told[]): void {
    const facts = this.#facts();
    const messages = listeners.map((listener) => this.#newsFor(listener, facts));
    const texts = messages.map((message) => JSON.stringify(message));
    const size = Math.max(...texts.map((text, n) => sizeAtMost(messages[n]!, text)));
    for (const [n, { line }] of listeners.entries()) line.send(messages[n]!, texts[n]!.padEnd(size));
  }

  #newsFor(listener: Told, facts: TableFacts): ServerMessage {
    const before = listener.told;
    const now = heardBy(listener.owner, this.#room.state);
    listener.told = now;
    return newsSince(before, now, facts);
  }

  /** What is new to somebody who comes back, where that can still be said; the whole table otherwise. */
  #tellFirst(listener: Listener): void {
    const { line, owner, knows } = listener;
    const facts = this.#facts();
    const now = heardBy(owner, this.#room.state);
    const then = knows === null ? undefined : this.#room.stateAt(knows.seq);
    const before = then && heardBy(owner, then);
    listener.told = now;
    // A page that had the table from another seat, or from none, has not what the news would add to.
    const fits = before !== undefined && (before.listening?.seat ?? null) === knows?.you;
    line.send(fits ? newsSince(before, now, facts) : wholeTable(now, facts));
  }

  #facts(): TableFacts {
    const { code, stepSince } = this.#room;
    return { code, card: this.#card, stepSince, now: this.#ports.clock.now() };
  }
}

function wholeTable({ state, listening }: Heard, facts: TableFacts): ServerMessage {
  return { kind: 'table', seq: state.seq, table: tableFor(state, facts, listening) };
}

function newsSince(before: Heard, now: Heard, facts: TableFacts): ServerMessage {
  const { seq } = now.state;
  return { kind: 'news', after: before.state.seq, seq, table: newsBetween(before, now, facts) };
}

function wasTold(listener: Listener): listener is Told {
  return listener.told !== null;
}

function heardBy(owner: Owner | null, state: RoomState): Heard {
  const person = owner && personAt(state, owner.seat, owner.since);
  return { state, listening: owner && person && { seat: owner.seat, person } };
}
