// What the report knows of each pupil's play of one deal, from the tables as they are now.
import {
  type ClassEntry,
  type Review,
  type Round,
  type SeatRecord,
  seatView,
} from '../../shared-engine/index.ts';
import type { Reviewer } from '../ports.ts';
import { type Deeper, deepened } from './deeper.ts';
import type { LiveClass } from './live-class.ts';
import type { Pupil } from './state.ts';

export interface PupilEntry {
  readonly pupil: Pupil;
  readonly entry: ClassEntry;
}

/** The round in which this pupil played this deal, as far as it has come; null where there was none. */
export function roundOf({ tables }: LiveClass, pupil: Pupil, deal: number): Round | null {
  const table = tables.at(pupil.room);
  const number = deal - pupil.first + 1;
  const play = table?.live.room.state.play;
  if (play?.number === number) return play.round;
  return table?.closed.get(number) ?? null;
}

/** Place in the drill of the deal on this pupil's table; below the first before it is dealt. */
export function dealOf({ tables }: LiveClass, { room, first }: Pupil): number {
  return first + (tables.at(room)?.live.room.state.play?.number ?? 0) - 1;
}

export interface Judging {
  readonly reviewer: Reviewer;
  /** First answers alone where it is missing. */
  readonly deeper?: Deeper | undefined;
}

/** `judging` null for the choices alone. */
export async function entriesOf(
  live: LiveClass,
  deal: number,
  judging: Judging | null,
): Promise<PupilEntry[]> {
  const { pupils, aims } = live.state;
  const entries = pupils.map(async (pupil): Promise<PupilEntry[]> => {
    const round = roundOf(live, pupil, deal);
    if (round === null) return [];
    const { record } = seatView(round, pupil.seat);
    const review = judging && (await reviewOf(record, live, judging));
    const named = aims.filter((aim) => aim.pupil === pupil.id && aim.deal === deal);
    return [{ pupil, entry: { record, review, aims: named } }];
  });
  return (await Promise.all(entries)).flat();
}

/** Null where none can be made: the spread of the choices does not wait for it. */
async function reviewOf(
  record: SeatRecord,
  { card }: LiveClass,
  { reviewer, deeper }: Judging,
): Promise<Review | null> {
  const first = await reviewer.review(record, card).catch(() => null);
  return first && deeper ? deepened(first, record, card, deeper) : first;
}
