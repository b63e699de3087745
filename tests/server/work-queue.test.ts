// The order in which slow work is taken: by priority, then one piece for each room or class in turn.
import { describe, expect, test } from 'vitest';
import { type Priority, type QueueItem, WorkQueue } from '../../server/workers/work-queue.ts';
import { stream } from '../../shared-engine/rules/deal/random.ts';

interface Item extends QueueItem {
  readonly name: string;
}

function item(
  name: string,
  fairnessKey = 'room',
  priority: Priority = 'live',
  affinityKey: string | null = null,
): Item {
  return { name, fairnessKey, priority, affinityKey };
}

function queueOf(...items: Item[]): WorkQueue<Item> {
  const queue = new WorkQueue<Item>(100);
  for (const one of items) queue.push(one);
  return queue;
}

function drain(queue: WorkQueue<Item>, isWarm: (key: string) => boolean = () => false): string {
  const names: string[] = [];
  for (let next = queue.take(isWarm); next; next = queue.take(isWarm)) names.push(next.name);
  return names.join(' ');
}

describe('work that waits', () => {
  test('is taken in the order of its priorities, and within one in the order it came', () => {
    const queue = queueOf(
      item('closed', 'room', 'background'),
      item('played', 'room', 'live'),
      item('later', 'room', 'live'),
      item('teacher', 'room', 'interactive'),
    );
    expect(drain(queue)).toBe('teacher played later closed');
  });

  test('WK9 that a page does itself is taken last of all, the rooms in turn', () => {
    const queue = queueOf(
      item('a0', 'a', 'spare'),
      item('a1', 'a', 'spare'),
      item('b0', 'b', 'spare'),
      item('prepared', 'c', 'idle'),
      item('closed', 'c', 'background'),
    );
    expect(queue.size).toBe(1);
    expect(drain(queue)).toBe('closed prepared a0 b0 a1');
    expect(queue.isEmpty).toBe(true);
  });

  test('of one room or class never keeps another waiting for more than one piece in turn', () => {
    const class60 = Array.from({ length: 6 }, (_, n) => item(`c${n}`, 'class'));
    const queue = queueOf(...class60, item('a0', 'a'), item('b0', 'b'), item('a1', 'a'));
    expect(drain(queue)).toBe('c0 a0 b0 c1 a1 c2 c3 c4 c5');
  });

  test('is served alike for every room that has some, whatever order it came in', () => {
    const random = stream('fair', 'queue');
    const queue = new WorkQueue<Item>(1000);
    for (let n = 0; n < 400; n++) queue.push(item(String(n), `room ${random.below(5)}`));
    const served = new Map<string, number>();
    for (let n = 0; n < 100; n++) {
      const { fairnessKey } = queue.take(() => false)!;
      served.set(fairnessKey, (served.get(fairnessKey) ?? 0) + 1);
    }
    expect([...served.values()]).toEqual([20, 20, 20, 20, 20]);
  });

  test('prefers, of the room whose turn it is, what is warm at the worker that asks', () => {
    const queue = queueOf(
      item('cold', 'a', 'live', 'k1'),
      item('warm', 'a', 'live', 'k2'),
      item('other', 'b', 'live', 'k2'),
    );
    expect(drain(queue, (key) => key === 'k2')).toBe('warm other cold');
  });

  test('can be taken out, and put back before all others of its room', () => {
    const [first, second, third] = [item('1'), item('2'), item('3')];
    const queue = queueOf(first, second, third);
    expect(queue.delete(second)).toBe(true);
    expect(queue.delete(second)).toBe(false);
    expect(queue.take(() => false)).toBe(first);
    queue.putBack(first);
    expect(queue.size).toBe(2);
    expect(drain(queue)).toBe('1 3');
    expect(queue.size).toBe(0);
  });
});

test('WK9 what a page does itself takes no place from anything, and finds none where it would be full with all of that', () => {
  const queue = new WorkQueue<Item>(3);
  const push = (name: string, priority: Priority) => queue.push(item(name, 'room', priority));
  expect([push('p0', 'spare'), push('a', 'live'), push('p1', 'spare'), push('p2', 'spare')]).toEqual([
    true,
    true,
    true,
    false,
  ]);
  expect([push('b', 'live'), push('c', 'live'), push('d', 'live')]).toEqual([true, true, false]);
  expect(drain(queue)).toBe('a b c p0 p1');
  expect(push('p3', 'spare')).toBe(true);
});

test('a full queue takes nothing more, and forgets nothing it has', () => {
  const queue = new WorkQueue<Item>(2);
  expect(['a', 'b', 'c'].map((name) => queue.push(item(name)))).toEqual([true, true, false]);
  expect(queue.clear().map(({ name }) => name)).toEqual(['a', 'b']);
  expect(queue.size).toBe(0);
});
