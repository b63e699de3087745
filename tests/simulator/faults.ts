// What may go wrong in a simulated evening, drawn from a seed.
import type { Random } from '../../shared-engine/index.ts';

export const TROUBLES = [
  'cut',
  'silence',
  'reload',
  'kill',
  'freeze',
  'disk away',
  'disk full',
  'disk mute',
  'disk slow',
  'deaf',
  'twice',
  'slow net',
] as const;

export interface Trouble {
  readonly kind: (typeof TROUBLES)[number];
  /** When it begins, in milliseconds from the start. */
  readonly after: number;
  /** How long it lasts, in milliseconds. */
  readonly ms: number;
  /** The server it befalls, where it befalls one. */
  readonly at: 0 | 1;
}

const LONGEST: Readonly<Record<Trouble['kind'], number>> = {
  cut: 1,
  silence: 50_000,
  reload: 1,
  kill: 6000,
  freeze: 12_000,
  'disk away': 5000,
  'disk full': 5000,
  'disk mute': 8000,
  'disk slow': 5000,
  deaf: 10_000,
  twice: 10_000,
  'slow net': 8000,
};

/** Of one kind never two at the same time, and one server always stands. */
export function planTroubles(random: Random): Trouble[] {
  const troubles: Trouble[] = [];
  const free = new Map<string, number>();
  for (let count = 4 + random.below(10); count > 0; count--) {
    const kind = TROUBLES[random.below(TROUBLES.length)]!;
    const after = random.below(20_000);
    const ms = 1 + random.below(LONGEST[kind]);
    const place = kind === 'kill' || kind === 'freeze' ? 'a server' : kind;
    const instant = LONGEST[kind] === 1 || kind === 'silence';
    if (!instant && after < (free.get(place) ?? 0)) continue;
    free.set(place, Math.max(free.get(place) ?? 0, after + ms + 500));
    troubles.push({ kind, after, ms, at: random.below(2) === 0 ? 0 : 1 });
  }
  return troubles;
}
