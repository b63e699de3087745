// npm run build:wasm: compiles the SIMD module and writes it as TypeScript, unless what is there is up to date.
// With --check nothing is written; the exit code says whether it is up to date.
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';

const here = new URL('./', import.meta.url);
const folder = new URL('./assembly/', here);
const built = new URL('./built.ts', here);
const OPTIONS = ['-O3', '--converge', '--noAssert', '--runtime', 'stub', '--enable', 'simd'];

const names = readdirSync(folder).sort();
const texts = new Map(names.map((name) => [name, readFileSync(new URL(name, folder), 'utf8')]));
const { version } = createRequire(import.meta.url)('assemblyscript/package.json');
const source = createHash('sha256')
  .update(JSON.stringify([version, OPTIONS, [...texts]]))
  .digest('hex');

if (process.argv.includes('--check')) process.exitCode = isUpToDate() ? 0 : 1;
else if (!isUpToDate()) write(moduleText(await compile()));

function isUpToDate() {
  try {
    return readFileSync(built, 'utf8').includes(source);
  } catch {
    return false;
  }
}

/** Written beside it and renamed, because another command may be reading it. */
function write(text) {
  const draft = new URL(`./built.${process.pid}.tmp`, here);
  writeFileSync(draft, text);
  renameSync(draft, built);
}

async function compile() {
  // Takes seconds to load and is mostly not needed.
  const { default: asc } = await import('assemblyscript/asc');
  let bytes = null;
  const files = ['index.ts', '--outFile', 'module.wasm', ...OPTIONS];
  const { error, stderr } = await asc.main(files, {
    readFile: (name) => texts.get(name) ?? null,
    writeFile: (_, contents) => {
      bytes = contents;
    },
    listFiles: () => [],
  });
  if (error !== null || bytes === null) {
    throw new Error(`The SIMD module does not compile:\n${stderr.toString()}`, { cause: error });
  }
  return Buffer.from(bytes);
}

function moduleText(bytes) {
  return `// Written by npm run build:wasm from ./assembly; never edited by hand.

/** Fingerprint of the sources and of the compiler's options. */
export const SOURCE: string = '${source}';

/** The module's ${bytes.length} bytes in base64. */
export const MODULE: string = '${bytes.toString('base64')}';
`;
}
