// The event-sourced loop that rooms and classes share, on a counter: repeated ids, races, failures, snapshots.
import { expect, test } from 'vitest';
import { z } from 'zod';
import { Aggregate, type AggregatePorts } from '../../server/aggregate/aggregate.ts';
import { Committer, type Member } from '../../server/aggregate/committer.ts';
import { accept, reject } from '../../server/aggregate/decision.ts';
import { replay } from '../../server/aggregate/replay.ts';
import { storedJson } from '../../server/aggregate/stored-json.ts';
import type { AggregateType } from '../../server/aggregate/type.ts';
import { createLog } from '../../server/log.ts';
import type { Store, StoredLog } from '../../server/ports.ts';
import { type MemoryPlace, memoryStore } from '../../server/store/memory.ts';
import { FakeClock } from '../kit/clock.ts';

const CODE = 'ABCDEFGH';
/** A counter that nobody may make larger than this. */
const LIMIT = 1000;

interface Counter {
  readonly seq: number;
  readonly total: number;
}
type Added = { readonly kind: 'added'; readonly by: number } | { readonly kind: 'rested' };
type Add = { readonly by: number };

const event = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('added'), by: z.int() }),
  z.strictObject({ kind: z.literal('rested') }),
]);
const counter = z.strictObject({ seq: z.int(), total: z.int() });

/** Adding nothing rests, where loading may begin. */
const COUNTER: AggregateType<Counter, Added, Add> = {
  kinds: ['room'],
  codec: {
    textOf: (events) => JSON.stringify(events),
    eventsFrom: (text) => storedJson(z.array(event), text),
  },
  decide(state, { by }) {
    if (by < 0) throw new Error('bam-1 cannot be taken away');
    if (state.total + by > LIMIT) return reject('table-full');
    return accept<Added>(by === 0 ? [{ kind: 'rested' }] : [{ kind: 'added', by }]);
  },
  begin: ({ seq }) => ({ seq, total: 0 }),
  evolve: ({ total }, recorded) => {
    const { seq } = recorded;
    return { seq, total: recorded.event.kind === 'added' ? total + recorded.event.by : total };
  },
  startsAnew: ({ kind }) => kind === 'rested',
  snapshotOf: (state) => JSON.stringify(state),
  restore: (_, text) => storedJson(counter, text),
};

const OPENED: StoredLog = {
  kind: 'room',
  snapshot: null,
  rows: [{ after: 0, version: 1, at: 0, commands: [], events: '[{"kind":"rested"}]' }],
};

type FaultyStore = Store & { faults: { before: number; after: number } };

/** A store that fails so many commits, before or after they are stored. */
function faulty(store: Store): FaultyStore {
  const faults = { before: 0, after: 0 };
  return {
    ...store,
    faults,
    async commit(batch) {
      if (faults.before > 0 && faults.before--) throw new Error('away');
      const outcomes = await store.commit(batch);
      if (faults.after > 0 && faults.after--) throw new Error('the answer was lost');
      return outcomes;
    },
  };
}

async function counters(servers: number) {
  const place: MemoryPlace = new Map();
  const store = faulty(memoryStore(place));
  await store.create(CODE, OPENED);
  const logged: string[] = [];
  const log = createLog('trace', { write: (line) => void logged.push(line) });
  const open = async () => {
    const ports = { store, committer: new Committer(store), clock: new FakeClock(), log };
    return new Aggregate(COUNTER, CODE, replay(COUNTER, (await store.load(CODE))!)!, ports);
  };
  const opened = await Promise.all(Array.from({ length: servers }, open));
  return { store, opened, open, logged, rows: async () => (await store.history(CODE))!.rows };
}

/** Several counters in one store; `join` opens them all at a server whose commits go through this committer. */
async function table(codes: readonly string[]) {
  const store = memoryStore();
  for (const code of codes) await store.create(code, OPENED);
  const log = createLog('silent');
  const join = (committer: AggregatePorts['committer']) => {
    const ports = { store, committer, clock: new FakeClock(), log };
    return Promise.all(
      codes.map(
        async (code) => new Aggregate(COUNTER, code, replay(COUNTER, (await store.load(code))!)!, ports),
      ),
    );
  };
  return { store, join };
}

test('ST2 commands that come in one turn are decided one on the other and stored as one row', async () => {
  const { opened, rows } = await counters(1);
  const [one] = opened as [(typeof opened)[0]];
  const changes: number[][] = [];
  one.onChange(({ before, state, recorded }) => changes.push([before.total, state.total, recorded.length]));
  const answers = await Promise.all([600, 500, 300].map((by) => one.submit({ by }, `1/${by}`)));
  expect(answers).toEqual([{ ok: true }, reject('table-full'), { ok: true }]);
  expect(one.state).toEqual({ seq: 3, total: 900 });
  expect(changes).toEqual([[0, 900, 2]]);
  expect((await rows())[1]).toMatchObject({ after: 1, version: 3, commands: ['1/600', '1/300'] });
});

