// Messages that come close together are handed on together, so that the page is drawn anew once for all of them.

/** Long enough for the next frame; a page in the background has none. */
const LONGEST_WAIT_MS = 50;

/** Hands on what it is given, in its order, before the next frame is drawn. */
export function oncePerFrame<T>(receive: (message: T) => void): (message: T) => void {
  let waiting: readonly T[] = [];
  const handOn = () => {
    const now = waiting;
    waiting = [];
    for (const message of now) receive(message);
  };
  return (message) => {
    waiting = [...waiting, message];
    if (waiting.length > 1) return;
    requestAnimationFrame(handOn);
    setTimeout(handOn, LONGEST_WAIT_MS);
  };
}
