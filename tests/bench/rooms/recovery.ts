// How long a killed server takes until all its rooms answer again.
import path from 'node:path';
import { newCode, systemEntropy } from '../../../server/secrets.ts';
import { openSqlite } from '../../../server/store/sqlite.ts';
import { ROOMS_PATH, roomPath } from '../../../shared-engine/protocol/paths.ts';
import { ALONE, openRoom } from '../../kit/http-client.ts';
import { storeOf } from '../../kit/logs.ts';
import { temporaryFolder } from '../../kit/temporary.ts';
import { playedLog } from './played-log.ts';
import { startServer } from './processes.ts';

const BUILT = new URL('../../../dist/server/main.js', import.meta.url).pathname;

/** Played in each room before the server is killed, the last of them not to its end. */
const ROUNDS = 20;
/** Rooms asked for at the same time. */
const AT_ONCE = 32;

/** Seconds from the start of the new process until each of `rooms` rooms with tiles on the table has answered. */
export async function recovery(rooms: number): Promise<number> {
  const { folder, discard } = await temporaryFolder();
  const settings = {
    HOST: '127.0.0.1',
    PORT: '0',
    DATA_DIR: folder,
    REQUESTS_PER_MINUTE: '0',
    ROOMS_PER_MINUTE: '0',
    REVIEW_DEPTH: 'quick',
  };
  const codes = await storePlayed(folder, rooms);
  // Killed while it has them all in memory and somebody has just opened another one.
  const first = await startServer([BUILT], settings);
  first.dropLines();
  await inLanes(rooms, (room) => isThere(first, codes[room]!));
  await openRoom(first, ALONE);
  await first.kill();
  const began = performance.now();
  const second = await startServer([BUILT], settings);
  second.dropLines();
  await inLanes(rooms, (room) => isThere(second, codes[room]!));
  const seconds = (performance.now() - began) / 1000;
  await second.kill();
  await discard();
  return Math.round(seconds * 100) / 100;
}

/** Puts rooms of one played log into the file of a server; answers their codes. */
async function storePlayed(folder: string, rooms: number): Promise<string[]> {
  const log = await playedLog(ROUNDS);
  const store = storeOf(openSqlite(path.join(folder, 'quadrille.db')));
  const codes = Array.from({ length: rooms }, () => newCode(systemEntropy));
  for (const code of codes) await store.create(code, log);
  await store.close();
  return codes;
}

async function isThere({ url }: { readonly url: string }, code: string): Promise<void> {
  const answer = await fetch(`${url}${roomPath(code)}`);
  if (!answer.ok) throw new Error(`A room below ${ROOMS_PATH} is not there: ${answer.status}.`);
  await answer.arrayBuffer();
}

async function inLanes(count: number, run: (index: number) => Promise<void>): Promise<void> {
  const lanes = Array.from({ length: AT_ONCE }, async (_, lane) => {
    for (let index = lane; index < count; index += AT_ONCE) await run(index);
  });
  await Promise.all(lanes);
}
