// Which files may import which: layers of the engine, folders of server and page; and nothing impure in the engine.
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';

const root = new URL('../../', import.meta.url).pathname;

/** Each layer imports only layers before it, and those through their indexes. */
const ENGINE_LAYERS = [
  'rules',
  'card',
  'kernels',
  'survey',
  'policy',
  'analysis',
  'bots',
  'drill',
  'protocol',
  'practice',
];

/** Each folder imports only folders before it; all of them import the ports and the like, which lie above the folders. */
const SERVER_FOLDERS = [
  'aggregate',
  'room',
  'presence',
  'delivery',
  'schedule',
  'reviews',
  'registry',
  'class',
  'published',
  'club',
  'http',
  'ws',
];
/** What implements the ports: only the assembly names it, and the commands that work on a store. */
const SERVER_IMPLEMENTATIONS = /^server\/(store|workers)\//;
const SERVER_ASSEMBLY = /^server\/(app|main|config)\.ts$|^server\/(cli|store|workers)\//;

/** What one person does on one screen after another; no such folder imports another one. */
const CLIENT_FEATURES = ['table', 'review', 'cards', 'practice', 'class', 'lessons', 'privacy'];
/** What the features share, each importing only those before it. */
const CLIENT_SHARED = ['storage', 'connection', 'workers', 'tiles', 'ui', 'app/routes', 'coach', 'room'];

/** Scripts that write product data or serve development; nothing that ships imports them. */
const TOOLS = /^(shared-engine|client)\/tools\//;

