// What every store must do, as a suite that runs on each of them.
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Store } from '../../server/ports.ts';
import type { Logged } from '../../server/room/event.ts';

const opened: Logged = {
  seq: 1,
  at: 1000,
  command: null,
  event: {
    kind: 'opened',
    door: 'friends',
    terms: { deadline: null, layOpen: false },
    card: { kind: 'house' },
  },
};
const ready = (seq: number, command: string | null = null): Logged => ({
  seq,
  at: 1000 + seq,
  command,
  event: { kind: 'ready', seat: 0, ready: true },
});

export function storeContract(name: string, open: () => Promise<Store>): void {
  describe(`the store contract: ${name}`, () => {
    let store: Store;
    beforeEach(async () => {
      store = await open();
    });
    afterEach(() => store.close());

    it('gives back what it kept, in order and unchanged', async () => {
      expect(await store.create('AAAA2222', [opened, ready(2)])).toBe('kept');
      expect(await store.append('AAAA2222', 2, [ready(3, '1/x'), ready(4)])).toBe('kept');
      expect(await store.load('AAAA2222')).toEqual([opened, ready(2), ready(3, '1/x'), ready(4)]);
    });

    it('knows nothing of a room that was never opened', async () => {
      expect(await store.load('BBBB2222')).toBeNull();
      expect(await store.append('BBBB2222', 0, [ready(1)])).toBe('conflict');
      expect(await store.load('BBBB2222')).toBeNull();
    });

    it('opens a code once', async () => {
      await store.create('AAAA2222', [opened]);
      expect(await store.create('AAAA2222', [opened, ready(2)])).toBe('code-taken');
      expect(await store.load('AAAA2222')).toEqual([opened]);
    });

    it('keeps nothing from who did not know the last event', async () => {
      await store.create('AAAA2222', [opened, ready(2)]);
      for (const after of [0, 1, 3]) {
        expect(await store.append('AAAA2222', after, [ready(after + 1)])).toBe('conflict');
      }
      expect(await store.load('AAAA2222')).toEqual([opened, ready(2)]);
    });

    it('lets one of two win who append at the same time', async () => {
      await store.create('AAAA2222', [opened]);
      const outcomes = await Promise.all(
        [1, 2, 3].map((n) => store.append('AAAA2222', 1, [ready(2, `${n}/x`)])),
      );
      expect([...outcomes].sort()).toEqual(['conflict', 'conflict', 'kept']);
      expect(await store.load('AAAA2222')).toHaveLength(2);
    });

    it('is not changed by what a reader does with the answer', async () => {
      await store.create('AAAA2222', [opened]);
      const first = await store.load('AAAA2222');
      await store.append('AAAA2222', 1, [ready(2)]);
      expect(first).toEqual([opened]);
    });

    it('counts its rooms and forgets a removed one', async () => {
      await store.create('AAAA2222', [opened]);
      await store.create('BBBB2222', [opened]);
      expect(await store.count()).toBe(2);
      await store.remove('AAAA2222');
      await store.remove('CCCC2222');
      expect(await store.count()).toBe(1);
      expect(await store.load('AAAA2222')).toBeNull();
      expect(await store.create('AAAA2222', [opened])).toBe('kept');
    });
  });
}
