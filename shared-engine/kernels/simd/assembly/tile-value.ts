// What the near hands weigh without one tile of a face, and without two.
import { dropOf, held, readNearHands, restore, save, take, totalWeight } from './near-hands';

const JOKER: usize = 35;

/**
 * The weight of the near hands of a rack as f64 to `out`, then for each face the weight without one and without
 * two of its tiles; where none is held, nothing is written.
 */
export function tileValues(rack: usize, out: usize): void {
  readNearHands(rack);
  const total = totalWeight();
  store<f64>(out, total);
  for (let face: usize = 0; face < JOKER; face++) {
    const copies = load<u8>(held + face);
    if (copies === 0) continue;
    const at = out + 8 + (face << 4);
    const without = total - dropOf(face);
    store<f64>(at, without);
    if (copies === 1) continue;
    save();
    take(face);
    store<f64>(at, without - dropOf(face), 8);
    restore();
  }
}
