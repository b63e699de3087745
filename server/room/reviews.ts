// The private reviews of a room's last round: made after the close, kept until the next deal, told to their owner.
import { type Review, SEATS, seatView } from '../../shared-engine/index.ts';
import { errorFacts, type Log } from '../log.ts';
import type { PlayingCard, Reviewer } from '../ports.ts';
import type { Owner } from './command.ts';
import type { Room } from './room.ts';
import { type Play, personAt, type RoomState, wasDealt } from './state.ts';
import type { Table, Waiting } from './table.ts';

interface Kept {
  readonly owner: Owner;
  readonly review: Review;
}

export class Reviews {
  readonly #room: Room;
  readonly #table: Table;
  readonly #card: PlayingCard;
  readonly #reviewer: Reviewer;
  readonly #log: Log;
  /** The round whose reviews are made or being made. */
  #round = 0;
  #kept: readonly Kept[] = [];

  constructor(room: Room, table: Table, card: PlayingCard, reviewer: Reviewer, log: Log) {
    this.#room = room;
    this.#table = table;
    this.#card = card;
    this.#reviewer = reviewer;
    this.#log = log;
    room.onChange((state) => this.#follow(state));
    this.#follow(room.state);
  }

  /** What waits for the person who took this seat, and for nobody else. */
  readonly waiting: Waiting = (owner) => {
    const kept = this.#kept.find((k) => k.owner.seat === owner.seat && k.owner.since === owner.since);
    return kept ? { round: this.#round, review: kept.review } : null;
  };

  #follow({ play }: RoomState): void {
    if (play === null || play.number === this.#round) return;
    this.#kept = [];
    if (play.round.phase !== 'closed') return;
    this.#round = play.number;
    void this.#make(play);
  }

  async #make(play: Play): Promise<void> {
    const made: Kept[] = [];
    for (const owner of ownersOf(this.#room.state)) {
      try {
        const { record } = seatView(play.round, owner.seat);
        made.push({ owner, review: await this.#reviewer.review(record, this.#card) });
      } catch (error) {
        this.#log.error({ seat: owner.seat, ...errorFacts(error) }, 'a review failed');
      }
    }
    if (this.#round !== play.number || this.#room.state.play?.number !== play.number) return;
    this.#kept = made;
    // All at once: when a review arrives tells nobody how much there was to say to whom.
    for (const { owner, review } of made) {
      if (personAt(this.#room.state, owner.seat, owner.since)) {
        this.#table.tellOwner(owner, { kind: 'review', round: play.number, review });
      }
    }
  }
}

/** The people who were dealt the round and still sit there. */
function ownersOf(state: RoomState): Owner[] {
  return SEATS.flatMap((seat) => {
    const chair = state.chairs[seat];
    return chair.kind === 'person' && wasDealt(state, chair) ? [{ seat, since: chair.since }] : [];
  });
}
