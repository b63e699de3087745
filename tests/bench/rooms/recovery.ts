// How long a killed server takes until all its rooms answer again.
import { ROOMS_PATH, roomPath } from '../../../shared-engine/protocol/paths.ts';
import { ALONE, openRoom } from '../../kit/http-client.ts';
import { temporaryFolder } from '../../kit/temporary.ts';
import { startServer } from './processes.ts';

const BUILT = new URL('../../../dist/server/main.js', import.meta.url).pathname;

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
  const first = await startServer([BUILT], settings);
  const codes: string[] = [];
  await inLanes(rooms, async () => {
    codes.push((await openRoom(first, ALONE)).code);
  });
  await first.kill();
  const began = performance.now();
  const second = await startServer([BUILT], settings);
  await inLanes(rooms, async (room) => {
    const answer = await fetch(`${second.url}${roomPath(codes[room]!)}`);
    if (!answer.ok) throw new Error(`A room below ${ROOMS_PATH} did not come back: ${answer.status}.`);
    await answer.arrayBuffer();
  });
  const seconds = (performance.now() - began) / 1000;
  await second.kill();
  await discard();
  return Math.round(seconds * 100) / 100;
}

async function inLanes(count: number, run: (index: number) => Promise<void>): Promise<void> {
  const lanes = Array.from({ length: AT_ONCE }, async (_, lane) => {
    for (let index = lane; index < count; index += AT_ONCE) await run(index);
  });
  await Promise.all(lanes);
}
