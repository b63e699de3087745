// Messages that come close together are handed on together, so that the page is drawn anew once for all of them.

/** Long enough for the next frame; a page in the background has none. */
const LONGEST_WAIT_MS = 50;

/** Runs `run` before the next frame is drawn, or after a moment, or both. */
function atNextFrame(run: () => void): void {
  requestAnimationFrame(run);
  setTimeout(run, LONGEST_WAIT_MS);
}

/** Hands on what it is given, in its order, before the next frame is drawn. */
export function oncePerFrame<T>(
  receive: (message: T) => void,
  startFrame: (run: () => void) => void = atNextFrame,
): (message: T) => void {
  let waiting: readonly T[] = [];
  const handOn = () => {
    const now = waiting;
    waiting = [];
    for (const message of now) receive(message);
  };
  return (message) => {
    waiting = [...waiting, message];
    if (waiting.length === 1) startFrame(handOn);
  };
}
