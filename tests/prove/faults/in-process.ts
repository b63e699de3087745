// Faults that need no process of their own: bots that fail, and a file that an unreleased version has written.
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import Database from 'better-sqlite3';
import { hold } from '../../../server/store/held.ts';
import { openSqlite } from '../../../server/store/sqlite.ts';
import { temporaryFolder } from '../../kit/temporary.ts';
import { simulate } from '../../simulator/simulation.ts';
import type { Scenario } from './scenario.ts';

export const badBots: Scenario = {
  title: 'bots that throw, hang or answer nonsense, among all other faults',
  async run({ seed, size }) {
    const evenings = size === 'full' ? 200 : 10;
    const violations: string[] = [];
    let asked = 0;
    for (let at = 0; at < evenings; at++) {
      const outcome = await simulate(`${seed}/${at}`, {
        bots: {
          choose() {
            asked++;
            if (asked % 3 === 0) return new Promise(() => {});
            if (asked % 3 === 1) throw new Error('no idea');
            return Promise.resolve({ kind: 'pass', step: 'first-right', tiles: ['joker'], blind: 0 });
          },
        },
      });
      violations.push(...outcome.violations);
    }
    return { happened: asked, verdict: { violations } };
  },
};

/** A file with our mark and the table of rooms that versions before the first release had. */
function writeUnreleasedFile(location: string): void {
  const file = hold(new Database(location));
  file.exec('CREATE TABLE room (id INTEGER PRIMARY KEY, code TEXT NOT NULL)');
  file.exec(`PRAGMA application_id = ${0x51756164}; PRAGMA user_version = 1`);
  file.close();
}

export const unreleasedFile: Scenario = {
  title: 'a file of an unreleased version is rejected in words and left as it was',
  async run() {
    const { folder, discard } = await temporaryFolder();
    try {
      const location = path.join(folder, 'quadrille.db');
      writeUnreleasedFile(location);
      const before = await readFile(location);
      const opened = openSqlite(location);
      if (opened.ok) await opened.store.close();
      const violations = opened.ok ? ['the file was opened'] : [];
      if (!opened.ok && !opened.message.includes(location)) violations.push('the message names no file');
      if (!before.equals(await readFile(location))) violations.push('the file has changed');
      return { happened: 1, verdict: { violations } };
    } finally {
      await discard();
    }
  },
};