test('ID1 ID2 a repeated id is answered as the first time and changes nothing, in one turn or later', async () => {
  const { opened, rows } = await counters(1);
  const [one] = opened as [(typeof opened)[0]];
  const twice = () => [one.submit({ by: 5 }, '1/a'), one.submit({ by: LIMIT }, '1/b')];
  const refusal = reject('table-full');
  expect(await Promise.all([...twice(), ...twice()])).toEqual([{ ok: true }, refusal, { ok: true }, refusal]);
  expect(await Promise.all(twice())).toEqual([{ ok: true }, refusal]);
  expect(one.state.total).toBe(5);
  expect(await rows()).toHaveLength(2);
});

test('ID3 an accepted id is known after a restart, from the rows and from the snapshot', async () => {
  const { opened, open } = await counters(1);
  const [one] = opened as [(typeof opened)[0]];
  await one.submit({ by: 5 }, '1/before');
  await one.submit({ by: 0 }, '2/rest');
  await one.submit({ by: 7 }, '1/behind');
  const next = await open();
  expect(next.state).toEqual(one.state);
  for (const id of ['1/before', '2/rest', '1/behind']) {
    expect(await next.submit({ by: 9 }, id)).toEqual({ ok: true });
  }
  expect(next.state.total).toBe(12);
});

test('ID3 a snapshot without the ids of what lies before it would let a repeated command count twice', async () => {
  const { store, opened, open } = await counters(1);
  const { commit } = store;
  store.commit = (batch) =>
    commit(batch.map((one) => ({ ...one, snapshot: one.snapshot && { ...one.snapshot, commands: [] } })));
  const [one] = opened as [(typeof opened)[0]];
  await one.submit({ by: 5 }, '1/before');
  await one.submit({ by: 0 }, '2/rest');
  const next = await open();
  await next.submit({ by: 5 }, '1/before');
  expect([one.state.total, next.state.total]).toEqual([5, 10]);
});

test('ID1 no sender can make the server forget the ids of another', async () => {
  const { opened } = await counters(1);
  const [one] = opened as [(typeof opened)[0]];
  await one.submit({ by: 5 }, '1/first');
  for (let n = 0; n < 300; n++) await one.submit({ by: 1 }, `2/${n}`);
  expect(await one.submit({ by: 5 }, '1/first')).toEqual({ ok: true });
  expect(one.state.total).toBe(305);
});

test('ST1 of servers that decide at once one wins, and the others decide anew on what it has written', async () => {
  const { opened, rows } = await counters(3);
  for (let round = 0; round < 20; round++) {
    const answers = await Promise.all(opened.map((one, n) => one.submit({ by: 30 }, `${n}/${round}`)));
    const accepted = answers.filter(({ ok }) => ok).length;
    await Promise.all(opened.map((one) => one.catchUp(Math.max(...opened.map(({ state }) => state.seq)))));
    for (const { state } of opened) expect(state).toEqual(opened[0]!.state);
    expect(accepted).toBe(Math.max(0, Math.min(3, Math.floor((LIMIT - 90 * round) / 30))));
  }
  const versions = (await rows()).map(({ after, version }) => [after, version]);
  for (const [n, [after]] of versions.entries()) expect(after).toBe(versions[n - 1]?.[1] ?? 0);
});

test('ID1 ST1 two servers that are given one command store it once and both accept it', async () => {
  const { opened } = await counters(2);
  const answers = await Promise.all(opened.map((one) => one.submit({ by: 4 }, 'server/same')));
  expect(answers).toEqual([{ ok: true }, { ok: true }]);
  await Promise.all(opened.map((one) => one.catchUp(2)));
  expect(opened.map(({ state }) => state.total)).toEqual([4, 4]);
});

test('ST3 what cannot be stored is rejected and changes nothing; given again it is accepted', async () => {
  const { opened, store } = await counters(1);
  const [one] = opened as [(typeof opened)[0]];
  store.faults.before = 1;
  expect(await one.submit({ by: 5 }, '1/a')).toEqual(reject('try-later'));
  expect(one.state.total).toBe(0);
  expect(await one.submit({ by: 5 }, '1/a')).toEqual({ ok: true });
  expect(one.state.total).toBe(5);
});

test('ID3 ST3 where only the answer of the store was lost, the command is found in the log and accepted', async () => {
  const { opened, store } = await counters(1);
  const [one] = opened as [(typeof opened)[0]];
  store.faults.after = 1;
  const answers = await Promise.all([one.submit({ by: 5 }, '1/a'), one.submit({ by: LIMIT }, '1/b')]);
  expect(answers).toEqual([{ ok: true }, reject('try-later')]);
  expect(one.state.total).toBe(5);
});

test('ST10 a lost commit that arrives after its command was given up is found at the repetition and counts once', async () => {
  const { store, opened, rows } = await counters(1);
  const [one] = opened as [(typeof opened)[0]];
  const { commit } = store;
  let arrive = async () => {};
  store.commit = async (batch) => {
    arrive = async () => void (await commit(batch));
    store.commit = commit;
    throw new Error('the connection was lost');
  };
  expect(await one.submit({ by: 5 }, '1/a')).toEqual(reject('try-later'));
  await arrive();
  expect(await one.submit({ by: 7 }, '1/b')).toEqual({ ok: true });
  expect(await one.submit({ by: 5 }, '1/a')).toEqual({ ok: true });
  expect(one.state.total).toBe(12);
  expect((await rows()).map(({ commands }) => commands)).toEqual([[], ['1/a'], ['1/b']]);
});

