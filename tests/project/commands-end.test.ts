// Every benchmark and proof ends by itself: all of them print their last line in one place, which sees to it.
import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

/** A command from source; `status` is null where it did not end by itself. */
function run(...words: string[]) {
  const cwd = fileURLToPath(new URL('../../', import.meta.url));
  const options = { cwd, encoding: 'utf8', timeout: 50_000, killSignal: 'SIGKILL' } as const;
  const { status, stdout, stderr } = spawnSync(process.execPath, ['--import', 'tsx', ...words], options);
  return { status, stdout, stderr };
}

test('a command whose child was killed ends without a word when nothing is left open', () => {
  const { status, stdout, stderr } = run('tests/kit/leaky-command.ts');
  expect([status, JSON.parse(stdout), stderr]).toEqual([0, { ok: true }, '']);
});

test('a command that leaves a timer, a listener and a child open names them, fails and ends all the same', () => {
  const { status, stdout, stderr } = run('tests/kit/leaky-command.ts', 'leak');
  expect([status, JSON.parse(stdout)]).toEqual([3, { ok: true }]);
  for (const kind of ['1 ProcessWrap', '1 TCPServerWrap', '1 Timeout']) expect(stderr).toContain(kind);
  expect(stderr).toMatch(/^Left open after the last line: /);
});

test('every benchmark and proof prints through the one place that names what is left open, and none cuts it short', () => {
  const tests = fileURLToPath(new URL('../', import.meta.url));
  const runners = ['bench', 'prove'].map((command) => path.join(tests, command, 'run.ts'));
  for (const runner of runners) expect(readFileSync(runner, 'utf8')).toContain('printLast({ name,');
  const files = ['bench', 'prove', 'simulator'].flatMap((folder) =>
    readdirSync(path.join(tests, folder), { recursive: true, encoding: 'utf8' })
      .filter((file) => file.endsWith('.ts') && file !== path.join('rooms', 'driver.ts'))
      // The peers of the benchmark, once somebody has run it.
      .filter((file) => !file.includes('node_modules'))
      .map((file) => path.join(tests, folder, file)),
  );
  expect(files).toEqual(expect.arrayContaining(runners));
  for (const file of files) {
    const found = /process\.stdout|console\.log|process\.exit\(/.exec(readFileSync(file, 'utf8'))?.[0];
    expect([file, found]).toEqual([file, undefined]);
  }
});
