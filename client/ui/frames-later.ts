// Work that can wait a frame or two, so that no single frame has to do everything that a change brings.
import { useEffect, useState } from 'preact/hooks';

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
