// Links that stay in the page when they are simply followed, and are ordinary links for everything else.

/** Runs `go` for a plain click; a click that opens a new tab or window keeps its meaning. */
export function goInPage(event: MouseEvent, go: () => void): void {
  if (event.button !== 0 || event.ctrlKey || event.metaKey || event.shiftKey) return;
  event.preventDefault();
  go();
}
