// The order of waiting work: by priority, and within a priority one piece for each room or class in turn.

/**
 * What one person waits for comes first, then tables in play, then rounds that are closed; for idle hours is what nobody
 * has asked for yet, and spare what the page of the seat does itself.
 */
export const PRIORITIES = ['interactive', 'live', 'background', 'idle', 'spare'] as const;
export type Priority = (typeof PRIORITIES)[number];

/** Whether somebody here waits for work of this priority: other work counts in no size and no age of the queue. */
export function isWaitedFor(priority: Priority): boolean {
  return priority !== 'idle' && priority !== 'spare';
}

export interface QueueItem {
  readonly priority: Priority;
  /** Names the room or class that asks: none of them waits behind all the work of another. */
  readonly fairnessKey: string;
  /** Work with the same key goes to the worker that did the last of it, if it can; null for none. */
  readonly affinityKey: string | null;
}

/** Bounded: what is pushed when it is full stays outside, and spare work as soon as it would be full with all of that. */
export class WorkQueue<T extends QueueItem> {
  readonly #maxSize: number;
  /** For each priority the waiting items of each fairness key; the key whose turn it is stands first. */
  readonly #waiting: Readonly<Record<Priority, Map<string, T[]>>> = {
    interactive: new Map(),
    live: new Map(),
    background: new Map(),
    idle: new Map(),
    spare: new Map(),
  };
  #size = 0;
  #spare = 0;

  constructor(maxSize: number) {
    this.#maxSize = maxSize;
  }

  /** Of work that somebody waits for. */
  get size(): number {
    return this.#size;
  }

  get isEmpty(): boolean {
    return this.#size === 0 && this.#waiting.idle.size === 0 && this.#spare === 0;
  }

  get isFull(): boolean {
    return this.#size >= this.#maxSize;
  }

  /** All that waits, in no order. */
  get items(): readonly T[] {
    return PRIORITIES.flatMap((priority) => [...this.#waiting[priority].values()].flat());
  }

  /** False where the queue is full. */
  push(item: T): boolean {
    if (this.isFull || (item.priority === 'spare' && this.#size + this.#spare >= this.#maxSize)) return false;
    this.#listOf(item).push(item);
    this.#count(item, 1);
    return true;
  }

  /** Puts an item that was taken before all others of its key, however full the queue is. */
  putBack(item: T): void {
    this.#listOf(item).unshift(item);
    this.#count(item, 1);
  }

  /**
   * Takes the next item out: the oldest of the fairness key whose turn it is, or the oldest of that key that
   * `isWarm` says is cheaper here.
   */
  take(isWarm: (affinityKey: string) => boolean): T | null {
    for (const priority of PRIORITIES) {
      const byKey = this.#waiting[priority];
      const [turn] = byKey;
      if (turn === undefined) continue;
      const [key, list] = turn;
      const warm = list.findIndex(({ affinityKey }) => affinityKey !== null && isWarm(affinityKey));
      const [item] = list.splice(Math.max(0, warm), 1);
      byKey.delete(key);
      if (list.length > 0) byKey.set(key, list);
      this.#count(item!, -1);
      return item!;
    }
    return null;
  }

  /** Whether the item waited here. Call it before the item's priority changes. */
  delete(item: T): boolean {
    const byKey = this.#waiting[item.priority];
    const list = byKey.get(item.fairnessKey) ?? [];
    const place = list.indexOf(item);
    if (place === -1) return false;
    list.splice(place, 1);
    if (list.length === 0) byKey.delete(item.fairnessKey);
    this.#count(item, -1);
    return true;
  }

  /** Empties the queue. */
  clear(): readonly T[] {
    const { items } = this;
    for (const priority of PRIORITIES) this.#waiting[priority].clear();
    this.#size = 0;
    this.#spare = 0;
    return items;
  }

  #count({ priority }: T, change: 1 | -1): void {
    if (isWaitedFor(priority)) this.#size += change;
    if (priority === 'spare') this.#spare += change;
  }

  #listOf({ priority, fairnessKey }: T): T[] {
    const byKey = this.#waiting[priority];
    const list = byKey.get(fairnessKey) ?? [];
    byKey.set(fairnessKey, list);
    return list;
  }
}
