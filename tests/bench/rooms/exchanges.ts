// Drives the exchanges of many rooms: as fast as answers come, or at a pace, with the time each one took.
import type { DrivenSeat, OpenTable, SeatEvents } from './driven-table.ts';

/** From four answers to the fourth private result, room by room. */
export class Exchanges {
  /** Milliseconds of every exchange since the last `clear`. */
  readonly times: number[] = [];
  readonly #rooms: RoomOfFour[] = [];

  async add(url: string, open: OpenTable): Promise<void> {
    const room = new RoomOfFour((ms) => this.times.push(ms));
    await room.open(url, open);
    this.#rooms.push(room);
  }

  /** Every room answers again as soon as all four are asked, until the time is over. */
  async saturated(ms: number): Promise<void> {
    for (const room of this.#rooms) room.start();
    await pause(ms);
    for (const room of this.#rooms) room.stop();
  }

  /** Each room exchanges once every `every` milliseconds, the rooms evenly spread over it. */
  async paced(every: number, ms: number): Promise<void> {
    const began = performance.now();
    const slot = every / this.#rooms.length;
    for (let turn = 0; turn * slot < ms; turn++) {
      const at = began + turn * slot;
      if (at > performance.now()) await pause(at - performance.now());
      this.#rooms[turn % this.#rooms.length]!.once(at);
    }
    await pause(every);
  }

  /** Every room makes one exchange; it has begun when this returns. */
  once(): void {
    for (const room of this.#rooms) room.once(performance.now());
  }

  /** Resolves with the number of exchanges that were begun and did not end within `timeoutMs` milliseconds. */
  async settled(timeoutMs: number): Promise<number> {
    const open = () => this.#rooms.filter(({ isOpen }) => isOpen).length;
    for (const until = performance.now() + timeoutMs; open() > 0 && performance.now() < until; )
      await pause(20);
    return open();
  }

  /** Resolves when every room is asked: its first deal is on the table. */
  async asked(): Promise<void> {
    while (this.#rooms.some(({ isAsked }) => !isAsked)) await pause(20);
  }

  clear(): void {
    this.times.length = 0;
  }
}

class RoomOfFour {
  readonly #done: (ms: number) => void;
  #seats: readonly DrivenSeat[] = [];
  #asked = 0;
  #told = 0;
  #began = 0;
  /** When the next exchange was to begin; null when none is waited for. */
  #wanted: number | null = null;
  #goesOn = false;
  #open = false;

  constructor(done: (ms: number) => void) {
    this.#done = done;
  }

  /** Whether answers were given whose results have not all come. */
  get isOpen(): boolean {
    return this.#open;
  }

  get isAsked(): boolean {
    return this.#asked === 4;
  }

  async open(url: string, open: OpenTable): Promise<void> {
    const events: SeatEvents = {
      told: (counts) => counts && this.#hear(),
      asked: () => {
        this.#asked++;
        this.#next();
      },
    };
    this.#seats = await open(url, [events, events, events, events]);
    this.#next();
  }

  start(): void {
    this.#goesOn = true;
    this.#next();
  }

  stop(): void {
    this.#goesOn = false;
  }

  /** One exchange, timed from when it was due: a room that is late is charged for it. */
  once(due: number): void {
    this.#wanted ??= due;
    this.#next();
  }

  #next(): void {
    if (this.#asked < 4 || this.#seats.length < 4 || !(this.#goesOn || this.#wanted !== null)) return;
    this.#asked = 0;
    this.#told = 0;
    this.#began = this.#wanted ?? performance.now();
    this.#wanted = null;
    this.#open = true;
    for (const seat of this.#seats) seat.answer();
  }

  #hear(): void {
    if (++this.#told < 4) return;
    this.#open = false;
    this.#done(performance.now() - this.#began);
  }
}

function pause(ms: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, ms));
}
