// A part of the page that is fetched when it is first needed, or before that while the page is idle.
import { type ReadonlySignal, signal } from '@preact/signals';

export interface Later<T> {
  readonly state: ReadonlySignal<
    { readonly is: 'coming' } | { readonly is: 'here'; readonly part: T } | { readonly is: 'missing' }
  >;
  /** Fetches the part unless it is here; null when it cannot be had just now. */
  fetch(): Promise<T | null>;
}

export function later<T>(load: () => Promise<T>): Later<T> {
  const state = signal<Later<T>['state']['value']>({ is: 'coming' });
  let running: Promise<T | null> | null = null;
  async function run(): Promise<T | null> {
    try {
      const part = await load();
      state.value = { is: 'here', part };
      return part;
    } catch {
      // Without a network a part that was never kept cannot come; the next wish tries again.
      running = null;
      state.value = { is: 'missing' };
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
