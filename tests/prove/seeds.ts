// The seeds of full runs, chosen and committed before the run: one that was looked at is retired when code changes.

import { stream } from '../../shared-engine/rules/deal/random.ts';

interface ChosenSeed {
  readonly seed: string;
  /** The day on which it was committed. */
  readonly chosen: string;
}

/** The last of each is the one that the next full run uses; `RESULTS.md` says what became of the others. */
export const SEEDS: Readonly<Record<string, readonly ChosenSeed[]>> = {
  advice: [
    { seed: 'tamarack', chosen: '2026-11-26' },
    { seed: 'catalpa', chosen: '2026-11-26' },
  ],
  anonymity: [
    { seed: 'rowan', chosen: '2026-11-26' },
    { seed: 'spruce', chosen: '2026-11-26' },
    { seed: 'willow', chosen: '2026-11-26' },
    { seed: 'katsura', chosen: '2026-11-27' },
  ],
  belief: [
    { seed: 'elder', chosen: '2026-11-26' },
    { seed: 'blackthorn', chosen: '2026-11-26' },
  ],
  blame: [{ seed: 'fir', chosen: '2026-11-26' }],
  calibration: [
    { seed: 'alder', chosen: '2026-11-26' },
    { seed: 'cedar', chosen: '2026-11-26' },
    { seed: 'rowan', chosen: '2026-11-26' },
    { seed: 'poplar', chosen: '2026-11-26' },
    { seed: 'sycamore', chosen: '2026-11-26' },
  ],
  coverage: [{ seed: 'hazel', chosen: '2026-11-26' }],
  exact: [
    { seed: 'juniper', chosen: '2026-11-26' },
    { seed: 'cypress', chosen: '2026-11-26' },
  ],
  front: [
    { seed: 'larch', chosen: '2026-11-26' },
    { seed: 'mulberry', chosen: '2026-11-26' },
  ],
  habits: [
    { seed: 'linden', chosen: '2026-11-26' },
    { seed: 'rosewood', chosen: '2026-11-26' },
    { seed: 'hackberry', chosen: '2026-11-26' },
  ],
  judged: [
    { seed: 'whitebeam', chosen: '2026-11-26' },
    { seed: 'buckthorn', chosen: '2026-11-26' },
  ],
  ledger: [
    { seed: 'hornbeam', chosen: '2026-11-26' },
    { seed: 'walnut', chosen: '2026-11-26' },
    { seed: 'chestnut', chosen: '2026-11-26' },
    { seed: 'sweetgum', chosen: '2026-11-27' },
  ],
  local: [
    { seed: 'birch', chosen: '2026-11-26' },
    { seed: 'dogwood', chosen: '2026-11-26' },
    { seed: 'sorrel', chosen: '2026-11-26' },
    { seed: 'aspen', chosen: '2026-11-26' },
    { seed: 'medlar', chosen: '2026-11-26' },
  ],
  neighbors: [
    { seed: 'linden', chosen: '2026-11-26' },
    { seed: 'viburnum', chosen: '2026-11-27' },
  ],
  power: [{ seed: 'maple', chosen: '2026-11-26' }],
  repeat: [
    { seed: 'oak', chosen: '2026-11-26' },
    { seed: 'redbud', chosen: '2026-11-26' },
  ],
  robustness: [
    { seed: 'linden', chosen: '2026-11-26' },
    { seed: 'hawthorn', chosen: '2026-11-26' },
  ],
  story: [
    { seed: 'quince', chosen: '2026-11-26' },
    { seed: 'sassafras', chosen: '2026-11-27' },
    { seed: 'dogberry', chosen: '2026-11-27' },
    { seed: 'pawpaw', chosen: '2026-11-27' },
    { seed: 'bayberry', chosen: '2026-11-27' },
    { seed: 'sourwood', chosen: '2026-11-27' },
  ],
  strength: [
    { seed: 'pine', chosen: '2026-11-26' },
    { seed: 'holly', chosen: '2026-11-26' },
  ],
  theme: [
    { seed: 'acacia', chosen: '2026-11-26' },
    { seed: 'tamarind', chosen: '2026-11-26' },
    { seed: 'kousa', chosen: '2026-11-27' },
    { seed: 'tupelo', chosen: '2026-11-27' },
  ],
  words: [
    { seed: 'yew', chosen: '2026-11-26' },
    { seed: 'persimmon', chosen: '2026-11-27' },
    { seed: 'magnolia', chosen: '2026-11-27' },
    { seed: 'serviceberry', chosen: '2026-11-27' },
    { seed: 'chinquapin', chosen: '2026-11-27' },
    { seed: 'spicebush', chosen: '2026-11-27' },
    { seed: 'fringetree', chosen: '2026-11-27' },
  ],
};

/** Of small sizes, and of proofs without a list. */
const ALWAYS = 'quadrille';

export function seedOf(name: string, size: string): string {
  return (size === 'full' ? SEEDS[name]?.at(-1)?.seed : undefined) ?? ALWAYS;
}

/** The number that stands for a seed where random numbers are counted from a key. */
export function keyOf(seed: string): number {
  return stream(seed, 'key').below(1_000_000);
}
