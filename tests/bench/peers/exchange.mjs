// The exchange that every peer carries: four racks, three tiles each to the right, told to each seat alone.

const FACES = ['bam', 'crak', 'dot'].flatMap((suit) =>
  [1, 2, 3, 4, 5, 6, 7, 8, 9].map((number) => `${suit}-${number}`),
);

/** Thirteen tiles for each of the four seats, the same in every room. */
export function freshRacks() {
  return [0, 1, 2, 3].map((seat) =>
    Array.from({ length: 13 }, (_, n) => FACES[(seat * 13 + n * 7) % FACES.length]),
  );
}

/** The rack without these tiles, or null where it does not hold them. */
export function without(rack, tiles) {
  const left = [...rack];
  for (const tile of tiles) {
    const at = left.indexOf(tile);
    if (at < 0) return null;
    left.splice(at, 1);
  }
  return left;
}

/** The four racks after everybody passed to the right. */
export function passed(racks, passes) {
  return racks.map((rack, seat) => [...without(rack, passes[seat]), ...passes[(seat + 3) % 4]]);
}

/** One room's exchanges, one after the other. */
export class Exchange {
  #racks = freshRacks();
  #passes = [null, null, null, null];
  #step = 0;

  resultFor(seat) {
    return { kind: 'result', step: this.#step, rack: this.#racks[seat] };
  }

  /** True when this was the fourth and the step has been made. */
  seal(seat, tiles) {
    const good = Array.isArray(tiles) && tiles.length === 3 && this.#passes[seat] === null;
    if (!good || without(this.#racks[seat], tiles) === null) return false;
    this.#passes[seat] = tiles;
    if (this.#passes.includes(null)) return false;
    this.#racks = passed(this.#racks, this.#passes);
    this.#passes = [null, null, null, null];
    this.#step++;
    return true;
  }
}
