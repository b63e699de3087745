// server/RULES.md and the tests quote each other: no rule without a test, no quoted rule that is not written.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';

const root = new URL('../../', import.meta.url).pathname;
const ID = /\b(?:PR|RS|ID|DL|ST|LM|SC|AC|AN|WK|BT|TG|SD|CA|TK|CH|PD|TH|CB)[1-9]\b/g;
/** A title: of a test, of one test for each row of a table, or of a group of tests. */
const TITLE = /\b(?:test|describe)(?:\.each\b[\s\S]*?\)|)\(\s*(['`])(.*?)\1/g;

/** The tests, and the suite that all stores share. */
const files = readdirSync(join(root, 'tests'), { withFileTypes: true, recursive: true })
  .filter(({ name }) => /(?:\.test|-contract)\.ts$/.test(name))
  .map((entry) => join(entry.parentPath, entry.name));

const written = [
  ...readFileSync(join(root, 'server/RULES.md'), 'utf8').matchAll(/^- \*\*([A-Z]+\d)\*\*/gm),
].map((match) => match[1]!);
const quoted = new Set(
  files.flatMap((file) =>
    [...readFileSync(file, 'utf8').matchAll(TITLE)].flatMap((match) => match[2]!.match(ID) ?? []),
  ),
);

test('server/RULES.md holds the rules of the room, each under an id of its own', () => {
  expect(written.length).toBeGreaterThan(25);
  expect(new Set(written).size).toBe(written.length);
});

test('every rule of the room is quoted by the title of a test', () => {
  expect(written.filter((id) => !quoted.has(id))).toEqual([]);
});

test('every rule of the room that a title quotes is written in server/RULES.md', () => {
  expect([...quoted].filter((id) => !written.includes(id))).toEqual([]);
});
