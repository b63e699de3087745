// The people around a room: who listens from where, and what each of them is told after every change.
import {
  CLOSE,
  type Resume,
  type Review,
  SEATS,
  type Seat,
  type ServerMessage,
} from '../../shared-engine/index.ts';
import type { Clock, Undo } from '../ports.ts';
import { type Listening, type TableFacts, tableFor } from './audience.ts';
import type { Owner } from './command.ts';
import { newsBetween } from './news.ts';
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

interface Listener {
  readonly line: Line;
  /** Null for a watcher; an owner who lost the seat is told what a watcher is told. */
  readonly owner: Owner | null;
  /** Names the connection. */
  readonly name: string;
  /** Which table the other side has; null when it has none. */
  readonly knows: Resume | null;
  /** Whether the table is told already; before that the room has to know of the connection. */
  entered: boolean;
  /** Whether the room has known of the connection. */
  known: boolean;
}

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
      const entered = [...this.#listeners].filter((listener) => listener.entered);
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
   * Lets somebody listen; a newer line of the same person replaces the older one. `knows`: which table
   * the other side has already, from an earlier line.
   */
  attach(line: Line, owner: Owner | null, waiting: Waiting, knows: Resume | null = null): Undo {
    const name = `${this.#ports.node}.${++this.#names}`;
    const listener: Listener = { line, owner, name, knows, entered: false, known: false };
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
      if (here && listener.entered) listener.line.send(message);
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
    if (!listener.entered) {
      listener.entered = true;
      this.#tellFirst(listener);
    }
    const review = owner && waiting(owner);
    if (review) line.send({ kind: 'review', ...review });
  }

  /** A connection of which the room cannot be told just now is told of at the next roll call. */
  async #come({ owner, name }: Listener): Promise<void> {
    const { node } = this.#ports;
    if (owner === null) return;
    await this.#room.submit({ kind: 'come', owner, node, line: name });
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
      if (listener.entered) return;
      listener.entered = true;
      this.#tellFirst(listener);
    }
    if (presence.kind === 'here' && presence.line !== name && listener.known) {
      this.#listeners.delete(listener);
      line.end(CLOSE.replaced);
    }
  }

  /** In one turn and in frames of one size: when and how much somebody hears tells nothing about what. */
  #tellAlike(listeners: readonly Listener[]): void {
    let forWatchers: Written | null = null;
    const told = listeners.map(({ line, owner }) => {
      if (owner !== null) return { line, ...written(this.#tableMessage(owner)) };
      forWatchers ??= written(this.#tableMessage(null));
      return { line, ...forWatchers };
    });
    const size = Math.max(...told.map(({ text }) => text.length));
    for (const { line, message, text } of told) line.send(message, text.padEnd(size));
  }

  #tell({ line, owner }: Listener): void {
    line.send(this.#tableMessage(owner));
  }

  #tableMessage(owner: Owner | null): ServerMessage {
    const { state } = this.#room;
    return { kind: 'table', seq: state.seq, table: this.#tableAt(state, owner) };
  }

  /** What is new to somebody who comes back, where that can still be said; the whole table otherwise. */
  #tellFirst(listener: Listener): void {
    const { line, owner, knows } = listener;
    const { state } = this.#room;
    const then = knows === null ? undefined : this.#room.stateAt(knows.seq);
    const before = then && this.#tableAt(then, owner);
    // A page that had the table from another seat, or from none, has not what the news would add to.
    if (knows === null || before === undefined || before.you !== knows.you) {
      this.#tell(listener);
      return;
    }
    const table = newsBetween(before, this.#tableAt(state, owner));
    line.send({ kind: 'news', after: knows.seq, seq: state.seq, table });
  }

  #tableAt(state: RoomState, owner: Owner | null) {
    const { code, stepSince } = this.#room;
    const facts: TableFacts = { code, card: this.#card, stepSince, now: this.#ports.clock.now() };
    return tableFor(state, facts, listeningFrom(state, owner));
  }
}

function listeningFrom(state: RoomState, owner: Owner | null): Listening {
  const person = owner && personAt(state, owner.seat, owner.since);
  return owner && person && { seat: owner.seat, person };
}

interface Written {
  readonly message: ServerMessage;
  readonly text: string;
}

function written(message: ServerMessage): Written {
  return { message, text: JSON.stringify(message) };
}
