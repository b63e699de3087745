// The private reviews of a room's last round: first answers at the close, deep analyses as they come, each to its seat.
import {
  type Review,
  SEATS,
  type SeatRecord,
  type ServerMessage,
  seatView,
} from '../../shared-engine/index.ts';
import type { Recorded } from '../aggregate/recorded.ts';
import type { Broadcaster } from '../delivery/broadcaster.ts';
import { errorFacts, type Log } from '../log.ts';
import type { Cancel, Clock, Measurements, PlayingCard } from '../ports.ts';
import type { SeatConnections } from '../presence/seat-connections.ts';
import type { SeatHolder } from '../room/command.ts';
import type { RoomEvent } from '../room/event.ts';
import type { Room } from '../room/room.ts';
import { holderAt, isHeldBy, type Play, type RoomState, wasDealt } from '../room/state.ts';
import type { DeepAnalyzer, Reviewer } from '../work-ports.ts';
import { PackedText } from './packed-text.ts';
import { SeatAnalyses } from './seat-analyses.ts';

/** Pause between two messages with new analyses, in milliseconds: a review is too large to be sent at every one. */
export const PROGRESS_MS = 2000;

export interface ReviewPorts {
  readonly clock: Clock;
  readonly reviewer: Reviewer;
  /** First answers alone where it is null. */
  readonly analyzer: DeepAnalyzer | null;
  readonly metrics: Pick<Measurements, 'reviewed'> | null;
}

export interface ReviewedRoom {
  readonly room: Pick<Room, 'state'>;
  readonly broadcaster: Pick<Broadcaster, 'sendTextTo'>;
  readonly connections: Pick<SeatConnections, 'analyzesItself'>;
  readonly card: PlayingCard;
  readonly log: Log;
  /** The room, or the class it belongs to; see `ports.ts`. */
  readonly fairnessKey: string;
}

/** What is made for one person who was dealt the round. */
interface SeatReview {
  readonly holder: SeatHolder;
  /** Null for first answers alone, and once nothing more is to come. */
  analyses: SeatAnalyses | null;
  /** The review of the steps that are over, made while people think; null where it could not be made. */
  soFar: Promise<Review | null>;
  first: Review | null;
  /** The last message with it, which takes the place of all else: a review is twelve times as large as objects. */
  last: PackedText | null;
}

export class RoomReviews {
  readonly #about: ReviewedRoom;
  readonly #ports: ReviewPorts;
  /** The round that is followed. */
  #round = 0;
  #seats: SeatReview[] = [];
  /** Whether first answers are made or being made. */
  #isBegun = false;
  #isStopped = false;
  #cancelMessage: Cancel | null = null;
  /** People who have connected to this server; another server asks for the analyses of the others. */
  readonly #here = new Set<number>();
  /** Null where it was closed before this server followed it, and when all is measured. */
  #closedAt: number | null = null;
  #isFirstMeasured = false;

  constructor(about: ReviewedRoom, ports: ReviewPorts) {
    this.#about = about;
    this.#ports = ports;
    this.changed(about.room.state, []);
  }

  /** The message that waits for the person who took this seat, and for nobody else. */
  waiting(holder: SeatHolder): string | null {
    this.#here.add(holder.since);
    const seat = this.#seats.find((other) => other.holder.since === holder.since);
    const { play } = this.#about.room.state;
    if (seat && play !== null) this.#analyze(play, seat);
    return seat ? this.#messageFor(seat) : null;
  }

