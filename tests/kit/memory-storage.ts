// A drawer for small notes that lives as long as the test.
import type { TextStorage } from '../../client/storage/browser-storage.ts';

export function memoryStorage(first: Readonly<Record<string, string>> = {}): TextStorage {
  const notes = new Map(Object.entries(first));
  return {
    read: (key) => notes.get(key) ?? null,
    write: (key, text) => {
      notes.set(key, text);
      return true;
    },
    remove: (key) => {
      notes.delete(key);
    },
  };
}
