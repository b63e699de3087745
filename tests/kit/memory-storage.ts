// A drawer for small notes that lives as long as the test.
import type { Memory } from '../../client/storage/browser-storage.ts';

export function textMemory(first: Readonly<Record<string, string>> = {}): Memory {
  const notes = new Map(Object.entries(first));
  return {
    read: (key) => notes.get(key) ?? null,
    write: (key, text) => {
      notes.set(key, text);
    },
    forget: (key) => {
      notes.delete(key);
    },
  };
}
