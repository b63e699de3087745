// The connections that the holders of a room's seats have to this server, and what the room knows of them.
import { type ConnectionOrigin, SEATS, type Seat } from '../../shared-engine/index.ts';
import type { CameOver, SeatHolder } from '../room/command.ts';
import type { Room } from '../room/room.ts';
import { type HeldSeat, heldAt, holderAt, type RoomState, seatOf } from '../room/state.ts';

export interface SeatConnection extends CameOver {
  readonly holder: SeatHolder;
  known: boolean;
  /** The round whose choices the page at its other end analyzes itself; null for none. */
  analyzes: number | null;
}

export class SeatConnections {
  readonly #room: Pick<Room, 'state' | 'submit'>;
  readonly #node: string;
  readonly #open = new Set<SeatConnection>();
  #count = 0;

  constructor(room: Pick<Room, 'state' | 'submit'>, node: string) {
    this.#room = room;
    this.#node = node;
  }

  open(holder: SeatHolder, from: ConnectionOrigin | null): SeatConnection {
    const name = `${this.#node}.${++this.#count}`;
    const connection: SeatConnection = { holder, name, from, known: false, analyzes: null };
    this.#open.add(connection);
    return connection;
  }

  /** A connection of which the room cannot be told just now is told of at the next presence check. */
  async announce({ holder, name, from }: SeatConnection): Promise<void> {
    const node = this.#node;
    await this.#room.submit({ kind: 'connect', holder, node, connection: name, ...(from && { from }) });
  }

  /** The connection is over; where it was replaced, the room knows already. */
  close(connection: SeatConnection): void {
    if (!this.#open.delete(connection)) return;
    const seat = seatOf(this.#room.state, connection.holder);
    if (seat !== null) void this.#tellClosed(seat, connection.name);
  }

  /** Another connection has taken the place of this one. */
  forget(connection: SeatConnection): void {
    this.#open.delete(connection);
  }

  /** To be called after every change of the room. */
  changed(): void {
    for (const connection of this.#open) {
      const presence = this.#holderOf(connection)?.presence;
      if (presence?.kind === 'connected' && presence.connection === connection.name) connection.known = true;
    }
  }

  /** Whether an open page of this person analyzes the choices of the seat in this round itself. */
  analyzesItself({ since }: SeatHolder, round: number): boolean {
    return [...this.#open].some(({ holder, analyzes }) => holder.since === since && analyzes === round);
  }

  /** Whether whoever opened this connection still has the seat. */
  isHeld(connection: SeatConnection): boolean {
    return this.#holderOf(connection) !== null;
  }

  isReplaced(connection: SeatConnection): boolean {
    const presence = this.#holderOf(connection)?.presence;
    return connection.known && presence?.kind === 'connected' && presence.connection !== connection.name;
  }

  /** Tells the room again what it should know of this server's connections and does not. */
  async reconcile(): Promise<void> {
    const before = this.#room.state;
    for (const connection of [...this.#open]) {
      const held = this.#holderOf(connection);
      if (held && (!connection.known || held.presence.kind === 'disconnected')) {
        await this.announce(connection);
      }
    }
    await this.#closeThose(before, ({ node, connection }) => {
      return node === this.#node && ![...this.#open].some(({ name }) => name === connection);
    });
  }

  /** These servers are gone, and with them the connections they had. */
  async withoutNodes(gone: readonly string[]): Promise<void> {
    await this.#closeThose(this.#room.state, ({ node }) => gone.includes(node));
  }

  async #closeThose(
    state: RoomState,
    isOver: (presence: HeldSeat['presence'] & { kind: 'connected' }) => boolean,
  ): Promise<void> {
    for (const seat of SEATS) {
      const presence = heldAt(state, seat)?.presence;
      if (presence?.kind !== 'connected') continue;
      if (isOver(presence)) await this.#tellClosed(seat, presence.connection);
    }
  }

  async #tellClosed(seat: Seat, connection: string): Promise<void> {
    await this.#room.submit({ kind: 'disconnect', seat, connection }, `disconnect/${connection}`);
  }

  #holderOf({ holder }: SeatConnection): HeldSeat | null {
    return holderAt(this.#room.state, holder);
  }
}
