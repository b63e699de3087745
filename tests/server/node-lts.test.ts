// The built server on the Node that the image and the guide use, whichever one runs the tests.
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { afterEach, beforeAll, expect, test } from 'vitest';
import { deal, isClosed, playOn, tableOfFour } from '../kit/http-client.ts';
import { LTS, nodeLts } from '../kit/node-lts.ts';
import { BUILT_MAIN, type ServerProcess, startProcess } from '../kit/server-process.ts';
import { temporaryFolder } from '../kit/temporary.ts';

let node: string;
beforeAll(async () => {
  node = await nodeLts();
});
let server: ServerProcess | null = null;
afterEach(() => {
  server?.child.kill('SIGKILL');
});

function start(environment: Readonly<Record<string, string>>): ServerProcess {
  server = startProcess(environment, [BUILT_MAIN], node);
  return server;
}

function ask(expression: string): string {
  return execFileSync(node, ['-p', expression], { encoding: 'utf8' }).trim();
}

test('a whole round is played and reviewed on it', async () => {
  const major = Number.parseInt(ask('process.versions.node'), 10);
  expect(major).toBeGreaterThanOrEqual(LTS);
  const { url: listening, child, ended } = start({ REVIEW_DEPTH: 'quick' });
  const url = await listening;
  const { peers } = await tableOfFour({ url });
  await deal(peers);
  await Promise.all(peers.map((peer) => playOn(peer, 'another Node')));
  expect(peers.every(isClosed)).toBe(true);
  for (const { review } of await Promise.all(peers.map((peer) => peer.review()))) {
    expect(review.choices.length).toBeGreaterThan(2);
  }
  expect((await fetch(`${url}/readyz`)).status).toBe(200);
  child.kill('SIGTERM');
  expect(await ended).toEqual([0, null]);
});

test('a store in SQLite opens on the Node that SQLite is built for, and another one is told what to do', async () => {
  const place = await temporaryFolder();
  const { url, stderr, ended } = start({ STORE: 'sqlite', DATA_DIR: place.folder });
  const version = ask('process.version');
  if (ask('process.versions.modules') === process.versions.modules) expect(await url).toMatch(/^http/);
  else {
    expect(await ended).toEqual([1, null]);
    expect(stderr()).toBe(
      `SQLite is not built for this version of Node (${version}); run npm ci with it, then start again.\n`,
    );
  }
  await place.discard();
});

test('the image, the workflow and the guide name it', () => {
  const read = (file: string) => readFileSync(new URL(`../../${file}`, import.meta.url), 'utf8');
  const images = [...read('docker/Dockerfile').matchAll(/^FROM node:(\d+)/gm)].map(([, major]) =>
    Number(major),
  );
  expect(images).toEqual([LTS, LTS]);
  expect(read('.github/workflows/ci.yml')).toContain(`node: [20, ${LTS}]`);
  expect(read('README.md')).toContain(`Node ${LTS}`);
  expect(read('server/OPERATING.md')).toContain(`Node ${LTS}`);
});
