// The last thing that a command prints; whatever it has left open behind that is named and fails it.

/** Time that what is open has to close by itself, in milliseconds; with it a command ends within two seconds. */
const GRACE_MS = 1500;

/** Exit code of a command that found nothing wrong and left something open. */
const LEFT_OPEN = 3;

/** Prints the command's one JSON object. The process ends by itself where nothing is open, and with an error where something is. */
export function printLast(value: unknown, code: 0 | 1 = 0): void {
  process.stdout.write(`${JSON.stringify(value, null, 2)}\n`);
  process.exitCode = code;
  // Keeps nothing alive, so it only ever runs where something else does.
  setTimeout(() => {
    console.error(`Left open after the last line: ${leftOpen()}. Whoever opened that must close it.`);
    process.exit(code === 0 ? LEFT_OPEN : code);
  }, GRACE_MS).unref();
}

/** What keeps the process alive, by kind and number. */
function leftOpen(): string {
  const counts = new Map<string, number>();
  for (const kind of process.getActiveResourcesInfo()) counts.set(kind, (counts.get(kind) ?? 0) + 1);
  return [...counts].map(([kind, count]) => `${count} ${kind}`).join(', ');
}
