// Part 10: a second server on the file of a running one, and a backup taken while that one writes.
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync } from 'node:fs';
import path from 'node:path';
import { type Guest, openRoom, ticketFor } from '../../kit/http-client.ts';
import { builtCommand, startProcess } from '../../kit/server-process.ts';
import { type Attack, findingsOf, UNLIMITED } from './siege.ts';

const tell = findingsOf('10 one file');

export const secondServer: Attack = async ({ server, start, folder, size }) => {
  const { dataFolder } = server;
  const second = startProcess({ STORE: '', DATA_DIR: dataFolder });
  const [code] = await second.ended;
  const said = second.stderr().trim();

  const before: Guest[] = [];
  for (let n = 0; n < (size === 'full' ? 200 : 10); n++) before.push(await openRoom(server));
  const restored = path.join(await folder(), 'restored');
  mkdirSync(restored);
  const copying = spawn(process.execPath, [builtCommand('backup'), path.join(restored, 'quadrille.db')], {
    env: { ...process.env, STORE: '', DATABASE_URL: '', DATA_DIR: dataFolder },
    stdio: 'ignore',
  });
  const ended = once(copying, 'exit');
  let written = 0;
  for (; copying.exitCode === null; written++) await openRoom(server);
  await ended;
  const copy = await start({ ...UNLIMITED, DATA_DIR: restored });
  const seats = await Promise.all(before.map(async (guest) => (await ticketFor(copy, guest)).seat));
  const found = seats.filter((seat) => seat === 0).length;
  return [
    tell(
      'a second server on one SQLite file',
      'ends with 1 and one sentence',
      `${code}: ${said.replace(dataFolder, 'DATA_DIR')}`,
      code === 1 && /in use by another server/.test(said) && !said.includes('\n'),
    ),
    tell(
      `rooms of before in a backup taken while ${written} more were opened, with their seats`,
      `${before.length}`,
      found,
      found === before.length && written > 0,
    ),
  ];
};
