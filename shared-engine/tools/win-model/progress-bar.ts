// A progress bar on standard error: redrawn in place on a terminal, a line at each tenth elsewhere.
const WIDTH = 30;

/** Call with how many of `total` are done. */
export function progressBar(what: string, total: number): (done: number) => void {
  const started = performance.now();
  let shown = -1;
  return (done) => {
    const percent = Math.floor((done / total) * 100);
    const due = process.stderr.isTTY ? percent : Math.floor(percent / 10) * 10;
    if (due === shown) return;
    shown = due;
    const filled = Math.round((done / total) * WIDTH);
    const left = Math.round((((performance.now() - started) / done) * (total - done)) / 1000);
    const text = `[${'#'.repeat(filled)}${'.'.repeat(WIDTH - filled)}] ${due} % of ${total} ${what}, ${left} s left`;
    process.stderr.write(process.stderr.isTTY ? `\r${text.padEnd(80)}` : `${text}\n`);
    if (done === total && process.stderr.isTTY) process.stderr.write('\n');
  };
}
