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
}

export async function openOwnTable(
  url: string,
  events: readonly SeatEvents[],
  losses: Losses,
): Promise<OwnTable> {
  const host = await openRoom({ url });
  const guests = [host];
  for (const name of ['Tomas', 'Wilma', 'Odo']) {
    guests.push(await takeSeat({ url }, host.code, { name, seat: null }));
  }
  const seats = events.map((heard) => new OwnSeat(url, heard, losses));
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
  };
}
