// What the driver plays: four seats of one room, on our server or on a peer.

/** What a seat receives. */
export interface SeatEvents {
  /** This seat's private result of a step; `counts` is false for what came before the first answer. */
  told(counts: boolean): void;
  /** The seat is asked, or asked again. */
  asked(): void;
}

export interface DrivenSeat {
  /** Answers what the seat was asked last. */
  answer(): void;
  close(): void;
}

/** Opens a room and sits down on its four seats, spread over these servers; resolves when all four can be asked. */
export type OpenTable = (
  urls: readonly string[],
  seats: readonly SeatEvents[],
) => Promise<readonly DrivenSeat[]>;
