// The browser's two drawers for small notes: one that lasts, one that ends with the tab. Either may be shut.
import type { Memory } from '../connection/pending.ts';

type Drawer = 'localStorage' | 'sessionStorage';

function drawer(name: Drawer): Memory {
  // Private windows may refuse storage; the page then forgets, and works.
  const attempt = <T>(use: (storage: Storage) => T): T | null => {
    try {
      return use(window[name]);
    } catch {
      return null;
    }
  };
  return {
    read: (key) => attempt((storage) => storage.getItem(`quadrille.${key}`)),
    write: (key, text) => {
      attempt((storage) => storage.setItem(`quadrille.${key}`, text));
    },
    forget: (key) => {
      attempt((storage) => storage.removeItem(`quadrille.${key}`));
    },
  };
}

export const lasting: Memory = drawer('localStorage');
export const forThisTab: Memory = drawer('sessionStorage');
