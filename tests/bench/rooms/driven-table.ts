// What the driver plays: four seats of one room, whatever server stands behind them.

/** What a seat hears. */
export interface SeatEvents {
  /** This seat's private result of a step has come; `counts` is false for what came before the first answer. */
  told(counts: boolean): void;
  /** The seat is asked, or asked again. */
  asked(): void;
}

export interface SeatLine {
  /** Answers what the seat was asked last. */
  answer(): void;
  close(): void;
}

/** Opens a room and sits down on its four seats; resolves when all four can be asked. */
export type OpenTable = (url: string, seats: readonly SeatEvents[]) => Promise<readonly SeatLine[]>;
