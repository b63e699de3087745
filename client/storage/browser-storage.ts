// The browser's storage for short texts: one that lasts and one that ends with the tab. Either may be blocked.

/** Short texts by key; may lose everything at any time. */
export interface TextStorage {
  read(key: string): string | null;
  /** False where it is full or refused: nothing of the text is stored then. */
  write(key: string, text: string): boolean;
  remove(key: string): void;
}

const PREFIX = 'quadrille.';

function textStorage(name: 'localStorage' | 'sessionStorage'): TextStorage {
  // Private windows may refuse storage; the page then remembers nothing, and works.
  const attempt = <T>(use: (storage: Storage) => T): T | null => {
    try {
      return use(window[name]);
    } catch {
      return null;
    }
  };
  return {
    read: (key) => attempt((storage) => storage.getItem(`${PREFIX}${key}`)),
    write: (key, text) =>
      attempt((storage) => {
        const name = `${PREFIX}${key}`;
        // Every message of a table asks to store what is mostly stored already, and writing waits for the disk.
        if (storage.getItem(name) !== text) storage.setItem(name, text);
        return true;
      }) ?? false,
    remove: (key) => {
      attempt((storage) => storage.removeItem(`${PREFIX}${key}`));
    },
  };
}

/** Runs `run` when another tab has written or removed the text of this key; returns what ends it. */
export function onOtherTabs(key: string, run: () => void): () => void {
  const listen = (event: StorageEvent) => {
    if (event.key === `${PREFIX}${key}`) run();
  };
  window.addEventListener('storage', listen);
  return () => window.removeEventListener('storage', listen);
}

export const lastingStorage: TextStorage = textStorage('localStorage');
export const tabStorage: TextStorage = textStorage('sessionStorage');

/** Where the rounds played in this browser are. */
export const HISTORY_DATABASE = 'quadrille-history';

/** Deletes everything that this page has stored; resolves when it is gone. */
export async function clearStorage(): Promise<void> {
  for (const name of ['localStorage', 'sessionStorage'] as const) {
    try {
      const storage = window[name];
      for (const key of Object.keys(storage)) if (key.startsWith(PREFIX)) storage.removeItem(key);
    } catch {
      // A storage that is blocked holds nothing.
    }
  }
  await databaseDeleted();
}

/** Other tabs let go of the database; a browser that allows none has nothing to delete. */
function databaseDeleted(): Promise<void> {
  return new Promise((resolve) => {
    try {
      const request = window.indexedDB.deleteDatabase(HISTORY_DATABASE);
      request.onsuccess = () => resolve();
      request.onerror = () => resolve();
    } catch {
      resolve();
    }
  });
}
