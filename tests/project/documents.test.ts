// The documents against the project: every path, link, command and setting that they name is there.
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { isDeepStrictEqual } from 'node:util';
import { describe, expect, test } from 'vitest';
import { readConfig, SETTINGS } from '../../server/config.ts';
import { createMetrics } from '../../server/http/metrics.ts';
import { SEEDS } from '../prove/seeds.ts';

const root = new URL('../../', import.meta.url).pathname;
const read = (file: string) => readFileSync(path.join(root, file), 'utf8');

const DOCUMENTS = [
  'README.md',
  'DEVELOPERS.md',
  'CHANGELOG.md',
  '.github/SECURITY.md',
  'server/OPERATING.md',
  'server/PROTOCOL.md',
  'server/RULES.md',
  'server/SCALE.md',
  'shared-engine/RULES.md',
  'shared-engine/card/FORMAT.md',
  'shared-engine/drill/FORMAT.md',
  'tests/prove/RESULTS.md',
];

const PATH = /`((?:server|client|shared-engine|tests|docker|\.github|\.ci)\/[^`\s*<]*)`/g;
const LINK = /\]\((?!https?:)([^)#]+)(?:#[^)]*)?\)/g;
const COMMAND = /(?:`|^|&& )npm (?:run (?:--silent )?)?((?!ci\b)[a-z][\w:-]*)/gm;

function found(file: string, pattern: RegExp): string[] {
  return [...read(file).matchAll(pattern)].map((match) => match[1]!);
}

describe.each(DOCUMENTS)('%s', (file) => {
  test('names only paths that exist', () => {
    expect(found(file, PATH).filter((named) => !existsSync(path.join(root, named)))).toEqual([]);
  });

  test('links only to files that exist', () => {
    const folder = path.join(root, path.dirname(file));
    expect(found(file, LINK).filter((link) => !existsSync(path.join(folder, link)))).toEqual([]);
  });

  test('names only commands that package.json has', () => {
    const { scripts } = JSON.parse(read('package.json'));
    expect(found(file, COMMAND).filter((name) => !(name in scripts) && name !== 'audit')).toEqual([]);
  });
});

test('README.md is an entrance of at most 130 lines, and DEVELOPERS.md names many paths', () => {
  expect(read('README.md').split('\n').length).toBeLessThanOrEqual(131);
  expect(found('DEVELOPERS.md', PATH).length).toBeGreaterThan(20);
});

describe('server/OPERATING.md', () => {
  const text = read('server/OPERATING.md');

  test('names only settings that the server has', () => {
    const words = [...text.matchAll(/`([A-Z][A-Z_]+)[`=]|(?<=^|[ `])([A-Z][A-Z_]+)=/gm)].map(
      ([, quoted, set]) => quoted ?? set!,
    );
    // That of the database's image.
    const settings = words.filter((word) => word !== 'POSTGRES_PASSWORD');
    expect(new Set(settings).size).toBeGreaterThan(15);
    expect(settings.filter((word) => !SETTINGS.includes(word))).toEqual([]);
  });

  test('names only programs that the build makes', () => {
    const programs = [...text.matchAll(/dist\/(server\/[\w/]+)\.js/g)].map(([, program]) => `${program}.ts`);
    expect(new Set(programs)).toEqual(new Set(['server/main.ts', 'server/cli/backup.ts']));
    expect(programs.filter((program) => !existsSync(path.join(root, program)))).toEqual([]);
  });

  test('names the metrics as they are called, every one of ours', async () => {
    const metrics = createMetrics();
    const nothing = () => 0;
    metrics.observe({ rooms: nothing, sockets: nothing });
    metrics.observeWork({
      cardsCompiled: 0,
      running: 0,
      backlog: { waiting: 0, oldestMs: 0, isFull: false },
      leftOut: [],
    });
    const names = [...(await metrics.text()).matchAll(/^# TYPE (\w+)/gm)].map(([, name]) => name!);
    const ours = names.filter((name) => !/^(process|nodejs)_/.test(name));
    const section = text.slice(text.indexOf('## Metrics'), text.indexOf('## Log'));
    const told = [...section.matchAll(/^\| (`.*?`) \|/gm)].flatMap(([, cell]) => cell!.split(', '));
    expect(told.map((name) => name.replaceAll('`', '')).sort()).toEqual(ours.sort());
  });
});

describe('the table of settings in README.md', () => {
  const rows = [...read('README.md').matchAll(/^\| `([A-Z_]+)` \| ([^|]+) \| ([^|]+) \|$/gm)].map(
    ([, name, text]) => ({ name: name!, preset: /^`(.*)`$/.exec(text!)?.[1] ?? null }),
  );
  const unset = readConfig({});

  test('names every setting of the server once, in the order of server/config.ts', () => {
    expect(rows.map(({ name }) => name)).toEqual(SETTINGS);
  });

  test('gives each default as the server has it: setting it explicitly changes nothing', () => {
    expect(unset).toMatchObject({ ok: true, config: { allowedOrigins: [], storage: { kind: 'sqlite' } } });
    const wrong = rows.filter(
      ({ name, preset }) => preset !== null && !isDeepStrictEqual(readConfig({ [name]: preset }), unset),
    );
    expect(wrong).toEqual([]);
    const withoutValue = rows.filter(({ preset }) => preset === null).map(({ name }) => name);
    expect(withoutValue).toEqual(['DATABASE_URL', 'ALLOWED_ORIGINS', 'PUBLIC_ADDRESS', 'REVIEW_WORKERS']);
  });
});

test('the seed of the next full run of a proof has not been looked at', () => {
  const rows = read('tests/prove/RESULTS.md').split('\n');
  const spent = Object.entries(SEEDS).flatMap(([name, seeds]) => {
    const next = `\`${seeds.at(-1)?.seed}\``;
    return rows.filter((row) => new RegExp(`^\\| (\`prove -- )?${name}\\b`).test(row) && row.includes(next));
  });
  expect(spent).toEqual([]);
});