  /** To be called when a page has said who analyzes its seat, and when a connection is over (rule WK9). */
  pagesChanged(): void {
    for (const { analyses, holder } of this.#seats) {
      analyses?.leaveToPage(this.#about.connections.analyzesItself(holder, this.#round));
    }
  }

  /** Nobody is told anything any more, and what was asked for is aborted. */
  stop(): void {
    this.#isStopped = true;
    this.#endRound();
  }

  #endRound(): void {
    this.#cancelMessage?.();
    this.#cancelMessage = null;
    for (const { analyses } of this.#seats) analyses?.stop();
    this.#seats = [];
    this.#isBegun = true;
    this.#closedAt = null;
    this.#isFirstMeasured = false;
  }

  /** To be called after every change of the room. */
  changed(state: RoomState, recorded: readonly Recorded<RoomEvent>[]): void {
    const { play } = state;
    if (play === null || this.#isStopped) return;
    const isDealt = play.number !== this.#round;
    if (isDealt) {
      this.#endRound();
      this.#round = play.number;
      this.#isBegun = false;
      this.#seats = holdersOf(state).map((holder) => this.#seatReview(holder));
    }
    const isOpened = isDealt || recorded.some(({ event }) => isResolved(event));
    for (const seat of this.#seats) {
      if (isOpened || recorded.some(({ event }) => isChoiceOf(seat.holder, event))) this.#analyze(play, seat);
    }
    if (isOpened && !isDealt) this.#reviewSoFar(play);
    if (play.round.phase !== 'closed' || this.#isBegun) return;
    this.#isBegun = true;
    if (recorded.length > 0) this.#closedAt = this.#ports.clock.now();
    for (const seat of this.#seats) this.#analyze(play, seat);
    void this.#reviewAll(play);
  }

  #seatReview(holder: SeatHolder): SeatReview {
    const { analyzer } = this.#ports;
    const { card, fairnessKey } = this.#about;
    const analyses: SeatAnalyses | null = analyzer
      ? new SeatAnalyses({ analyzer, card, fairnessKey, onResult: () => this.#sendSoon(analyses) })
      : null;
    return { holder, analyses, soFar: Promise.resolve(null), first: null, last: null };
  }

  /** For those alone who are there to read it. */
  #analyze(play: Play, { analyses, holder }: SeatReview): void {
    if (!analyses || !this.#here.has(holder.since)) return;
    const person = holderAt(this.#about.room.state, holder);
    if (person?.presence.kind !== 'connected') return;
    analyses.follow(seatView(play.round, holder.seat));
  }

  /** So that little is left to do at the close. A server that gives first answers alone has time for it then. */
  #reviewSoFar({ round }: Play): void {
    if (!this.#ports.analyzer || round.phase === 'closed') return;
    for (const seat of this.#seats) {
      if (!this.#here.has(seat.holder.since)) continue;
      seat.soFar = this.#review(seat, seatView(round, seat.holder.seat).record);
    }
  }

  /** Null, and a line in the log, where it fails. */
  async #review({ holder, soFar }: SeatReview, record: SeatRecord): Promise<Review | null> {
    const { card, fairnessKey, log } = this.#about;
    try {
      return await this.#ports.reviewer.review({ record, card, fairnessKey, earlier: await soFar });
    } catch (error) {
      log.error({ seat: holder.seat, ...errorFacts(error) }, 'a review failed');
      return null;
    }
  }

  async #reviewAll({ number, round }: Play): Promise<void> {
    const seats = this.#seats.filter(({ holder }) => this.#stillSits(holder));
    const made = await Promise.all(
      seats.map((seat) => this.#review(seat, seatView(round, seat.holder.seat).record)),
    );
    if (this.#round !== number) return;
    for (const [n, seat] of seats.entries()) {
      seat.first = made[n]!;
      seat.soFar = Promise.resolve(null);
    }
    this.#send();
  }

  /** What a page analyzes itself goes out with what others wait for, or when there is all of it. */
  #sendSoon(after: SeatAnalyses | null): void {
    if (!this.#isMade) return;
    const isOver = this.#seats.every(({ analyses }) => analyses === null || analyses.isOver);
    if (after?.isSpare && !isOver) return;
    if (isOver || !this.#seats.some(({ analyses }) => isAwaited(analyses))) this.#send();
    else this.#cancelMessage ??= this.#ports.clock.after(PROGRESS_MS, () => this.#send());
  }

  /** To all at once: when a review arrives tells nobody how much there was to say to whom. */
  #send(): void {
    this.#cancelMessage?.();
    this.#cancelMessage = null;
    const messages = this.#seats.map((seat) => this.#messageFor(seat));
    for (const [n, { holder }] of this.#seats.entries()) {
      const message = messages[n]!;
      if (message !== null && this.#stillSits(holder)) this.#about.broadcaster.sendTextTo(holder, message);
    }
    this.#measure();
    for (const [n, seat] of this.#seats.entries()) {
      if (messages[n] && seat.last === null && isFinished(seat)) pack(seat, messages[n]);
    }
  }

  /** Whether there is a first answer. */
  get #isMade(): boolean {
    return this.#seats.some(({ first, last }) => first !== null || last !== null);
  }

  #measure(): void {
    const { metrics, clock } = this.#ports;
    if (this.#closedAt === null || !this.#isMade) return;
    const ms = clock.now() - this.#closedAt;
    if (!this.#isFirstMeasured) metrics?.reviewed('first-review', ms);
    this.#isFirstMeasured = true;
    const asked = this.#seats.flatMap(({ analyses }) =>
      analyses === null || analyses.isEmpty || analyses.isSpare ? [] : [analyses],
    );
    if (asked.length === 0 || asked.some(isAwaited)) return;
    metrics?.reviewed('last-analysis', ms);
    this.#closedAt = null;
  }

  #stillSits(holder: SeatHolder): boolean {
    return isHeldBy(this.#about.room.state, holder);
  }

  /** Null before the first answer. */
  #messageFor({ first, analyses, last }: SeatReview): string | null {
    if (last !== null) return last.text;
    if (first === null) return null;
    const review = analyses?.into(first) ?? first;
    const more = analyses !== null && !analyses.isOver;
    const message: ServerMessage = { kind: 'review', round: this.#round, review, more };
    return JSON.stringify(message);
  }
}

/** Whether nothing more is to come: what is left to a page may be asked for anew, and nothing yet when somebody returns. */
function isFinished({ analyses }: SeatReview): boolean {
  return analyses === null || (analyses.isOver && !analyses.isEmpty && !analyses.isSpare);
}

function pack(seat: SeatReview, message: string): void {
  seat.last = new PackedText(message);
  seat.first = null;
  seat.analyses = null;
}

/** Whether more is to come that somebody waits for here. */
function isAwaited(analyses: SeatAnalyses | null): boolean {
  return analyses !== null && !analyses.isOver && !analyses.isSpare;
}

/** A choice made or withdrawn on this seat, by whomever. */
function isChoiceOf({ seat }: SeatHolder, event: RoomEvent): boolean {
  return event.kind === 'round' && 'seat' in event.event && event.event.seat === seat;
}

function isResolved(event: RoomEvent): boolean {
  return event.kind === 'round' && event.event.kind === 'resolved';
}

/** The people who were dealt the round and still sit there; bots get no review (rule BT4). */
function holdersOf(state: RoomState): SeatHolder[] {
  return SEATS.flatMap((seat) => {
    const at = state.seats[seat];
    return at.kind === 'person' && wasDealt(state, at) ? [{ seat, since: at.since }] : [];
  });
}
