// What a rack is worth at the close: the door through which the outlook enters the playouts.

export interface Leaf {
  /** Chance in 100 for the rack at `racks[at..at + 36)`, so many seats to the right of the dealer. */
  of(racks: Uint8Array, at: number, place: number): number;
}
