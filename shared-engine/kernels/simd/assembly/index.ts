// What the module offers to its host; addresses are bytes in its memory, racks are 36 counts of a byte each.
import { beginWorld, playOut, setSetting } from './exchange';
import { beginLooks } from './outlook';

export { setCard } from './card';
export { roomForPlaces, setSchedule } from './exchange';
export { histogram, setLines, toGo, toGoByLine, toGoMany } from './kernel';
export { letGoMany, setCare } from './letting-go';
export { reserve } from './memory';
export { setNear, setWeight } from './near';
export { setQuantiles } from './noise';
export { outlookOf, reachOf, setOutlook, setReach } from './outlook';
export { usesOf } from './uses';

/**
 * Plays `alternatives` acts of four bytes out in each of `count` worlds of 144 bytes, with a noise key of 32 bits
 * each: eight f64 an act to `out`.
 */
export function playMany(
  seed: u32,
  seat: u32,
  dealer: u32,
  step: u32,
  agreed: usize,
  count: u32,
  alternatives: u32,
  keys: usize,
  worlds: usize,
  acts: usize,
  out: usize,
): void {
  setSetting(seed, seat, dealer, step, agreed);
  let nth: u32 = 0;
  for (let world: u32 = 0; world < count; world++) {
    beginWorld(load<u32>(keys + world * 4));
    beginLooks();
    for (let a: u32 = 0; a < alternatives; a++, nth++) {
      playOut(worlds + world * 144, acts + nth * 4, out + nth * 64);
    }
  }
}
