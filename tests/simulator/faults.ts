// Which faults happen in a simulated evening and when, drawn from a seed.
import type { Random } from '../../shared-engine/rules/deal/random.ts';

export const FAULT_KINDS = [
  'connection cut',
  'silent connection',
  'reload',
  'kill',
  'freeze',
  'disk unavailable',
  'disk full',
  'disk answers lost',
  'disk slow',
  'wake-ups lost',
  'frames twice',
  'slow network',
] as const;

export interface Fault {
  readonly kind: (typeof FAULT_KINDS)[number];
  /** When it begins, in milliseconds from the start. */
  readonly after: number;
  /** How long it lasts, in milliseconds. */
  readonly ms: number;
  /** The server it happens to, for faults of one server. */
  readonly server: 0 | 1;
}

const LONGEST_MS: Readonly<Record<Fault['kind'], number>> = {
  'connection cut': 1,
  'silent connection': 50_000,
  reload: 1,
  kill: 6000,
  freeze: 12_000,
  'disk unavailable': 5000,
  'disk full': 5000,
  'disk answers lost': 8000,
  'disk slow': 5000,
  'wake-ups lost': 10_000,
  'frames twice': 10_000,
  'slow network': 8000,
};

/** Draws the faults: never two of one kind at the same time, and one server always runs. */
export function planFaults(random: Random): Fault[] {
  const faults: Fault[] = [];
  const free = new Map<string, number>();
  for (let count = 4 + random.below(10); count > 0; count--) {
    const kind = FAULT_KINDS[random.below(FAULT_KINDS.length)]!;
    const after = random.below(20_000);
    const ms = 1 + random.below(LONGEST_MS[kind]);
    const place = kind === 'kill' || kind === 'freeze' ? 'a server' : kind;
    const instant = LONGEST_MS[kind] === 1 || kind === 'silent connection';
    if (!instant && after < (free.get(place) ?? 0)) continue;
    free.set(place, Math.max(free.get(place) ?? 0, after + ms + 500));
    faults.push({ kind, after, ms, server: random.below(2) === 0 ? 0 : 1 });
  }
  return faults;
}
