// The exports of the module; addresses are bytes in its memory, racks are 36 counts of a byte each.
import { beginDeal, playAction, setSetting } from './exchange';
import { clearWeights } from './win-probability';

export { setCard } from './card';
export { scheduleBytes, setSchedule } from './exchange';
export { reach, setFeatures, setReach, setScale } from './features';
export { setHandWeights, setWeightSteps } from './hand-weights';
export { reserve } from './memory';
export { setNearHands, setWeight } from './near-hands';
export { setQuantiles } from './noise';
export { selectPasses, setPassSelection } from './pass-selection';
export { tileValues } from './tile-value';
export { histogram, setPatterns, toGo, toGoByPattern, toGoMany } from './tiles-to-go';
export { setWinModel, weightOfRack } from './win-probability';

let count: u32 = 0;
let alternatives: u32 = 0;

/**
 * Reads what all rollouts of a batch share: nine words of 32 bits, which are the seed, the chooser's seat, the
 * dealer, the step, the number of deals, the actions tried in each, the terms as bits, where rollouts end (0 at the close,
 * 1 right after the step, 2 after the next pass), and the courtesy numbers agreed on, a byte a seat.
 */
export function setBatch(header: usize): void {
  count = load<u32>(header, 16);
  alternatives = load<u32>(header, 20);
  setSetting(header, header + 32);
}

/**
 * Plays the actions of the batch out, four bytes each, in each of its deals of 144 bytes with a noise key of 32 bits:
 * four f64 an action to `out`.
 */
export function rollOut(keys: usize, deals: usize, actions: usize, out: usize): void {
  let nth: u32 = 0;
  for (let deal: u32 = 0; deal < count; deal++) {
    beginDeal(load<u32>(keys + deal * 4));
    clearWeights();
    for (let a: u32 = 0; a < alternatives; a++, nth++) {
      playAction(deals + deal * 144, actions + nth * 4, out + nth * 32);
    }
  }
}
