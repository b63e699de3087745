// Storing a card of one's own where the browser refuses half of it, or another tab deletes the card meanwhile.
import { describe, expect, it } from 'vitest';
import { openSession } from '../../client/cards/editor/session.ts';
import { emptyCard, openShelf } from '../../client/cards/own/shelf.ts';
import type { TextStorage } from '../../client/storage/browser-storage.ts';
import { memoryStorage } from '../kit/memory-storage.ts';

const begun = emptyCard('Tuesday club', 'First');

describe('a card whose text fits, but whose place in the list does not', () => {
  /** A shelf in a storage that refuses the list of cards while it is full; `texts` are the keys that hold something. */
  function nearlyFull() {
    const storage = memoryStorage();
    const written = new Set<string>();
    let isFull = false;
    const shelf = openShelf(
      {
        read: storage.read,
        write(key, text) {
          if (isFull && key === 'own-cards') return false;
          written.add(key);
          return storage.write(key, text);
        },
        remove: storage.remove,
      } satisfies TextStorage,
      newIds(),
    );
    return {
      shelf,
      texts: () => [...written].filter((key) => storage.read(key) !== null),
      fill: (full: boolean) => {
        isFull = full;
      },
    };
  }

  it('stays as it was before, and can be stored once there is room', () => {
    const { shelf, fill } = nearlyFull();
    const { key } = shelf.add(begun)!;
    const before = shelf.open(key)!;
    fill(true);
    const longer = { ...begun, name: 'Tuesday club, evening' };
    expect(shelf.store(key, longer, before.revision)).toBe('refused');
    expect(shelf.open(key)).toEqual(before);
    fill(false);
    expect(shelf.store(key, longer, before.revision)).toEqual({ revision: expect.any(String) });
    expect(shelf.open(key)!.card.name).toBe('Tuesday club, evening');
  });

  it('leaves nothing behind when it is new', () => {
    const { shelf, texts, fill } = nearlyFull();
    fill(true);
    expect(shelf.add(begun)).toBeNull();
    expect([texts(), shelf.entries.value]).toEqual([[], []]);
  });
});

describe('a card that another tab deletes while it is edited', () => {
  function edited() {
    const storage = memoryStorage();
    const ids = newIds();
    const [shelf, otherTab] = [openShelf(storage, ids), openShelf(storage, ids)];
    const entry = shelf.add(begun)!;
    const session = openSession(entry.key, { shelf, startTimer: () => () => {} })!;
    return { shelf, otherTab, entry, session };
  }
  const renamed = { ...begun, name: 'Thursday club' };

  it('is said to be gone, and nothing written here brings half of it back', () => {
    const { shelf, otherTab, entry, session } = edited();
    session.change(renamed);
    otherTab.remove(entry);
    session.flush();
    expect(session.storing.value).toBe('removed-elsewhere');
    session.change({ ...renamed, name: 'Friday club' });
    session.takeOther();
    session.flush();
    expect([session.storing.value, shelf.open(entry.key)]).toEqual(['removed-elsewhere', null]);
    // What the page's button does: the card with all changes, as a card of its own.
    const kept = shelf.add(session.card.value)!;
    expect(shelf.open(kept.key)!.card.name).toBe('Friday club');
  });

  it('is edited on where the other tab puts it back', () => {
    const { shelf, otherTab, entry, session } = edited();
    const putBack = otherTab.remove(entry);
    session.changedElsewhere();
    expect(session.storing.value).toBe('removed-elsewhere');
    session.change(renamed);
    putBack();
    session.changedElsewhere();
    expect([session.storing.value, shelf.open(entry.key)!.card.name]).toEqual(['stored', 'Thursday club']);
  });
});

function newIds(): () => string {
  let ids = 0;
  return () => `id${++ids}`;
}