test('ST6 ST10 of three rooms in one commit one bad row is given up, and its neighbors are acknowledged', async () => {
  const { store, join } = await table(['A', 'B', 'C']);
  const { commit } = store;
  store.commit = async (batch) => {
    const outcomes = await commit(batch.filter(({ code }) => code !== 'B'));
    return [outcomes[0]!, 'invalid', outcomes[1]!];
  };
  const rooms = await join(new Committer(store));
  const answers = await Promise.all(rooms.map((room) => room.submit({ by: 1 }, '1/a')));
  expect(answers).toEqual([{ ok: true }, reject('try-later'), { ok: true }]);
  expect(rooms.map(({ state }) => state.total)).toEqual([1, 0, 1]);
});

test('ST11 rooms of one commit are told in one turn; what a dying server told half of stands for all', async () => {
  const { store, join } = await table(['A', 'B', 'C']);
  const committer = new Committer(store);
  let told = 0;
  // The process ends after the second room was told.
  const dying = {
    enqueue: (member: Member) =>
      committer.enqueue({
        plan: () => member.plan(),
        committed: (outcome) => void (told++ < 2 && member.committed(outcome)),
        failed: (error) => member.failed(error),
      }),
  };
  const heard: string[] = [];
  const rooms = await join(dying);
  for (const room of rooms) room.onChange(() => void heard.push(room.code));
  const submitted = rooms.map((room) => room.submit({ by: 1 }, '1/a'));
  await Promise.all(submitted.slice(0, 2));
  expect([heard, told]).toEqual([['A', 'B'], 3]);
  const again = await join(new Committer(store));
  expect(again.map(({ state }) => state.total)).toEqual([1, 1, 1]);
  const answers = await Promise.all(again.map((room) => room.submit({ by: 1 }, '1/a')));
  expect(answers).toEqual([{ ok: true }, { ok: true }, { ok: true }]);
  expect(again.map(({ state }) => state.total)).toEqual([1, 1, 1]);
});

test('ST3 a decision that throws is rejected without its words, and the next command is decided', async () => {
  const { opened, logged } = await counters(1);
  const [one] = opened as [(typeof opened)[0]];
  expect(await one.submit({ by: -1 })).toEqual(reject('try-later'));
  expect(await one.submit({ by: 5 })).toEqual({ ok: true });
  expect(logged.join()).toContain('commands failed');
  expect(logged.join()).not.toContain('bam-1');
});

test('two hundred commands may wait at one room, and more are too fast', async () => {
  const { opened } = await counters(1);
  const [one] = opened as [(typeof opened)[0]];
  const answers = await Promise.all(Array.from({ length: 205 }, () => one.submit({ by: 1 })));
  expect(answers.filter(({ ok }) => ok)).toHaveLength(200);
  expect(answers.at(-1)).toEqual(reject('too-fast'));
});

test('a listener that fails leaves the others told, and one that has left is told nothing', async () => {
  const { opened } = await counters(1);
  const [one] = opened as [(typeof opened)[0]];
  const told: number[] = [];
  one.onChange(() => {
    throw new Error('nobody listens');
  });
  const leave = one.onChange(({ state }) => told.push(state.total));
  expect(await one.submit({ by: 1 })).toEqual({ ok: true });
  leave();
  await one.submit({ by: 1 });
  expect(told).toEqual([1]);
});

test('ST4 loading reads the first row and what lies behind the last snapshot, and gives the state of the whole log', async () => {
  const { opened, store, rows } = await counters(1);
  const [one] = opened as [(typeof opened)[0]];
  for (let n = 0; n < 30; n++) await one.submit({ by: n % 10 });
  const loaded = (await store.load(CODE))!;
  expect(await rows()).toHaveLength(31);
  expect(loaded.rows).toHaveLength(10);
  const whole = replay(COUNTER, { ...(await store.history(CODE))!, snapshot: null })!;
  expect(replay(COUNTER, loaded)!.states.at(-1)).toEqual(one.state);
  expect(whole.states.at(-1)).toEqual(one.state);
});

test('a log of another kind is nothing, and one without its opening is an error', () => {
  expect(replay(COUNTER, { ...OPENED, kind: 'class' })).toBeNull();
  expect(() => replay(COUNTER, { ...OPENED, rows: [] })).toThrow(/does not begin/);
});

test('drained resolves when every command given so far is answered', async () => {
  const { opened } = await counters(1);
  const [one] = opened as [(typeof opened)[0]];
  const answered: number[] = [];
  for (const by of [1, 2]) void one.submit({ by }).then(() => answered.push(by));
  await one.drained();
  await Promise.resolve();
  expect(answered).toEqual([1, 2]);
  await one.drained();
});
