// npm run prove -- NAME [FILE] [--size small|full] [--seed TEXT]: checks one claim and prints one JSON object.
import { parseArgs } from 'node:util';
import { printLast } from '../kit/last-line.ts';
import { loadModule, moduleNames } from '../kit/modules-in-folder.ts';
import type { Proof, Size } from './proof.ts';
import { seedOf } from './seeds.ts';

const folder = new URL('./proofs/', import.meta.url);

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { size: { type: 'string', default: 'small' }, seed: { type: 'string' } },
});
const [name = 'list', file] = positionals;
const seed = values.seed ?? seedOf(name, values.size);

if (name === 'list') {
  const proofs = await Promise.all(
    moduleNames(folder).map(async (known) => [
      known,
      (await loadModule<Proof>(folder, known, 'proof')).summary,
    ]),
  );
  printLast({ proofs: Object.fromEntries(proofs) });
} else if (!moduleNames(folder).includes(name)) {
  console.error(`No proof is called "${name}". Known: ${moduleNames(folder).join(', ')}.`);
  process.exitCode = 2;
} else if (!isSize(values.size)) {
  console.error(`--size is small or full, not "${values.size}".`);
  process.exitCode = 2;
} else {
  const { size } = values;
  const started = performance.now();
  const rows = await (await loadModule<Proof>(folder, name, 'proof')).run({
    seed,
    size,
    tell: (row) => console.error(JSON.stringify(row)),
    ...(file === undefined ? {} : { file }),
  });
  const ok = rows.length > 0 && rows.every((row) => row.ok);
  const seconds = Math.round(performance.now() - started) / 1000;
  printLast({ name, ok, rows, seed, size, seconds }, ok ? 0 : 1);
}

function isSize(text: string): text is Size {
  return text === 'small' || text === 'full';
}
