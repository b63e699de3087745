// Faults that need no process of their own: bad bots, and a log that the first version of the server has written.
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import Database from 'better-sqlite3';
import { z } from 'zod';
import type { Logged } from '../../../server/room/event.ts';
import { MIGRATIONS } from '../../../server/store/schema.ts';
import { openSqlite } from '../../../server/store/sqlite.ts';
import { eventFrom } from '../../../server/store/stored-event.ts';
import { HOUSE_CARD, SEATS } from '../../../shared-engine/index.ts';
import { temporaryFolder } from '../../kit/folder.ts';
import { playOn, sitDown } from '../../kit/http-client.ts';
import { startServer } from '../../kit/server.ts';
import { storeOf } from '../../kit/stores.ts';
import { violationsIn } from '../../simulator/invariants.ts';
import { simulate } from '../../simulator/simulation.ts';
import type { Scenario } from './scenario.ts';

export const badBots: Scenario = {
  title: 'bots that throw, hang or answer nonsense, under every other trouble',
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

const storedSchema = z.object({
  code: z.string(),
  secrets: z.array(z.string()),
  log: z.array(
    z.object({
      seq: z.int(),
      at: z.int(),
      command: z.string().nullable(),
      event: z.looseObject({ kind: z.string() }),
    }),
  ),
});

/** A file as the first version laid it out, with a round stopped at the vote. */
async function firstVersionFile(location: string) {
  const text = await readFile(new URL('../../kit/first-version.json', import.meta.url), 'utf8');
  const { code, secrets, log } = storedSchema.parse(JSON.parse(text));
  const file = new Database(location);
  file.exec(MIGRATIONS[0]!.sqlite);
  file.pragma(`application_id = ${0x51756164}`);
  file.pragma('user_version = 1');
  file
    .prepare('INSERT INTO room (id, code, version, touched_at) VALUES (1, ?, ?, ?)')
    .run(code, log.length, log.at(-1)!.at);
  const insert = file.prepare(
    'INSERT INTO event (room, seq, cmd_id, kind, body, at) VALUES (1, ?, ?, ?, ?, ?)',
  );
  for (const { seq, at, command, event } of log) {
    insert.run(seq, command, event.kind, JSON.stringify(event), at);
  }
  file.close();
  const events = log.map((logged): Logged => ({ ...logged, event: eventFrom(JSON.stringify(logged.event)) }));
  return { code, secrets, events };
}

export const firstVersion: Scenario = {
  title: 'a file written by the first version, played on to the close',
  async run({ seed }) {
    const { folder, discard } = await temporaryFolder();
    const location = path.join(folder, 'quadrille.db');
    const { code, secrets, events } = await firstVersionFile(location);
    const store = storeOf(openSqlite(location));
    const server = await startServer({ seed, store });
    try {
      const guests = secrets.map((secret, seat) => ({ code, seat: SEATS[seat]!, secret }));
      const peers = await Promise.all(guests.map((guest) => sitDown(server, guest)));
      await Promise.all(peers.map((peer) => playOn(peer, seed)));
      const log = (await store.load(code))!;
      const { id, name } = HOUSE_CARD;
      const violations = violationsIn({ code, card: { id, name }, log, live: [], players: [], healed: true });
      const kept = JSON.stringify(log.slice(0, events.length)) === JSON.stringify(events);
      return {
        happened: log.length - events.length,
        verdict: {
          violations: kept ? violations : ['what the first version kept has changed', ...violations],
        },
      };
    } finally {
      await server.stop();
      await store.close();
      await discard();
    }
  },
};
