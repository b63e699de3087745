// A page of a class that answers when it has changed: its version is made of what it shows and of nothing else.
import { createHash } from 'node:crypto';
import type { BigScreen, Dashboard, FriendChoices } from '../../shared-engine/index.ts';
import type { Clock } from '../ports.ts';
import type { ActiveClass } from './active-class.ts';

/** How long a request waits for something new, in milliseconds: shorter than what proxies allow. */
const LONG_POLL_MS = 20_000;

type PollablePage = Omit<Dashboard, 'version'> | Omit<BigScreen, 'version'> | Omit<FriendChoices, 'version'>;

interface Asked {
  readonly live: ActiveClass;
  readonly clock: Clock;
  /** The version of the page that the asker has; undefined where there is none. */
  readonly seen: string | undefined;
}

/**
 * Waits while the asker has seen everything, or until it is time to ask again. A change that the page does not show is
 * not told either: a count of changes would say how far somebody has come (rule AN7).
 */
export async function newerPage<Page extends PollablePage>(
  { live, clock, seen }: Asked,
  make: () => Promise<Page>,
): Promise<Page & { readonly version: number }> {
  const until = clock.now() + LONG_POLL_MS;
  for (;;) {
    const { version: before } = live;
    const page = await make();
    const version = versionOf(page, clock.now());
    if (String(version) !== seen || clock.now() >= until) return { version, ...page };
    if (live.version === before) await live.waitForChange(until - clock.now());
    if (live.stopped) return { version, ...page };
  }
}

/** The first 48 bits of a hash. Times are taken as when they began or will end, so that none changes by passing. */
function versionOf(page: PollablePage, now: number): number {
  const text = JSON.stringify(page, (key, value: unknown) => {
    if (typeof value !== 'number') return value;
    if (key === 'since') return value === 0 ? 0 : now - value;
    return key === 'remaining' ? now + value : value;
  });
  return createHash('sha256').update(text).digest().readUIntBE(0, 6);
}
