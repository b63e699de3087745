// RULES.md and test titles quote each other: no rule without a test, and no test of a rule that is not there.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';

const root = new URL('../../', import.meta.url).pathname;
const ID = /\b[SDCBOYZWRLTKVEPHFG][1-9]\b/g;

function testFiles(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith('.test.ts'))
    .map((entry) => join(entry.parentPath, entry.name));
}

const written = new Set(
  [...readFileSync(join(root, 'shared-engine/RULES.md'), 'utf8').matchAll(/^- \*\*([A-Z]\d)\*\*/gm)].map(
    (m) => m[1]!,
  ),
);
const TITLE = /\b(?:it|test)(?:\.each[\s\S]*?\](?: as const)?\)|)\(\s*(['`])(.*?)\1/g;
const titles = testFiles(join(root, 'tests')).flatMap((file) =>
  [...readFileSync(file, 'utf8').matchAll(TITLE)].map((match) => match[2]!),
);
const quoted = new Set(titles.flatMap((title) => title.match(ID) ?? []));

test('RULES.md lists more than 25 rules', () => {
  expect(written.size).toBeGreaterThan(25);
});

test('every rule of RULES.md is quoted by the title of a test', () => {
  expect([...written].filter((id) => !quoted.has(id))).toEqual([]);
});

test('every rule id in a test title is in RULES.md', () => {
  expect([...quoted].filter((id) => !written.has(id))).toEqual([]);
});
