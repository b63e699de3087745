// The people around a room: who listens from where, and what each of them is told after every change.
import { CLOSE, type Review, type ServerMessage } from '../../shared-engine/index.ts';
import type { Clock, Undo } from '../ports.ts';
import type { GoneSince, Watch } from './agenda.ts';
import { type Listening, type TableFacts, tableFor } from './audience.ts';
import type { Owner } from './command.ts';
import { Presence } from './presence.ts';
import type { Room } from './room.ts';
import { personAt, personsOf } from './state.ts';

/** Sockets that may watch one room besides its four owners. */
const MOST_WATCHERS = 40;

/** One socket, as the table sees it. */
export interface Line {
  send(message: ServerMessage): void;
  end(code: number): void;
}

interface Listener {
  readonly line: Line;
  /** Null for a watcher; an owner who lost the seat is told what a watcher is told. */
  readonly owner: Owner | null;
}

/** What a person finds on coming back besides the table: the review of the last round, once it is there. */
export type Waiting = (owner: Owner) => { readonly round: number; readonly review: Review } | null;

export class Table {
  readonly #room: Room;
  readonly #clock: Clock;
  readonly #card: TableFacts['card'];
  readonly #presence: Presence;
  readonly #inHandSince: number;
  readonly #listeners = new Set<Listener>();
  #presenceChanged: () => void = () => {};

  constructor(room: Room, card: TableFacts['card'], clock: Clock) {
    this.#room = room;
    this.#card = card;
    this.#clock = clock;
    this.#presence = new Presence(clock);
    this.#inHandSince = clock.now();
    room.onChange((state) => {
      this.#presence.follow(personsOf(state));
      this.#tellAll();
    });
    this.#presence.follow(personsOf(room.state));
  }

  get goneSince(): GoneSince {
    return this.#presence.goneSince;
  }

  get watch(): Watch {
    return { goneSince: this.goneSince, inHandSince: this.#inHandSince };
  }

  get listeners(): number {
    return this.#listeners.size;
  }

  get hasRoomToWatch(): boolean {
    return [...this.#listeners].filter(({ owner }) => owner === null).length < MOST_WATCHERS;
  }

  /** Called when somebody came or went without an event of the room. */
  onPresence(listener: () => void): void {
    this.#presenceChanged = listener;
  }

  /** Lets somebody listen; a newer line of the same person replaces the older one. */
  attach(line: Line, owner: Owner | null, waiting: Waiting): Undo {
    const listener: Listener = { line, owner };
    if (owner !== null) this.#replace(owner);
    const generation = owner === null ? 0 : this.#presence.come(owner.since);
    this.#listeners.add(listener);
    if (owner === null) this.#tell(listener);
    else this.#othersToo();
    const review = owner === null ? null : waiting(owner);
    if (review !== null) line.send({ kind: 'review', ...review });
    return () => {
      if (!this.#listeners.delete(listener) || owner === null) return;
      if (this.#presence.go(owner.since, generation)) this.#othersToo();
    };
  }

  /** To the owner of a seat alone, if that person is here. */
  tellOwner(owner: Owner, message: ServerMessage): void {
    for (const listener of this.#listeners) {
      if (listener.owner?.seat === owner.seat && listener.owner.since === owner.since)
        listener.line.send(message);
    }
  }

  /** Ends every line. */
  endAll(code: number): void {
    for (const { line } of [...this.#listeners]) line.end(code);
  }

  #replace({ since }: Owner): void {
    for (const { line, owner } of [...this.#listeners]) if (owner?.since === since) line.end(CLOSE.replaced);
  }

  #othersToo(): void {
    this.#tellAll();
    this.#presenceChanged();
  }

  #tellAll(): void {
    for (const listener of [...this.#listeners]) this.#tell(listener);
  }

  #tell({ line, owner }: Listener): void {
    const { state } = this.#room;
    const facts: TableFacts = {
      code: this.#room.code,
      card: this.#card,
      watch: this.watch,
      now: this.#clock.now(),
    };
    line.send({ kind: 'table', seq: state.seq, table: tableFor(state, facts, this.#listening(owner)) });
  }

  #listening(owner: Owner | null): Listening {
    const person = owner && personAt(this.#room.state, owner.seat, owner.since);
    return owner && person && { seat: owner.seat, person };
  }
}
