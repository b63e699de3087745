// npm run bench -- NAME [--seed TEXT] [--size small|full]: measures one thing and prints one JSON object.
import os from 'node:os';
import { parseArgs } from 'node:util';
import { printLast } from '../kit/last-line.ts';
import { loadModule, moduleNames } from '../kit/modules-in-folder.ts';
import type { Bench } from './bench.ts';

const folder = new URL('./benches/', import.meta.url);

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { seed: { type: 'string', default: 'quadrille' }, size: { type: 'string', default: 'full' } },
});
const name = positionals[0] ?? 'list';
const { seed, size } = values;

if (name === 'list') {
  const benches = await Promise.all(
    moduleNames(folder).map(async (known) => [
      known,
      (await loadModule<Bench>(folder, known, 'bench')).summary,
    ]),
  );
  printLast({ benches: Object.fromEntries(benches) });
} else if (!moduleNames(folder).includes(name)) {
  console.error(`No benchmark is called "${name}". Known: ${moduleNames(folder).join(', ')}.`);
  process.exitCode = 2;
} else if (size !== 'small' && size !== 'full') {
  console.error(`--size is small or full, not "${size}".`);
  process.exitCode = 2;
} else {
  const started = performance.now();
  const figures = await (await loadModule<Bench>(folder, name, 'bench')).run({ seed, size });
  const machine = `${os.cpus()[0]?.model ?? 'unknown'} x${os.cpus().length}, node ${process.version}`;
  printLast({ name, figures, machine, seed, seconds: Math.round(performance.now() - started) / 1000 });
}
