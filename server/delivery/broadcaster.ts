// The people around a room: who listens from where, and what each of them is sent after every change.
import { CLOSE, type Resume, type ServerMessage } from '../../shared-engine/index.ts';
import type { SeatConnection, SeatConnections } from '../presence/seat-connections.ts';
import type { SeatHolder } from '../room/command.ts';
import { heldAt, type RoomState, seatOf } from '../room/state.ts';
import { type TableFacts, tableFor } from './audience.ts';
import { deltaBetween, type Moment } from './delta.ts';
import { DeltaTexts } from './delta-text.ts';
import type { StateHistory } from './state-history.ts';

/** Sockets that may watch one room besides those of its four seats. */
export const MAX_SPECTATORS = 40;

/** One socket, as a room sees it. */
export interface Connection {
  send(message: ServerMessage): void;
  /** A message that is written already, as JSON; white space may follow it. */
  sendText(text: string): void;
  /** `reason` is for the peer's program. */
  end(code: number, reason?: string): void;
}

export interface Listener {
  readonly connection: Connection;
  /** Null for a spectator; a holder who lost the seat is sent what a spectator is sent. */
  readonly seat: SeatConnection | null;
  /** Which table the other side has from an earlier connection; null when it has none. */
  readonly knows: Resume | null;
  /** What was sent last; null as long as the room has to know of the connection before anything is sent. */
  lastSent: Moment | null;
}

type Greeted = Listener & { lastSent: Moment };

export interface BroadcasterOptions {
  readonly state: () => RoomState;
  readonly facts: () => TableFacts;
  readonly history: StateHistory;
  /** Whether people who have no seat may watch. */
  readonly isOpen: boolean;
  readonly connections: Pick<SeatConnections, 'isReplaced' | 'isHeld' | 'forget'>;
}

export class Broadcaster {
  readonly #options: BroadcasterOptions;
  readonly #listeners = new Set<Listener>();

  constructor(options: BroadcasterOptions) {
    this.#options = options;
  }

  get listeners(): number {
    return this.#listeners.size;
  }

  get hasRoomForSpectators(): boolean {
    return [...this.#listeners].filter(({ seat }) => seat === null).length < MAX_SPECTATORS;
  }

  add(connection: Connection, seat: SeatConnection | null, knows: Resume | null): Listener {
    const listener: Listener = { connection, seat, knows, lastSent: null };
    this.#listeners.add(listener);
    return listener;
  }

  remove(listener: Listener): void {
    this.#listeners.delete(listener);
  }

  has(listener: Listener): boolean {
    return this.#listeners.has(listener);
  }

  /** To be called after every change of the room, when the room's connections know of it. */
  changed(): void {
    const greeted = [...this.#listeners].filter(isGreeted);
    for (const listener of [...this.#listeners]) this.#syncListener(listener);
    this.#broadcastPadded(greeted.filter((listener) => this.#listeners.has(listener)));
  }

  /** Sends the first message: what is new to somebody who comes back, where that can be said; else the whole table. */
  greet(listener: Listener): void {
    if (!this.#listeners.has(listener) || listener.lastSent !== null) return;
    const { connection, seat, knows } = listener;
    const facts = this.#options.facts();
    const now = momentOf(seat, this.#options.state());
    const then = knows === null ? undefined : this.#options.history.at(knows.seq);
    const before = then && momentOf(seat, then);
    listener.lastSent = now;
    // A page that had the table from another seat, or from none, does not have what a delta would add to.
    const fits = before !== undefined && (before.listening?.seat ?? null) === knows?.you;
    connection.send(fits ? deltaMessage(before, now, facts) : tableMessage(now, facts));
  }

  /** To the holder of a seat alone, if that person is connected here. */
  sendTo(holder: SeatHolder, message: ServerMessage): void {
    this.sendTextTo(holder, JSON.stringify(message));
  }

  /** The same for a message that is a text already. */
  sendTextTo(holder: SeatHolder, text: string): void {
    for (const { seat, connection, lastSent } of this.#listeners) {
      const isTheirs = seat?.holder.since === holder.since;
      if (isTheirs && lastSent !== null) connection.sendText(text);
    }
  }

  sendToAll(message: ServerMessage): void {
    for (const { connection } of this.#listeners) connection.send(message);
  }

  /** Ends every connection. */
  endAll(code: number): void {
    for (const { connection } of [...this.#listeners]) connection.end(code);
  }

  /** Looks at what the room knows of this connection: that it opened, or that another one took its place. */
  #syncListener(listener: Listener): void {
    const { seat, connection } = listener;
    if (seat?.known) this.greet(listener);
    if (seat && !this.#options.isOpen && !this.#options.connections.isHeld(seat)) {
      // Nobody watches a table of a class: who lost the seat there is sent nothing more.
      this.#listeners.delete(listener);
      this.#options.connections.forget(seat);
      connection.end(CLOSE.ticketRejected);
      return;
    }
    if (seat && this.#options.connections.isReplaced(seat)) {
      this.#listeners.delete(listener);
      this.#options.connections.forget(seat);
      connection.end(CLOSE.replaced);
    }
  }

  /** In one turn and in frames of one size, whatever is in them: when and how much is sent to a seat tells nothing. */
  #broadcastPadded(listeners: readonly Greeted[]): void {
    const facts = this.#options.facts();
    const state = this.#options.state();
    const texts = new Map<RoomState, DeltaTexts>();
    const written = listeners.map((listener) => {
      const before = listener.lastSent;
      listener.lastSent = momentOf(listener.seat, state);
      const shared = texts.get(before.state) ?? new DeltaTexts(before.state, state, facts);
      texts.set(before.state, shared);
      return shared.write(before, listener.lastSent);
    });
    const size = written.reduce((most, one) => Math.max(most, one.size), 0);
    for (const [n, { connection }] of listeners.entries()) connection.sendText(written[n]!.text.padEnd(size));
  }
}

function tableMessage({ state, listening }: Moment, facts: TableFacts): ServerMessage {
  return { kind: 'table', seq: state.seq, table: tableFor(state, facts, listening) };
}

function deltaMessage(before: Moment, now: Moment, facts: TableFacts): ServerMessage {
  const { seq } = now.state;
  return { kind: 'delta', after: before.state.seq, seq, table: deltaBetween(before, now, facts) };
}

function isGreeted(listener: Listener): listener is Greeted {
  return listener.lastSent !== null;
}

function momentOf(seat: SeatConnection | null, state: RoomState): Moment {
  const at = seat && seatOf(state, seat.holder);
  const held = at === null ? null : heldAt(state, at);
  return { state, listening: at !== null && held ? { seat: at, held } : null };
}
