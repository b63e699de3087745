// Parts of the page that are fetched when they are first needed, or before that while the page is idle.
import { type ReadonlySignal, signal } from '@preact/signals';

export interface Lazy<T> {
  readonly state: ReadonlySignal<
    { readonly is: 'loading' } | { readonly is: 'loaded'; readonly part: T } | { readonly is: 'failed' }
  >;
  /** Fetches the part unless it is here; null when it cannot be fetched just now. */
  fetch(): Promise<T | null>;
}

function lazy<T>(load: () => Promise<T>): Lazy<T> {
  const state = signal<Lazy<T>['state']['value']>({ is: 'loading' });
  let running: Promise<T | null> | null = null;
  async function run(): Promise<T | null> {
    try {
      const part = await load();
      state.value = { is: 'loaded', part };
      return part;
    } catch {
      // Without a network a part that is not stored cannot come; the next call tries again.
      running = null;
      state.value = { is: 'failed' };
      return null;
    }
  }
  return {
    state,
    fetch() {
      running ??= run();
      return running;
    },
  };
}

export const roomsPart = lazy(() => import('./rooms.ts'));
export const settingsPart = lazy(() => import('./settings-sheet.tsx'));
export const classPart = lazy(() => import('./class-part.ts'));
export const ownTilesPart = lazy(() => import('./own-tiles-part.tsx'));
export const helpPart = lazy(() => import('./help-sheet.tsx'));
export const practicePart = lazy(() => import('./practice-part.ts'));
export const cardsPart = lazy(() => import('./cards-part.ts'));
