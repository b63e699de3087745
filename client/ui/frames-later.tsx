// Work that can wait a frame or two, so that no single frame has to do everything that a change brings.
import type { ComponentChildren } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';

/** The value as it was, until so many frames have been drawn since it changed. */
export function useFramesLater<T>(value: T, frames: number): T {
  const [last, setLast] = useState(value);
  useEffect(() => {
    let left = frames;
    const next = () => {
      left--;
      if (left > 0) frame = requestAnimationFrame(next);
      else setLast(value);
    };
    let frame = requestAnimationFrame(next);
    return () => cancelAnimationFrame(frame);
  }, [value, frames]);
  return last;
}

interface FramesLaterProps<T> {
  readonly of: T;
  readonly frames: number;
  readonly children: ComponentChildren;
}

/** Its children as they were, until so many frames have been drawn since `of` changed. */
export function FramesLater<T>({ of, frames, children }: FramesLaterProps<T>) {
  const isDue = useFramesLater(of, frames) === of;
  const shown = useRef(children);
  if (isDue) shown.current = children;
  return <>{shown.current}</>;
}
