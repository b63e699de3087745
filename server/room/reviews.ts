// The private reviews of a room's last round: first answers at the close, deeper ones as they come, each to its owner.
import { type Review, SEATS, type SeatRecord, seatView } from '../../shared-engine/index.ts';
import { errorFacts, type Log } from '../log.ts';
import type { Clock, Judges, PlayingCard, Reviewer, Undo } from '../ports.ts';
import type { Owner } from './command.ts';
import { Deepening } from './deepening.ts';
import type { Logged } from './event.ts';
import type { Room } from './room.ts';
import { type Play, personAt, type RoomState, wasDealt } from './state.ts';
import type { Table, Waiting } from './table.ts';

/** Pause between two tellings of deeper answers, in milliseconds: a review is too large to be sent at every one. */
export const PROGRESS_MS = 2000;

export interface ReviewPorts {
  readonly clock: Clock;
  readonly reviewer: Reviewer;
  /** First answers alone where it is missing. */
  readonly judges?: Judges;
}

/** What is made for one person who was dealt the round. */
interface Seated {
  readonly owner: Owner;
  readonly deepening: Deepening | null;
  /** The review of the steps that are over, made while people think; null where that cannot be had. */
  soFar: Promise<Review | null>;
  first: Review | null;
}

export class Reviews {
  readonly #room: Room;
  readonly #table: Table;
  readonly #card: PlayingCard;
  readonly #ports: ReviewPorts;
  readonly #log: Log;
  /** The round that is followed. */
  #round = 0;
  #seated: Seated[] = [];
  /** Whether first answers are made or being made. */
  #begun = false;
  #callOff: Undo | null = null;
  /** Persons who have listened at this server; another server makes the deeper answers of the others. */
  readonly #here = new Set<string>();

  constructor(room: Room, table: Table, card: PlayingCard, ports: ReviewPorts, log: Log) {
    this.#room = room;
    this.#table = table;
    this.#card = card;
    this.#ports = ports;
    this.#log = log;
    room.onChange((state, happened) => this.#follow(state, happened));
    this.#follow(room.state, []);
  }

  /** What waits for the person who took this seat, and for nobody else. */
  readonly waiting: Waiting = (owner) => {
    this.#here.add(nameOf(owner));
    const { play } = this.#room.state;
    if (play !== null) this.#deepen(play, owner);
    const seated = this.#seated.find((other) => nameOf(other.owner) === nameOf(owner));
    return seated ? this.#told(seated) : null;
  };

  /** Nobody is told anything any more, and what nobody has taken up yet is called off. */
  stop(): void {
    this.#callOff?.();
    this.#callOff = null;
    for (const { deepening } of this.#seated) deepening?.stop();
    this.#seated = [];
    this.#begun = true;
  }

  #follow(state: RoomState, happened: readonly Logged[]): void {
    const { play } = state;
    if (play === null) return;
    if (play.number !== this.#round) {
      this.stop();
      this.#round = play.number;
      this.#begun = false;
      this.#seated = ownersOf(state).map((owner) => this.#seat(owner));
    }
    for (const { owner } of this.#seated) {
      if (happened.some(({ event }) => isChoiceOf(owner, event))) this.#deepen(play, owner);
    }
    if (happened.some(({ event }) => isSettled(event))) this.#prepare(play);
    if (play.round.phase !== 'closed' || this.#begun) return;
    this.#begun = true;
    for (const { owner } of this.#seated) this.#deepen(play, owner);
    void this.#begin(play);
  }

  #seat(owner: Owner): Seated {
    const { judges } = this.#ports;
    const deepening = judges ? new Deepening(judges, this.#card, () => this.#tellSoon()) : null;
    return { owner, deepening, soFar: Promise.resolve(null), first: null };
  }

  /** For those alone who are there to read it. */
  #deepen(play: Play, owner: Owner): void {
    const seated = this.#seated.find((other) => nameOf(other.owner) === nameOf(owner));
    if (!seated?.deepening || !this.#here.has(nameOf(owner))) return;
    if (personAt(this.#room.state, owner.seat, owner.since)?.presence.kind !== 'here') return;
    seated.deepening.follow(seatView(play.round, owner.seat));
  }

  /** So that little is left to do at the close. A server that gives first answers alone has time for it then. */
  #prepare({ round }: Play): void {
    if (!this.#ports.judges || round.phase === 'closed') return;
    for (const seated of this.#seated) {
      if (!this.#here.has(nameOf(seated.owner))) continue;
      const { record } = seatView(round, seated.owner.seat);
      seated.soFar = this.#review(seated, record);
    }
  }

  /** Null, and a line in the log, where it fails. */
  async #review({ owner, soFar }: Seated, record: SeatRecord): Promise<Review | null> {
    try {
      return await this.#ports.reviewer.review(record, this.#card, await soFar);
    } catch (error) {
      this.#log.error({ seat: owner.seat, ...errorFacts(error) }, 'a review failed');
      return null;
    }
  }

  async #begin({ number, round }: Play): Promise<void> {
    const staying = this.#seated.filter(({ owner: { seat, since } }) =>
      personAt(this.#room.state, seat, since),
    );
    const made = await Promise.all(
      staying.map((seated) => this.#review(seated, seatView(round, seated.owner.seat).record)),
    );
    if (this.#round !== number) return;
    for (const [n, seated] of staying.entries()) seated.first = made[n]!;
    this.#tell();
  }

  #tellSoon(): void {
    if (this.#seated.every(({ first }) => first === null)) return;
    const over = this.#seated.every(({ deepening }) => deepening?.isOver);
    if (over) this.#tell();
    else this.#callOff ??= this.#ports.clock.after(PROGRESS_MS, () => this.#tell());
  }

  /** All at once: when a review arrives tells nobody how much there was to say to whom. */
  #tell(): void {
    this.#callOff?.();
    this.#callOff = null;
    for (const seated of this.#seated) {
      const { owner } = seated;
      const told = this.#told(seated);
      if (told === null || !personAt(this.#room.state, owner.seat, owner.since)) continue;
      this.#table.tellOwner(owner, { kind: 'review', ...told });
    }
  }

  /** Null before the first answer. */
  #told({ first, deepening }: Seated) {
    if (first === null) return null;
    const more = deepening !== null && !deepening.isOver;
    return { round: this.#round, review: deepening?.into(first) ?? first, more };
  }
}

function nameOf({ seat, since }: Owner): string {
  return `${seat}/${since}`;
}

/** A choice made or taken back on this seat, by whomever. */
function isChoiceOf({ seat }: Owner, event: Logged['event']): boolean {
  return event.kind === 'round' && 'seat' in event.event && event.event.seat === seat;
}

function isSettled(event: Logged['event']): boolean {
  return event.kind === 'round' && event.event.kind === 'settled';
}

/** The people who were dealt the round and still sit there. */
function ownersOf(state: RoomState): Owner[] {
  return SEATS.flatMap((seat) => {
    const chair = state.chairs[seat];
    return chair.kind === 'person' && wasDealt(state, chair) ? [{ seat, since: chair.since }] : [];
  });
}
