// Faults of one server on its file: killed, asked to go, the file held by another program, the disk full, the tail torn.
import { copyFile, mkdir, stat, truncate } from 'node:fs/promises';
import path from 'node:path';
import Database from 'better-sqlite3';
import { openSqlite } from '../../../server/store/sqlite.ts';
import { temporaryFolder } from '../../kit/folder.ts';
import { storeOf } from '../../kit/stores.ts';
import { faultsIn } from '../../simulator/invariants.ts';
import { Crowd, type CrowdWish, restarts } from './crowd.ts';
import { type House, houseAt, limitFiles, pause } from './server-under-test.ts';
import type { Found, Input, Scenario } from './scenario.ts';

interface Place {
  readonly house: House;
  readonly crowd: Crowd;
  readonly file: string;
  readonly folder: string;
}

/** A server on a new file, full of people; afterwards everything is judged by what the file holds. */
async function onFile(
  { seed, size }: Input,
  wish: Partial<CrowdWish>,
  disturb: (place: Place) => Promise<number>,
): Promise<Found> {
  const { folder, discard } = await temporaryFolder();
  const house = await houseAt({ DATA_DIR: folder }, size);
  const file = path.join(folder, 'quadrille.db');
  try {
    await house.start();
    const rooms = size === 'full' ? 4 : 2;
    const crowd = await Crowd.gather({
      rooms,
      urls: [house.url],
      seed,
      thinking: 120,
      deadline: null,
      ...wish,
    });
    const happened = await disturb({ house, crowd, file, folder });
    const store = storeOf(openSqlite(file));
    const verdict = await crowd.finish(store, performance.now());
    await store.close();
    return { happened, verdict };
  } finally {
    await house.end('SIGKILL');
    await discard();
  }
}

export const killed: Scenario = {
  what: 'kill −9 at random points',
  run: (input) =>
    onFile(input, {}, async ({ house, crowd }) => {
      const kills = input.size === 'full' ? 200 : 4;
      for (let at = 0; at < kills; at++) {
        await pause(150 + crowd.random.below(900));
        await house.end('SIGKILL');
        await house.start();
      }
      return kills;
    }),
};

export const askedToGo: Scenario = {
  what: 'SIGTERM under load, a new process on the port',
  run: (input) =>
    onFile(input, {}, async ({ house, crowd }) => {
      const times = input.size === 'full' ? 20 : 2;
      for (let at = 0; at < times; at++) {
        await pause(200 + crowd.random.below(1200));
        const code = await house.end('SIGTERM');
        if (code !== 0) throw new Error(`the server ended with ${code} on SIGTERM`);
        await house.start();
      }
      if (restarts(crowd) < times) throw new Error('nobody was told of the restart');
      return times;
    }),
};

export const fileHeld: Scenario = {
  what: 'another program holds the file',
  run: (input) =>
    onFile(input, {}, async ({ crowd, file }) => {
      const times = input.size === 'full' ? 10 : 2;
      const other = new Database(file);
      for (let at = 0; at < times; at++) {
        await pause(crowd.random.below(400));
        other.exec('BEGIN IMMEDIATE');
        await pause(input.size === 'full' ? 3000 : 1200);
        other.exec('ROLLBACK');
      }
      other.close();
      return refusals(crowd);
    }),
};

export const diskFull: Scenario = {
  what: 'the disk is full',
  run: (input) =>
    onFile(input, {}, async ({ house, crowd, file }) => {
      const times = input.size === 'full' ? 10 : 2;
      for (let at = 0; at < times; at++) {
        await pause(300 + crowd.random.below(500));
        const { size } = await stat(`${file}-wal`);
        if (!limitFiles(house, size)) throw new Error('the size of files cannot be limited here');
        await pause(input.size === 'full' ? 3000 : 1200);
        limitFiles(house, null);
      }
      return refusals(crowd);
    }),
};

export const twice: Scenario = {
  what: 'commands sent twice, and once more when they are old',
  run: (input) =>
    onFile(input, { twice: 40 }, async ({ house, crowd }) => {
      await pause(input.size === 'full' ? 20_000 : 2500);
      await house.end('SIGKILL');
      await house.start();
      await pause(input.size === 'full' ? 20_000 : 2500);
      return crowd.residents.reduce((sum, { ordered }) => sum + repeated(ordered.values()), 0);
    }),
};

export const reloads: Scenario = {
  what: 'new lines before the old ones have ended',
  run: (input) =>
    onFile(input, {}, async ({ crowd }) => {
      const times = input.size === 'full' ? 500 : 40;
      for (let at = 0; at < times; at++) {
        crowd.residents[crowd.random.below(crowd.residents.length)]!.again();
        await pause(crowd.random.below(80));
      }
      return times;
    }),
};

export const tornTail: Scenario = {
  what: 'the log of writes torn at random bytes',
  run: (input) => {
    const faults: string[] = [];
    return onFile(input, {}, async ({ house, crowd, file, folder }) => {
      await pause(input.size === 'full' ? 6000 : 2500);
      await house.end('SIGKILL');
      const cuts = input.size === 'full' ? 300 : 25;
      const { size } = await stat(`${file}-wal`);
      for (let at = 0; at < cuts; at++) {
        const copy = path.join(folder, `torn-${at}`);
        await mkdir(copy);
        await copyFile(file, path.join(copy, 'quadrille.db'));
        await copyFile(`${file}-wal`, path.join(copy, 'quadrille.db-wal'));
        await truncate(path.join(copy, 'quadrille.db-wal'), crowd.random.below(size));
        faults.push(...(await tornFaults(path.join(copy, 'quadrille.db'), crowd.codes)));
      }
      await house.start();
      return cuts;
    }).then(({ happened, verdict }) => ({
      happened,
      verdict: { ...verdict, faults: [...faults, ...verdict.faults] },
    }));
  },
};

/** What is left of each room is a whole number of decisions from its beginning. */
async function tornFaults(file: string, codes: readonly string[]): Promise<string[]> {
  const store = storeOf(openSqlite(file));
  const faults: string[] = [];
  for (const code of codes) {
    const log = await store.load(code);
    const card = { id: '', name: '' };
    if (log !== null) faults.push(...faultsIn({ code, card, log, live: [], residents: [], settled: false }));
  }
  await store.close();
  return faults;
}

function refusals(crowd: Crowd): number {
  const answers = crowd.residents.flatMap(({ ordered }) =>
    [...ordered.values()].flatMap((one) => one.answers),
  );
  return answers.filter(({ code }) => code === 'try-later').length;
}

function repeated(ordered: Iterable<{ readonly answers: readonly unknown[] }>): number {
  let count = 0;
  for (const { answers } of ordered) if (answers.length > 1) count++;
  return count;
}
