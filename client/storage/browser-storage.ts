// The browser's two drawers for small notes: one that lasts, one that ends with the tab. Either may be shut.

/** A place for a little text; may forget everything at any time. */
export interface TextStorage {
  read(key: string): string | null;
  write(key: string, text: string): void;
  remove(key: string): void;
}

type Drawer = 'localStorage' | 'sessionStorage';

const OURS = 'quadrille.';

function drawer(name: Drawer): TextStorage {
  // Private windows may refuse storage; the page then forgets, and works.
  const attempt = <T>(use: (storage: Storage) => T): T | null => {
    try {
      return use(window[name]);
    } catch {
      return null;
    }
  };
  return {
    read: (key) => attempt((storage) => storage.getItem(`${OURS}${key}`)),
    write: (key, text) => {
      attempt((storage) => storage.setItem(`${OURS}${key}`, text));
    },
    remove: (key) => {
      attempt((storage) => storage.removeItem(`${OURS}${key}`));
    },
  };
}

export const lastingStorage: TextStorage = drawer('localStorage');
export const tabStorage: TextStorage = drawer('sessionStorage');

/** Empties both drawers of everything that this page has put there. */
export function clearStorage(): void {
  for (const name of ['localStorage', 'sessionStorage'] as const) {
    try {
      const storage = window[name];
      for (const key of Object.keys(storage)) if (key.startsWith(OURS)) storage.removeItem(key);
    } catch {
      // A drawer that is shut holds nothing.
    }
  }
}
