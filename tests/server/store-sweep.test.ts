// What a server asks its database once a minute: of logs that are not due it reads none, however many there are.
import pg from 'pg';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { postgresStore } from '../../server/store/postgres.ts';
import { openPool } from '../../server/store/postgres-pool.ts';
import { REMOVED_AT_ONCE, SQL } from '../../server/store/postgres-statements.ts';
import { HOUR_MS } from '../../server/store/schema.ts';
import { openFile } from '../../server/store/sqlite-file.ts';
import { SWEEPS } from '../../server/store/sqlite-statements.ts';
import { startPostgres, type TestPostgres } from '../kit/postgres.ts';
import { temporaryFolder } from '../kit/temporary.ts';

/** Bytes that each log counts. */
const BYTES = 1000;
/** So many statements a connection plans anew each time; from then on it may keep a plan for all values. */
const PLANNED_ANEW = 5;

let postgres: TestPostgres;
beforeAll(async () => {
  postgres = await startPostgres();
});
afterAll(() => postgres.discard());

/** Rooms and classes in turn, one touched in each hour, numbered from 1; and a statement that was asked often. */
async function storing(logs: number) {
  const url = await postgres.newDatabase();
  const opened = await openPool(url);
  if (!opened.ok) throw new Error(opened.message);
  await postgres.run(
    `INSERT INTO quadrille.log (code, kind, version, touched_at, bytes)
      SELECT 'LOG' || log, CASE log % 2 WHEN 0 THEN 'room' ELSE 'class-table' END, 1, log::bigint * ${HOUR_MS}, ${BYTES}
      FROM generate_series(1, ${logs}) AS log;
    UPDATE quadrille.stored_bytes SET bytes = ${logs * BYTES};
    ANALYZE quadrille.log`,
    url,
  );
  return { url, store: postgresStore(opened.pool) };
}

/** Rows of `log` that the sweep's statement reads. */
async function rowsRead(url: string, name: 'removeOlder' | 'removeBeyond', values: readonly number[]) {
  const client = new pg.Client(url);
  await client.connect();
  const given = (all: readonly number[]) => `EXECUTE sweep (${all.join(', ')})`;
  await client.query(`PREPARE sweep AS ${SQL[name]}`);
  const nothing = name === 'removeOlder' ? [0, 0] : [Number.MAX_SAFE_INTEGER, REMOVED_AT_ONCE];
  for (let n = 0; n <= PLANNED_ANEW; n++) await client.query(given(nothing));
  const { rows } = await client.query(`EXPLAIN (ANALYZE, FORMAT JSON) ${given(values)}`);
  await client.end();
  return readIn(rows[0]['QUERY PLAN'][0].Plan);
}

interface PlanNode {
  readonly 'Node Type': string;
  readonly 'Relation Name'?: string;
  readonly 'Actual Rows': number;
  readonly 'Actual Loops': number;
  readonly 'Rows Removed by Filter'?: number;
  readonly Plans?: readonly PlanNode[];
}

function readIn(node: PlanNode): number {
  const below = (node.Plans ?? []).reduce((sum, plan) => sum + readIn(plan), 0);
  if (node['Relation Name'] !== 'log' || !node['Node Type'].endsWith('Scan')) return below;
  return below + (node['Actual Rows'] + (node['Rows Removed by Filter'] ?? 0)) * node['Actual Loops'];
}

describe('in PostgreSQL', () => {
  test('LM4 ST7 a sweep reads no more of ten times as many logs that are not due', async () => {
    const few = await storing(3_000);
    const many = await storing(30_000);
    const both = (name: 'removeOlder' | 'removeBeyond', ...values: (readonly number[])[]) =>
      Promise.all([rowsRead(few.url, name, values[0]!), rowsRead(many.url, name, values.at(-1)!)]);
    expect(await both('removeOlder', [0, 0])).toEqual([0, 0]);
    expect(
      await both('removeBeyond', [3_000 * BYTES, REMOVED_AT_ONCE], [30_000 * BYTES, REMOVED_AT_ONCE]),
    ).toEqual([0, 0]);
    // The rooms among the first twenty logs, and the classes among the first four.
    const [ofFew, ofMany] = await both('removeOlder', [4 * HOUR_MS + 1, 20 * HOUR_MS + 1]);
    expect(ofMany).toBe(ofFew);
    expect(ofFew).toBeLessThan(30);
    expect([await few.store.count(), await many.store.count()]).toEqual([2_988, 29_988]);
    const beyond = await both(
      'removeBeyond',
      [2_980 * BYTES, REMOVED_AT_ONCE],
      [29_980 * BYTES, REMOVED_AT_ONCE],
    );
    expect(beyond[1]).toBe(beyond[0]);
    expect(beyond[0]).toBeLessThan(2 * REMOVED_AT_ONCE);
    expect([await few.store.count(), await many.store.count()]).toEqual([2_980, 29_980]);
    await Promise.all([few.store.close(), many.store.close()]);
  });

  test('LM4 more than are removed at once are removed all the same, once, by two servers that sweep together', async () => {
    const { url, store } = await storing(3 * REMOVED_AT_ONCE);
    const opened = await openPool(url);
    if (!opened.ok) throw new Error(opened.message);
    const other = postgresStore(opened.pool);
    const left = 50;
    const removed = await Promise.all([store, other].map((one) => one.removeBeyond(left * BYTES)));
    expect(removed[0]! + removed[1]!).toBe(3 * REMOVED_AT_ONCE - left);
    expect(await store.count()).toBe(left);
    expect(await store.codes(null, 1)).toEqual(['LOG551']);
    await Promise.all([store.close(), other.close()]);
  });
});

test('LM4 ST7 a sweep of an SQLite file finds by an index what is due', async () => {
  const { folder, discard } = await temporaryFolder();
  const opened = openFile(`${folder}/rooms.db`, 'alone');
  if (!opened.ok) throw new Error(opened.message);
  const plan = (text: string, ...values: number[]) =>
    opened.file
      .prepare<number[], { detail: string }>(`EXPLAIN QUERY PLAN ${text}`)
      .all(...values)
      .map(({ detail }) => detail);
  const searched = 'SEARCH log USING INDEX log_kind_hour (kind=? AND touched_hour<?)';
  expect(plan(SWEEPS.older, 1, 1, 1, 1).filter((step) => /\blog\b/.test(step))).toEqual([searched, searched]);
  // From the oldest on, as far as it is read.
  expect(plan(SWEEPS.oldestFirst)[0]).toBe('SCAN log USING INDEX log_hour');
  opened.close();
  await discard();
});
