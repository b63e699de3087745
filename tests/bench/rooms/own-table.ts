// Four seats of a room of our own server: opened over HTTP as a page does, then at their sockets.
import { openRoom, takeSeat, ticketFor } from '../../kit/http-client.ts';
import type { DrivenSeat, SeatEvents } from './driven-table.ts';
import { type Losses, OwnSeat } from './own-seat.ts';

export interface OwnTable {
  /** What the driver answers with. */
  readonly driven: readonly DrivenSeat[];
  readonly seats: readonly OwnSeat[];
  /** The first deal. */
  begin(): void;
  /** Cuts the connection of every seat. */
  drop(): Promise<void>;
  /** Opens new ones with new tickets; resolves when every seat has its table again. */
  comeBack(): Promise<void>;
  /** Nobody is ready for another deal after this round. */
  endAfter(round: number): void;
  /** Whether every seat has read the review of this round. */
  isReviewed(round: number): boolean;
}

export async function openOwnTable(
  urls: readonly string[],
  events: readonly SeatEvents[],
  losses: Losses,
): Promise<OwnTable> {
  const url = urls[0]!;
  const host = await openRoom({ url });
  const guests = [host];
  for (const name of ['Tomas', 'Wilma', 'Odo']) {
    guests.push(await takeSeat({ url }, host.code, { name, seat: null }));
  }
  const seats = events.map((heard, seat) => new OwnSeat(urls[seat % urls.length]!, heard, losses));
  const enter = (seat: OwnSeat, at: number) =>
    ticketFor({ url }, guests[at]!).then(({ ticket }) => seat.enter(ticket));
  await Promise.all(seats.map(enter));
  return {
    seats,
    driven: seats.map((seat) => ({ answer: () => seat.answer(), close: () => void seat.cut() })),
    begin() {
      for (const seat of seats) seat.ready();
    },
    async drop() {
      await Promise.all(seats.map((seat) => seat.cut()));
    },
    async comeBack() {
      await Promise.all(seats.map(enter));
    },
    endAfter(round) {
      for (const seat of seats) seat.endAfter(round);
    },
    isReviewed: (round) => seats.every((seat) => seat.reviewed >= round),
  };
}
