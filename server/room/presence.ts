// Who is connected to a room: one socket a person, and since when the others are gone.
import type { Clock } from '../ports.ts';
import type { PersonChair } from './state.ts';

/** One person's connections; the newest one counts. */
interface Line {
  /** Grows with every connection, so that the late end of an old one does no harm. */
  generation: number;
  goneSince: number | null;
}

export class Presence {
  readonly #clock: Clock;
  readonly #lines = new Map<number, Line>();

  constructor(clock: Clock) {
    this.#clock = clock;
  }

  /** Since when this person is gone, or null while connected; who has never come is gone since sitting down. */
  readonly goneSince = (person: PersonChair): number | null => this.#line(person.since).goneSince;

  /** A new connection of the person who sat down with event `since`; answers its generation. */
  come(since: number): number {
    const line = this.#line(since);
    line.goneSince = null;
    return ++line.generation;
  }

  /** The end of a connection; false when a newer one has taken its place. */
  go(since: number, generation: number): boolean {
    const line = this.#line(since);
    if (line.generation !== generation) return false;
    line.goneSince = this.#clock.now();
    return true;
  }

  /** Knows these from now on, whether connected or not, and forgets everybody else. */
  follow(persons: readonly PersonChair[]): void {
    const seated = new Set(persons.map(({ since }) => since));
    for (const since of this.#lines.keys()) if (!seated.has(since)) this.#lines.delete(since);
    for (const since of seated) this.#line(since);
  }

  #line(since: number): Line {
    const known = this.#lines.get(since);
    if (known) return known;
    const line: Line = { generation: 0, goneSince: this.#clock.now() };
    this.#lines.set(since, line);
    return line;
  }
}
