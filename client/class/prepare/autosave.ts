// Stores a drill on this device a moment after each change, and at once when the page is left.
import { type Signal, useSignal, useSignalEffect } from '@preact/signals';
import { useEffect, useLayoutEffect, useRef } from 'preact/hooks';
import type { App } from '../../app/routes/app.ts';
import type { DrillRow, StorageProblem } from '../../storage/history/database.ts';
import { storeDrill } from '../../storage/history/teaching.ts';

/** Pause after the last change, in milliseconds. */
const PAUSE_MS = 400;

export type SaveState = 'not-stored' | 'storing' | 'stored' | StorageProblem;

export interface Autosave {
  readonly state: Signal<SaveState>;
  /** Stores at once what has changed and waits to be stored. */
  flush(): void;
}

/** `watched` reads every signal that a row is made of. */
export function useAutosave(app: App, watched: () => unknown, row: () => DrillRow): Autosave {
  const state = useSignal<SaveState>('not-stored');
  const pending = useRef<(() => void) | null>(null);
  const isFirst = useRef(true);

  async function store() {
    pending.current = null;
    const stored = row();
    state.value = 'storing';
    const done = await storeDrill(stored);
    state.value = done.ok ? 'stored' : done.problem;
    // From now on a reload brings this drill back.
    if (done.ok && app.route.peek().kind === 'prepare') app.rename({ kind: 'prepare', drill: stored.id });
  }

  useSignalEffect(() => {
    watched();
    if (isFirst.current) {
      isFirst.current = false;
      return;
    }
    const timer = setTimeout(() => void store(), PAUSE_MS);
    pending.current = () => {
      clearTimeout(timer);
      void store();
    };
    return () => clearTimeout(timer);
  });

  const flush = () => pending.current?.();
  useEffect(() => {
    document.addEventListener('visibilitychange', flush);
    return () => document.removeEventListener('visibilitychange', flush);
  }, []);
  // Before the next screen reads what is stored; the cleanup of a passive effect would run a frame later.
  useLayoutEffect(() => flush, []);
  return { state, flush };
}
