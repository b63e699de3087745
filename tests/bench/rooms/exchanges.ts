// Drives the exchanges of many rooms: as fast as answers come, or at a pace, with the time each one took.
import type { DrivenSeat, OpenTable, SeatEvents } from './driven-table.ts';

const LATE_MS = 5;

export interface Pace {
  readonly every: number;
  readonly ms: number;
  readonly over: number;
}

/** From four answers to the fourth private result, room by room. */
export class Exchanges {
  /** Milliseconds of every exchange since the last `clear`. */
  readonly times: number[] = [];
  /** How often an answer that was due left more than `LATE_MS` later since the last `clear`. */
  stalls = 0;
  readonly #rooms: RoomOfFour[] = [];

  async add(urls: readonly string[], open: OpenTable): Promise<void> {
    const room = new RoomOfFour((ms) => this.times.push(ms));
    await room.open(urls, open);
    this.#rooms.push(room);
  }

  /** Every room answers again as soon as all four are asked, until the time is over. */
  async saturated(ms: number): Promise<void> {
    const until = performance.now() + ms;
    return this.saturatedUntil(() => performance.now() >= until);
  }

  async saturatedUntil(isOver: () => boolean): Promise<void> {
    for (const room of this.#rooms) room.start();
    while (!isOver()) await pause(10);
    for (const room of this.#rooms) room.stop();
  }

  /**
   * Each room exchanges once every `every` milliseconds, the rooms evenly spread over it; the seats of a room answer
   * within `over` milliseconds, evenly too.
   */
  async paced({ every, ms, over }: Pace): Promise<void> {
    const began = performance.now();
    const slot = every / this.#rooms.length;
    for (let turn = 0; turn * slot < ms; turn++) {
      const at = began + turn * slot;
      if (at > performance.now()) await pause(at - performance.now());
      if (performance.now() - at > LATE_MS) this.stalls++;
      this.#rooms[turn % this.#rooms.length]!.once(at, over);
    }
    await pause(every + over);
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
    this.stalls = 0;
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
  /** Milliseconds from the first answer to the last. */
  #over = 0;
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

  async open(urls: readonly string[], open: OpenTable): Promise<void> {
    const events: SeatEvents = {
      told: (counts) => counts && this.#hear(),
      asked: () => {
        this.#asked++;
        this.#next();
      },
    };
    this.#seats = await open(urls, [events, events, events, events]);
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
  once(due: number, over = 0): void {
    this.#wanted ??= due;
    this.#over = over;
    this.#next();
  }

  #next(): void {
    if (this.#asked < 4 || this.#seats.length < 4 || !(this.#goesOn || this.#wanted !== null)) return;
    this.#asked = 0;
    this.#told = 0;
    this.#began = this.#wanted ?? performance.now();
    this.#wanted = null;
    this.#open = true;
    for (const [n, seat] of this.#seats.entries()) {
      if (this.#over === 0) seat.answer();
      else setTimeout(() => seat.answer(), (n * this.#over) / 3);
    }
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
