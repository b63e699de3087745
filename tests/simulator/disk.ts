// The disk that two servers share, with its faults: slow, unavailable, full, or losing the answer to a write that it stored.
import type { Clock, Store } from '../../server/ports.ts';
import type { Random } from '../../shared-engine/rules/deal/random.ts';

export interface DiskFaults {
  /** Every request fails. */
  unavailable: boolean;
  /** Writes fail. */
  full: boolean;
  /** In a hundred writes, how many are stored while the answer is lost. */
  lostAnswersPercent: number;
  /** The longest time a request takes, in milliseconds. */
  maxDelayMs: number;
}

export function healthyDisk(): DiskFaults {
  return { unavailable: false, full: false, lostAnswersPercent: 0, maxDelayMs: 3 };
}

/** The same store as one server sees it, with the faults of the disk. */
export function faultyStore(rooms: Store, faults: DiskFaults, clock: Clock, random: Random): Store {
  function later(): Promise<void> {
    return new Promise((resolve) => clock.after(random.below(faults.maxDelayMs) + 1, resolve));
  }

  async function read<T>(work: () => Promise<T>): Promise<T> {
    await later();
    if (faults.unavailable) throw new Error('the disk is unavailable');
    const found = await work();
    await later();
    return found;
  }

  async function write<T>(work: () => Promise<T>): Promise<T> {
    await later();
    if (faults.unavailable || faults.full) throw new Error('the disk is unavailable or full');
    const outcome = await work();
    await later();
    if (random.below(100) < faults.lostAnswersPercent) throw new Error('the answer was lost');
    return outcome;
  }

  return {
    create: (code, log) => write(() => rooms.create(code, log)),
    commit: (batch) => write(() => rooms.commit(batch)),
    load: (code) => read(() => rooms.load(code)),
    loadAfter: (code, version) => read(() => rooms.loadAfter(code, version)),
    history: (code) => read(() => rooms.history(code)),
    versions: (codes) => read(() => rooms.versions(codes)),
    codes: (after, limit) => read(() => rooms.codes(after, limit)),
    rewrite: (code, rows, snapshot) => write(() => rooms.rewrite(code, rows, snapshot)),
    remove: (code) => write(() => rooms.remove(code)),
    removeOlder: (before) => write(() => rooms.removeOlder(before)),
    removeBeyond: (bytes) => write(() => rooms.removeBeyond(bytes)),
    count: () => read(() => rooms.count()),
    checkWritable: () => write(() => rooms.checkWritable()),
    close: async () => {},
  };
}