function sources(folder: string): string[] {
  return readdirSync(join(root, folder), { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
    .map((entry) => relative(root, join(entry.parentPath, entry.name)))
    .filter((file) => !TOOLS.test(file) && !file.startsWith('shared-engine/kernels/simd/assembly/'));
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

/** Every import of these files that `allowed` does not accept. */
function offenders(files: readonly string[], allowed: (file: string, target: string) => boolean): string[] {
  return files.flatMap((file) =>
    localImports(file)
      .filter((target) => !allowed(file, target))
      .map((target) => `${file} → ${target}`),
  );
}

/** The place of a file's folder in an ordered list of folders below `part`; -1 for a file in none of them. */
function placeIn(folders: readonly string[], part: string, file: string): number {
  return folders.findIndex((folder) => file.startsWith(`${part}/${folder}/`));
}

describe('between the top folders', () => {
  test('there are sources to check, and their imports are found', () => {
    expect(engine.length).toBeGreaterThan(20);
    expect(localImports('shared-engine/rules/exchange/decide.ts')).toContain(
      'shared-engine/rules/exchange/legality.ts',
    );
  });

  test('the engine imports nothing of the server, the client or the tests', () => {
    expect(offenders(engine, (_, target) => target.startsWith('shared-engine/'))).toEqual([]);
  });

  test('server and client never import each other, and neither imports the tests', () => {
    expect(offenders(server, (_, target) => /^(server|shared-engine)\//.test(target))).toEqual([]);
    expect(offenders(client, (_, target) => /^(client|shared-engine)\//.test(target))).toEqual([]);
  });

  test('nothing that ships imports the tools of development', () => {
    const files = [...engine, ...server, ...client].filter((file) => file !== 'client/vite.config.ts');
    expect(offenders(files, (_, target) => !TOOLS.test(target))).toEqual([]);
  });

  test('server and client use the engine through its public index alone', () => {
    const allowed = (_: string, target: string): boolean => !/^shared-engine\/(?!index\.ts$)/.test(target);
    expect(offenders([...server, ...client], allowed)).toEqual([]);
  });

  test('tests import the engine’s inner files, never an index', () => {
    expect(
      offenders(sources('tests'), (_, target) => !/^shared-engine\/(\w+\/)?index\.ts$/.test(target)),
    ).toEqual([]);
  });

  test('the engine asks the outside for nothing but its own packages', () => {
    const packages = engine.flatMap(importsOf).filter((name) => !name.startsWith('.'));
    const allowed = /^(zod|seedrandom|@noble\/hashes\/(hmac|sha2|utils)\.js)$/;
    expect(packages.filter((name) => !allowed.test(name))).toEqual([]);
  });
});

describe('between the layers of the engine', () => {
  const layerOf = (file: string): number => placeIn(ENGINE_LAYERS, 'shared-engine', file);

  test('every file of the engine but its public index lies in a layer', () => {
    expect(engine.filter((file) => layerOf(file) === -1)).toEqual(['shared-engine/index.ts']);
  });

  test('a layer of the engine imports only layers before it, through their indexes', () => {
    const allowed = (file: string, target: string): boolean => {
      const [own, other] = [layerOf(file), layerOf(target)];
      return own === other || (other < own && target === `shared-engine/${ENGINE_LAYERS[other]}/index.ts`);
    };
    expect(
      offenders(
        engine.filter((file) => layerOf(file) !== -1),
        allowed,
      ),
    ).toEqual([]);
  });

  test('an index of the engine only exports names of its own layer, the public one names of the layers’ indexes', () => {
    const indexes = [
      'shared-engine/index.ts',
      ...ENGINE_LAYERS.map((layer) => `shared-engine/${layer}/index.ts`),
    ];
    for (const index of indexes) {
      const statements = readFileSync(join(root, index), 'utf8')
        .split(';')
        .map((statement) => statement.replace(/^\s*\/\/.*$/gm, '').trim());
      expect(
        statements.filter((text) => text !== '' && !/^export (type )?\{[^}]*\} from '/.test(text)),
      ).toEqual([]);
    }
    const inner = (_: string, target: string): boolean => indexes.slice(1).includes(target);
    expect(offenders(['shared-engine/index.ts'], inner)).toEqual([]);
  });

  test('no file of a layer imports the index of its own layer', () => {
    const allowed = (file: string, target: string): boolean =>
      target !== `shared-engine/${ENGINE_LAYERS[layerOf(file)]}/index.ts`;
    expect(offenders(engine, allowed)).toEqual([]);
  });
});

describe('between the folders of the server', () => {
  const placeOf = (file: string): number => placeIn(SERVER_FOLDERS, 'server', file);

  test('a folder of the server imports only folders before it', () => {
    const files = server.filter((file) => placeOf(file) !== -1);
    expect(offenders(files, (file, target) => placeOf(target) <= placeOf(file))).toEqual([]);
  });

  test('store and workers import no other folder of the server', () => {
    const files = server.filter((file) => SERVER_IMPLEMENTATIONS.test(file));
    expect(offenders(files, (_, target) => placeOf(target) === -1)).toEqual([]);
  });

  test('only the assembly and the commands name store and workers', () => {
    const files = server.filter((file) => !SERVER_ASSEMBLY.test(file));
    expect(offenders(files, (_, target) => !SERVER_IMPLEMENTATIONS.test(target))).toEqual([]);
  });

  test('every folder of the server is in one of these lists', () => {
    const folders = new Set(server.flatMap((file) => file.match(/^server\/([\w-]+)\//)?.[1] ?? []));
    expect([...folders].sort()).toEqual([...SERVER_FOLDERS, 'cli', 'store', 'workers'].sort());
  });
});

describe('between the folders of the page', () => {
  const sharedPlace = (file: string): number => placeIn(CLIENT_SHARED, 'client', file);
  const featurePlace = (file: string): number => placeIn(CLIENT_FEATURES, 'client', file);

  test('a feature of the page imports itself and what features share, never another feature', () => {
    const files = client.filter((file) => featurePlace(file) !== -1);
    const allowed = (file: string, target: string): boolean =>
      !target.startsWith('client/') ||
      featurePlace(target) === featurePlace(file) ||
      sharedPlace(target) !== -1;
    expect(offenders(files, allowed)).toEqual([]);
  });

  test('what the features of the page share imports only folders before it', () => {
    const files = client.filter((file) => sharedPlace(file) !== -1);
    const allowed = (file: string, target: string): boolean =>
      !target.startsWith('client/') ||
      (sharedPlace(target) !== -1 && sharedPlace(target) <= sharedPlace(file));
    expect(offenders(files, allowed)).toEqual([]);
  });

  test('every folder of the page is in one of these lists', () => {
    const folders = new Set(client.flatMap((file) => file.match(/^client\/([\w-]+)\//)?.[1] ?? []));
    const known = [...CLIENT_FEATURES, ...CLIENT_SHARED.map((folder) => folder.split('/')[0]!)];
    expect([...folders].sort()).toEqual([...new Set(known)].sort());
  });
});

test('no two folders import each other', () => {
  const edges = new Set<string>();
  for (const file of [...engine, ...server, ...client]) {
    for (const target of localImports(file)) {
      const [from, to] = [dirname(file), dirname(target)];
      const nested = `${from}/`.startsWith(`${to}/`) || `${to}/`.startsWith(`${from}/`);
      if (!nested) edges.add(`${from} ↔ ${to}`);
    }
  }
  const mutual = [...edges].filter((edge) => {
    const [from, to] = edge.split(' ↔ ') as [string, string];
    return from < to && edges.has(`${to} ↔ ${from}`);
  });
  expect(mutual).toEqual([]);
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

  test('reads no clock, no process and no network, and draws only from seeds', () => {
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
