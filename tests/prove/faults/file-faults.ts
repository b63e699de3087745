// Faults of one server on its file: killed, terminated, file locked by another program, disk full, tail torn.
import { copyFile, mkdir, stat, truncate } from 'node:fs/promises';
import path from 'node:path';
import Database from 'better-sqlite3';
import { hold } from '../../../server/store/held.ts';
import { openSqlite } from '../../../server/store/sqlite.ts';
import { storeOf } from '../../kit/logs.ts';
import { temporaryFolder } from '../../kit/temporary.ts';
import { violationsIn } from '../../simulator/invariants.ts';
import { Crowd, type CrowdOptions, restartCloses } from './crowd.ts';
import type { ProofInput, Result, Scenario } from './scenario.ts';
import {
  ABSENT_MS,
  limitFileSize,
  pause,
  type ServerUnderTest,
  serverUnderTest,
} from './server-under-test.ts';

interface FileScene {
  readonly server: ServerUnderTest;
  readonly crowd: Crowd;
  readonly file: string;
  readonly folder: string;
}

/** Runs a fault on a server with a new file and a crowd; afterward everything is checked against the file. */
export async function withFile(
  { seed, size }: ProofInput,
  wish: Partial<CrowdOptions>,
  disturb: (place: FileScene) => Promise<number>,
  preload: string | null = null,
): Promise<Result> {
  const { folder, discard } = await temporaryFolder();
  const server = await serverUnderTest({ DATA_DIR: folder }, size, preload);
  const file = path.join(folder, 'quadrille.db');
  try {
    await server.start();
    const rooms = size === 'full' ? 4 : 2;
    const crowd = await Crowd.gather({
      rooms,
      urls: [server.url],
      seed,
      maxThinkingMs: 120,
      deadline: null,
      ...wish,
    });
    const happened = await disturb({ server, crowd, file, folder });
    const store = storeOf(openSqlite(file, 'beside'));
    const verdict = await crowd.finish(store, performance.now());
    await store.close();
    return { happened, verdict };
  } finally {
    await server.end('SIGKILL');
    await discard();
  }
}

export const killed: Scenario = {
  title: 'kill −9 at random points',
  run: (input) =>
    withFile(input, {}, async ({ server, crowd }) => {
      const kills = input.size === 'full' ? 200 : 4;
      for (let at = 0; at < kills; at++) {
        await pause(150 + crowd.random.below(900));
        await server.end('SIGKILL');
        await server.start();
      }
      return kills;
    }),
};

export const terminated: Scenario = {
  title: 'SIGTERM under load, a new process on the port',
  run: (input) =>
    withFile(input, {}, async ({ server, crowd }) => {
      const times = input.size === 'full' ? 20 : 2;
      for (let at = 0; at < times; at++) {
        await pause(200 + crowd.random.below(1200));
        const code = await server.end('SIGTERM');
        if (code !== 0) throw new Error(`the server ended with ${code} on SIGTERM`);
        await server.start();
      }
      if (restartCloses(crowd) < times) throw new Error('nobody was told of the restart');
      return times;
    }),
};

export const fileLocked: Scenario = {
  title: 'another program holds the file',
  run: (input) =>
    withFile(input, {}, async ({ crowd, file }) => {
      const times = input.size === 'full' ? 10 : 2;
      const other = hold(new Database(file));
      for (let at = 0; at < times; at++) {
        await pause(crowd.random.below(400));
        other.exec('BEGIN IMMEDIATE');
        await pause(input.size === 'full' ? 3000 : 1200);
        other.exec('ROLLBACK');
      }
      other.close();
      return rejections(crowd);
    }),
};

export const diskFull: Scenario = {
  title: 'the disk is full',
  run: (input) =>
    withFile(input, {}, async ({ server, crowd, file }) => {
      const times = input.size === 'full' ? 10 : 2;
      for (let at = 0; at < times; at++) {
        await pause(300 + crowd.random.below(500));
        const { size } = await stat(`${file}-wal`);
        if (!limitFileSize(server, size)) throw new Error('the size of files cannot be limited here');
        await pause(input.size === 'full' ? 3000 : 1200);
        limitFileSize(server, null);
      }
      return rejections(crowd);
    }),
};

export const duplicates: Scenario = {
  title: 'commands sent twice, and once more when they are old',
  run: (input) =>
    withFile(input, { duplicatePercent: 40 }, async ({ server, crowd }) => {
      await pause(input.size === 'full' ? 20_000 : 2500);
      await server.end('SIGKILL');
      await server.start();
      await pause(input.size === 'full' ? 20_000 : 2500);
      return crowd.players.reduce((sum, { sent }) => sum + answeredTwice(sent.values()), 0);
    }),
};

export const reloads: Scenario = {
  title: 'new connections before the old ones have closed',
  run: (input) =>
    withFile(input, {}, async ({ crowd }) => {
      const times = input.size === 'full' ? 500 : 40;
      for (let at = 0; at < times; at++) {
        crowd.players[crowd.random.below(crowd.players.length)]!.reconnect();
        await pause(crowd.random.below(80));
      }
      return times;
    }),
};

export const tornTail: Scenario = {
  title: 'the log of writes torn at random bytes',
  run: (input) => {
    const violations: string[] = [];
    return withFile(input, {}, async ({ server, crowd, file, folder }) => {
      await pause(input.size === 'full' ? 6000 : 2500);
      await server.end('SIGKILL');
      const cuts = input.size === 'full' ? 300 : 25;
      const { size } = await stat(`${file}-wal`);
      for (let at = 0; at < cuts; at++) {
        const copy = path.join(folder, `torn-${at}`);
        await mkdir(copy);
        await copyFile(file, path.join(copy, 'quadrille.db'));
        await copyFile(`${file}-wal`, path.join(copy, 'quadrille.db-wal'));
        await truncate(path.join(copy, 'quadrille.db-wal'), crowd.random.below(size));
        violations.push(...(await tornFileViolations(path.join(copy, 'quadrille.db'), crowd.codes)));
      }
      await server.start();
      return cuts;
    }).then(({ happened, verdict }) => ({
      happened,
      verdict: { ...verdict, violations: [...violations, ...verdict.violations] },
    }));
  },
};

/** Checks that what is left of each room is a whole number of decisions from its beginning. */
async function tornFileViolations(file: string, codes: readonly string[]): Promise<string[]> {
  const store = storeOf(openSqlite(file));
  const violations: string[] = [];
  for (const code of codes) {
    const stored = await store.history(code);
    const card = { id: '', name: '' };
    if (stored !== null)
      violations.push(
        ...violationsIn({ code, card, stored, live: [], players: [], absentMs: ABSENT_MS, healed: false }),
      );
  }
  await store.close();
  return violations;
}

function rejections(crowd: Crowd): number {
  const answers = crowd.players.flatMap(({ sent }) => [...sent.values()].flatMap((one) => one.answers));
  return answers.filter(({ code }) => code === 'try-later').length;
}

function answeredTwice(ordered: Iterable<{ readonly answers: readonly unknown[] }>): number {
  let count = 0;
  for (const { answers } of ordered) if (answers.length > 1) count++;
  return count;
}
