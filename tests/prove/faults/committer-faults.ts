// Faults of what many rooms store together: an answer lost, one bad room among good ones, a death while all are told.
import path from 'node:path';
import Database from 'better-sqlite3';
import { Aggregate } from '../../../server/aggregate/aggregate.ts';
import { Committer } from '../../../server/aggregate/committer.ts';
import { record } from '../../../server/aggregate/recorded.ts';
import { replay } from '../../../server/aggregate/replay.ts';
import { systemClock } from '../../../server/clock.ts';
import { createLog } from '../../../server/log.ts';
import type { Store, StoredLog } from '../../../server/ports.ts';
import type { RoomEvent } from '../../../server/room/event.ts';
import { FRIENDS_TABLE } from '../../../server/room/policy.ts';
import { ROOM, type Room, roomWith } from '../../../server/room/room.ts';
import { hold } from '../../../server/store/held.ts';
import { openSqlite } from '../../../server/store/sqlite.ts';
import { HOUSE_CARD } from '../../../shared-engine/card/house/card.ts';
import { STANDARD_TERMS } from '../../../shared-engine/rules/exchange/terms.ts';
import { storeOf } from '../../kit/logs.ts';
import { logOf } from '../../kit/room-logs.ts';
import { temporaryFolder } from '../../kit/temporary.ts';
import { violationsIn } from '../../simulator/invariants.ts';
import { withDatabase } from './database-faults.ts';
import { withFile } from './file-faults.ts';
import type { Scenario } from './scenario.ts';
import { pause } from './server-under-test.ts';

/** How long something is waited for that happens all the time while people play, in milliseconds. */
const PATIENCE_MS = 120_000;
/** Of fast players, so that several rooms have something to store at once. */
const BUSY = { maxThinkingMs: 60 } as const;

export const answersLost: Scenario = {
  title: 'commits carried out whose answer is lost with the connection',
  run: (input) =>
    withDatabase(input, BUSY, async ({ crowd, way }) => {
      const times = input.size === 'full' ? 60 : 4;
      for (let at = 1; at <= times; at++) {
        await pause(crowd.random.below(400));
        way.loseAnswerTo('quadrille append');
        if (!(await crowd.until(() => way.lost === at, PATIENCE_MS)))
          throw new Error('nothing was committed');
      }
      return way.lost;
    }),
};

/** Rooms of one commit, one of which the file does not take. */
const ROOMS = 8;

export const badNeighbor: Scenario = {
  title: 'one bad room in a commit of many',
  async run({ size }) {
    const { folder, discard } = await temporaryFolder();
    const location = path.join(folder, 'quadrille.db');
    const store = storeOf(openSqlite(location));
    const other = hold(new Database(location));
    const violations: string[] = [];
    const times = size === 'full' ? 200 : 10;
    try {
      for (let at = 0; at < times; at++) {
        const found = await withoutRoom(at % ROOMS, await openRooms(store, at), (sql) => other.exec(sql));
        violations.push(...found.map((violation) => `commit ${at}: ${violation}`));
      }
      return { happened: times, verdict: { violations } };
    } finally {
      other.close();
      await store.close();
      await discard();
    }
  },
};

interface Together {
  readonly rooms: readonly Room[];
  /** Rooms in each commit that the store was asked for. */
  readonly batches: readonly number[];
  violations(): Promise<string[]>;
}

function opening(): StoredLog {
  const terms = STANDARD_TERMS.friends;
  const opened: RoomEvent = {
    kind: 'opened',
    mode: 'friends',
    classCode: null,
    terms,
    card: { kind: 'house' },
  };
  return logOf(record([opened], { after: 0, at: systemClock.now() }));
}

