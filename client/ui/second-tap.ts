// Keeps the second tap of two quick ones from choosing what has just come to the place of the first.
import { useEffect, useRef, useState } from 'preact/hooks';

/** So long what can be chosen with one tap hears none after it appeared, in ms of the page's clock. */
export const DEAF_MS = 400;

/** What is shown, by a name, and until when taps on it are not meant for it. */
export interface Appearance {
  readonly shown: string;
  readonly deafUntil: number;
}

/** Stays the same while the same is shown, so that a later tap is always heard. */
export function appearing(last: Appearance | null, shown: string, deafUntil: number): Appearance {
  return last?.shown === shown ? last : { shown, deafUntil };
}

/** `at` is when the finger or the key came down, even where the page was busy and heard of it later. */
export function isSecondTap({ deafUntil }: Appearance, at: number): boolean {
  return at < deafUntil;
}

interface Deaf {
  /** For `aria-disabled`, so that whoever does not see the table is told that a press would not count yet. */
  readonly isDeaf: boolean;
  /** For the element around the buttons: Enter and Space on a button arrive as clicks as well. */
  readonly onClickCapture: (event: MouseEvent) => void;
}

/** `choosesAtOnce` is looked at as `shown` appears: where a choice takes several taps, the first of them does no harm. */
export function useDeafAtFirst(shown: string, choosesAtOnce: boolean): Deaf {
  const last = useRef<Appearance | null>(null);
  const now = performance.now();
  const appearance = appearing(last.current, shown, choosesAtOnce ? now + DEAF_MS : 0);
  last.current = appearance;
  const [heard, setHeard] = useState<Appearance | null>(null);
  useEffect(() => {
    const left = appearance.deafUntil - performance.now();
    if (left <= 0) return;
    const timer = setTimeout(() => setHeard(appearance), left);
    return () => clearTimeout(timer);
  }, [appearance]);
  return {
    isDeaf: heard !== appearance && appearance.deafUntil > now,
    onClickCapture(event) {
      if (!isSecondTap(appearance, event.timeStamp)) return;
      event.preventDefault();
      event.stopPropagation();
    },
  };
}
