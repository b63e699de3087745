// What tests run is built from the source as it is now.
import { mkdirSync, readdirSync, utimesSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { beforeEach, expect, test } from 'vitest';
import { builtPageProblem } from '../../client/tools/built-page.ts';
import { removeOrphans } from '../kit/build-server.ts';
import { temporaryFolder } from '../kit/temporary.ts';

let place: Awaited<ReturnType<typeof temporaryFolder>>;
beforeEach(async () => {
  place = await temporaryFolder();
  return () => place.discard();
});

function write(name: string, time: number): string {
  const file = path.join(place.folder, name);
  mkdirSync(path.dirname(file), { recursive: true });
  writeFileSync(file, '');
  utimesSync(file, time, time);
  return file;
}

test('a page that is missing, or older than a file it is built from, is named with what to run', () => {
  write('client/table/rack.tsx', 10);
  write('client/tools/shots.ts', 30);
  const source = [path.join(place.folder, 'client')];
  const page = path.join(place.folder, 'index.html');
  expect(builtPageProblem(page, source)).toMatch(/no built page; run `npm run build`/);
  write('index.html', 20);
  expect(builtPageProblem(page, source)).toBeNull();
  write('client/table/rack.css', 21);
  expect(builtPageProblem(page, source)).toMatch(/older than .*rack\.css; run `npm run build`/);
});

test('built modules whose source is gone are deleted, and nothing else', () => {
  for (const name of ['room/seat.ts', 'bot.mts']) write(`source/${name}`, 1);
  const kept = ['.tsbuildinfo', 'bot.d.mts', 'bot.mjs', 'room/seat.d.ts', 'room/seat.js'];
  for (const name of [...kept, 'room/line.js', 'room/line.d.ts', 'bot.js']) write(`built/${name}`, 1);
  removeOrphans(path.join(place.folder, 'built'), path.join(place.folder, 'source'));
  const left = readdirSync(path.join(place.folder, 'built'), { recursive: true, encoding: 'utf8' });
  expect(left.filter((name) => name !== 'room').sort()).toEqual(kept);
});
