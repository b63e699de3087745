// The arrows between the folders: what may import what, no cycle, and nothing impure in the engine.
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';

const root = new URL('../../', import.meta.url).pathname;

/** Scripts that write product data or serve development; nothing that ships imports them. */
const TOOLS = /^(shared-engine|client)\/tools\//;

function sources(folder: string): string[] {
  return readdirSync(join(root, folder), { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
    .map((entry) => relative(root, join(entry.parentPath, entry.name)))
    .filter((file) => !TOOLS.test(file));
}

const IMPORT =
  /(?:^|\n)\s*(?:import|export)\s(?:[^'";]*?\sfrom\s)?['"]([^'"]+)['"]|import\(\s*['"]([^'"]+)['"]/g;

function importsOf(file: string): string[] {
  const text = readFileSync(join(root, file), 'utf8');
  return [...text.matchAll(IMPORT)].map((match) => match[1] ?? match[2]!);
}

/** Project files that a file imports, relative to the root. */
function localImports(file: string): string[] {
  return importsOf(file)
    .filter((name) => name.startsWith('.'))
    .map((name) => relative(root, resolve(root, dirname(file), name)));
}

const engine = sources('shared-engine');
const server = sources('server');
const client = sources('client');

function offenders(files: readonly string[], forbidden: RegExp): string[] {
  return files.flatMap((file) =>
    localImports(file)
      .filter((target) => forbidden.test(target))
      .map((target) => `${file} → ${target}`),
  );
}

describe('between the folders', () => {
  test('there are sources to look at, and their imports are found', () => {
    expect(engine.length).toBeGreaterThan(20);
    expect(localImports('shared-engine/rules/exchange/decide.ts')).toContain(
      'shared-engine/rules/exchange/legality.ts',
    );
  });

  test('the engine imports nothing of the server, the client or the tests', () => {
    expect(offenders(engine, /^(server|client|tests)\//)).toEqual([]);
  });

  test('server and client never import each other, and neither imports the tests', () => {
    expect(offenders(server, /^(client|tests)\//)).toEqual([]);
    expect(offenders(client, /^(server|tests)\//)).toEqual([]);
  });

  test('nothing that ships imports the tools of development', () => {
    expect(offenders([...engine, ...server, ...client], TOOLS)).toEqual([]);
  });

  test('server and client use the engine through its one door', () => {
    expect(offenders([...server, ...client], /^shared-engine\/(?!index\.ts$)/)).toEqual([]);
  });

  test('the engine asks the outside for nothing but its own packages', () => {
    const packages = engine.flatMap(importsOf).filter((name) => !name.startsWith('.'));
    const allowed = /^(zod|seedrandom|@noble\/hashes\/(sha2|utils)\.js)$/;
    expect(packages.filter((name) => !allowed.test(name))).toEqual([]);
  });
});

test('no file imports itself through others', () => {
  const files = [...engine, ...server, ...client];
  const graph = new Map(files.map((file) => [file, localImports(file)]));
  const done = new Set<string>();
  const cycles: string[] = [];
  const visit = (file: string, path: readonly string[]): void => {
    if (path.includes(file)) {
      cycles.push([...path.slice(path.indexOf(file)), file].join(' → '));
      return;
    }
    if (done.has(file)) return;
    done.add(file);
    for (const next of graph.get(file) ?? []) visit(next, [...path, file]);
  };
  for (const file of files) visit(file, []);
  expect(cycles).toEqual([]);
});

describe('the engine', () => {
  const code = (file: string): string =>
    readFileSync(join(root, file), 'utf8')
      .replace(/\/\*[\s\S]*?\*\//g, '')
      .replace(/\/\/.*$/gm, '');

  test('knows no clock, no chance but the seed, no process and no network', () => {
    const banned =
      /\bDate\b|Math\.random|\bprocess\b|\bfetch\(|\bsetTimeout\b|\bperformance\b|\bcrypto\b|\bconsole\b/;
    expect(engine.filter((file) => banned.test(code(file)))).toEqual([]);
  });

  test('uses no function whose last bit may differ from machine to machine', () => {
    const banned =
      /Math\.(exp|expm1|log|log2|log10|log1p|pow|sin|cos|tan|tanh|cbrt|hypot|atan2?)\b|\*\* (?!2\b)|localeCompare|Intl\./;
    expect(engine.filter((file) => banned.test(code(file)))).toEqual([]);
  });
});
