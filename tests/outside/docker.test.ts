// The container files against general-purpose linters (dockerfile-utils, dclint), and against the scripts they rely on.
import { existsSync, readFileSync } from 'node:fs';
import { DCLinter } from 'dclint';
import { validate } from 'dockerfile-utils';
import { expect, test } from 'vitest';

const root = new URL('../../', import.meta.url).pathname;
const dockerfile = readFileSync(`${root}docker/Dockerfile`, 'utf8');

test('the Dockerfile has nothing the linter objects to', () => {
  expect(validate(dockerfile)).toEqual([]);
  expect(validate('FORM node\nRUN')).not.toEqual([]);
});

test('everything the Dockerfile copies is there', () => {
  const copied = [...dockerfile.matchAll(/^COPY (?!--from)(.+) \S+$/gm)].flatMap((match) =>
    match[1]!.split(' '),
  );
  expect(copied.length).toBeGreaterThan(5);
  expect(copied.filter((path) => !existsSync(root + path))).toEqual([]);
});

test('the image builds by the same tools as the build script', () => {
  const { build } = JSON.parse(readFileSync(`${root}package.json`, 'utf8')).scripts;
  for (const tool of ['tsc -b', 'vite build --config client/vite.config.ts']) {
    expect(build).toContain(tool);
    expect(dockerfile).toContain(tool);
  }
});

test('the compose file has nothing the linter calls an error', () => {
  const linter = new DCLinter({
    rules: {},
    quiet: false,
    debug: false,
    exclude: [],
  });
  const results = linter.lintFiles([`${root}docker/compose.yaml`], false);
  expect(results).toHaveLength(1);
  expect(results[0]!.messages.filter((message: { type: string }) => message.type === 'error')).toEqual([]);
});