/** New rooms that commit together. */
async function openRooms(store: Store, at: number): Promise<Together> {
  const type = roomWith(FRIENDS_TABLE);
  const batches: number[] = [];
  const commit: Store['commit'] = (batch) => {
    batches.push(batch.length);
    return store.commit(batch);
  };
  const log = createLog('silent');
  const ports = { store, committer: new Committer({ commit }), clock: systemClock, log };
  const rooms: Room[] = [];
  for (let room = 0; room < ROOMS; room++) {
    const code = `ROOM${at}N${room}`;
    await store.create(code, opening());
    rooms.push(new Aggregate(type, code, replay(ROOM, opening())!, ports));
  }
  const { id, name } = HOUSE_CARD;
  const evidence = { card: { id, name }, players: [], absentMs: 0, healed: true };
  return {
    rooms,
    batches,
    async violations() {
      const found = rooms.map(async ({ code, state }) =>
        violationsIn({ ...evidence, code, stored: (await store.history(code))!, live: [state] }),
      );
      return (await Promise.all(found)).flat();
    },
  };
}

/** Everybody sits down in one turn while the file takes no row with the name of whoever sits down in room `bad`. */
async function withoutRoom(
  bad: number,
  { rooms, batches, violations }: Together,
  exec: (sql: string) => void,
): Promise<string[]> {
  const sitDown = () =>
    Promise.all(
      rooms.map((room, n) => {
        const name = n === bad ? 'Wilma' : 'Tomas';
        return room.submit({ kind: 'take-seat', seat: 1, name, secretHash: '1'.repeat(64) }, '1/sit');
      }),
    );
  exec(`CREATE TRIGGER reject_row BEFORE INSERT ON log_row WHEN NEW.events LIKE '%Wilma%'
    BEGIN SELECT RAISE(ABORT, 'no row with this name'); END`);
  const first = await sitDown();
  exec('DROP TRIGGER reject_row');
  const again = await sitDown();
  return [
    ...(batches[0] === ROOMS ? [] : [`${batches[0]} rooms in the commit`]),
    ...first.flatMap(({ ok }, n) => (ok === (n !== bad) ? [] : [`room ${n} was answered ${ok}`])),
    ...again.flatMap(({ ok }, n) => (ok ? [] : [`room ${n} was rejected the second time`])),
    ...rooms.flatMap(({ state }, n) => (state.seq === 2 ? [] : [`room ${n} has ${state.seq} events`])),
    ...(await violations()),
  ];
}

/** A module, preloaded, that kills its process before the delta with the number in DIES_AT_DELTA leaves it. */
const DIES_WHILE_TELLING = `data:text/javascript,${encodeURIComponent(`
  import { Socket } from 'node:net';
  let left = Number(process.env.DIES_AT_DELTA ?? 0);
  const look = (chunk) => {
    if (left > 0 && chunk.includes('"kind":"delta"') && --left === 0) process.kill(process.pid, 'SIGKILL');
  };
  const { _write, _writev } = Socket.prototype;
  Socket.prototype._write = function (chunk, ...rest) {
    look(chunk);
    return _write.call(this, chunk, ...rest);
  };
  Socket.prototype._writev = function (chunks, ...rest) {
    for (const { chunk } of chunks) look(chunk);
    return _writev.call(this, chunks, ...rest);
  };`)}`;

export const halfTold: Scenario = {
  title: 'the process dies when some have been told of a commit and others have not',
  run: (input) =>
    withFile(
      input,
      BUSY,
      async ({ server, crowd }) => {
        const times = input.size === 'full' ? 60 : 3;
        let divided = 0;
        for (let at = 0; at < times; at++) {
          await server.end('SIGKILL');
          await server.start({ DIES_AT_DELTA: String(10 + crowd.random.below(60)) });
          if (!(await crowd.until(() => !server.isRunning(), PATIENCE_MS)))
            throw new Error('nobody was told');
          await pause(50);
          if (crowd.divided > 0) divided++;
        }
        await server.end('SIGKILL');
        await server.start();
        return divided;
      },
      DIES_WHILE_TELLING,
    ),
};
