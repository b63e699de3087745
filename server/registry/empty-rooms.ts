// How many rooms with nobody at them one address has opened: it may fill the server's memory with its guests alone.
import type { ActiveRoom } from './active-room.ts';

export class EmptyRooms {
  readonly #max: number;
  /** Those in memory that were opened here, by the address that they were opened from. */
  readonly #opened = new Map<string, Set<ActiveRoom>>();
  readonly #address = new Map<ActiveRoom, string>();

  /** `max` for each address; 0 for no limit. */
  constructor(max: number) {
    this.#max = max;
  }

  hasTooMany(address: string): boolean {
    const opened = this.#opened.get(address);
    if (this.#max === 0 || opened === undefined || opened.size < this.#max) return false;
    let empty = 0;
    for (const { broadcaster } of opened) if (broadcaster.listeners === 0) empty++;
    return empty >= this.#max;
  }

  add(address: string, room: ActiveRoom): void {
    const opened = this.#opened.get(address) ?? new Set();
    this.#opened.set(address, opened.add(room));
    this.#address.set(room, address);
  }

  /** The room has left the memory. */
  delete(room: ActiveRoom): void {
    const address = this.#address.get(room);
    if (address === undefined) return;
    this.#address.delete(room);
    const opened = this.#opened.get(address);
    opened?.delete(room);
    if (opened?.size === 0) this.#opened.delete(address);
  }
}
