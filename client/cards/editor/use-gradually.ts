// Draws a long list a part at a time, so that nobody waits for all of it before something can be done.
import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';

const AT_FIRST = 12;
const AT_ONCE = 8;
const PAUSE_MS = 16;

/** How many of so many items are to be drawn by now; all after a moment, and then at once each that is added. */
export function useGradually(items: number): number {
  const drawn = useSignal(AT_FIRST);
  const isWhole = drawn.value >= items + AT_FIRST;
  useEffect(() => {
    if (isWhole) return;
    const timer = setTimeout(() => {
      drawn.value += AT_ONCE;
    }, PAUSE_MS);
    return () => clearTimeout(timer);
  }, [drawn.value, isWhole]);
  return drawn.value;
}
