// The disk that two servers share, with its troubles: slow, away, full, or silent about what it has kept.

import type { Clock, Store } from '../../server/ports.ts';
import type { Random } from '../../shared-engine/index.ts';

export interface Trouble {
  /** Every request is refused. */
  away: boolean;
  /** Writes are refused. */
  full: boolean;
  /** In a hundred writes, how many are kept while the answer is lost. */
  mute: number;
  /** The longest time a request takes, in milliseconds. */
  slow: number;
}

export function quietDisk(): Trouble {
  return { away: false, full: false, mute: 0, slow: 3 };
}

/** The same rooms through the eyes of one machine. */
export function diskOf(rooms: Store, trouble: Trouble, clock: Clock, random: Random): Store {
  function later(): Promise<void> {
    return new Promise((resolve) => clock.after(random.below(trouble.slow) + 1, resolve));
  }

  async function read<T>(work: () => Promise<T>): Promise<T> {
    await later();
    if (trouble.away) throw new Error('the disk is away');
    const found = await work();
    await later();
    return found;
  }

  async function write<T>(work: () => Promise<T>): Promise<T> {
    await later();
    if (trouble.away || trouble.full) throw new Error('the disk is away or full');
    const outcome = await work();
    await later();
    if (random.below(100) < trouble.mute) throw new Error('the answer was lost');
    return outcome;
  }

  return {
    create: (code, log) => write(() => rooms.create(code, log)),
    append: (code, after, log) => write(() => rooms.append(code, after, log)),
    load: (code, after) => read(() => rooms.load(code, after)),
    versions: (codes) => read(() => rooms.versions(codes)),
    codes: (behind, most) => read(() => rooms.codes(behind, most)),
    amend: (code, log) => write(() => rooms.amend(code, log)),
    remove: (code) => write(() => rooms.remove(code)),
    removeOlder: (before) => write(() => rooms.removeOlder(before)),
    count: () => read(() => rooms.count()),
    close: async () => {},
  };
}
