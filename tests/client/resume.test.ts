// How the page reconnects: changes instead of the whole table, the server's hint, silence, requests sent again.
import { describe, expect, it } from 'vitest';
import type { Table } from '../../shared-engine/protocol/table.ts';
import { CLOSE, HEARTBEAT_MS } from '../../shared-engine/protocol/version.ts';
import { STANDARD_TERMS } from '../../shared-engine/rules/exchange/terms.ts';
import { type FakeConnection, fakeConnection } from '../kit/fake-connection.ts';

const TABLE: Table = {
  code: 'ABCDEFGH',
  you: 1,
  seats: [{ kind: 'empty' }, { kind: 'empty' }, { kind: 'empty' }, { kind: 'empty' }],
  mode: 'friends',
  terms: STANDARD_TERMS.friends,
  card: { id: 'house', name: 'House card' },
  round: 0,
  remaining: null,
  view: null,
};
const READY = { kind: 'action', id: 'request', action: { kind: 'ready', ready: true } } as const;

async function open(fake: FakeConnection): Promise<void> {
  fake.connection.start();
  await fake.runPromises();
  fake.welcome();
}

async function reconnect(fake: FakeConnection): Promise<void> {
  fake.sockets.at(-1)!.events.closed(1006);
  fake.connection.retryNow();
  await fake.runPromises();
  fake.welcome();
}

const hello = (fake: FakeConnection) => fake.sockets.at(-1)!.sent[0];

describe('the table after a cut', () => {
  it('after a cut the page asks for what has changed since its table, and the changes make that table whole', async () => {
    const fake = fakeConnection();
    await open(fake);
    expect(hello(fake)).not.toHaveProperty('resume');
    fake.receive({ kind: 'table', seq: 7, table: TABLE });
    await reconnect(fake);
    expect(hello(fake)).toMatchObject({ resume: { seq: 7, you: 1 } });
    fake.receive({ kind: 'delta', after: 7, seq: 9, table: { round: 3, remaining: 500 } });
    expect(fake.messages.at(-1)).toEqual({
      kind: 'table',
      seq: 9,
      table: { ...TABLE, round: 3, remaining: 500 },
    });
    await reconnect(fake);
    expect(hello(fake)).toMatchObject({ resume: { seq: 9, you: 1 } });
  });

  it('a player who connects anew gets the whole table, because they may have taken a seat', async () => {
    const fake = fakeConnection();
    await open(fake);
    fake.receive({ kind: 'table', seq: 7, table: { ...TABLE, you: null } });
    await open(fake);
    expect(hello(fake)).not.toHaveProperty('resume');
  });

  it('the page says which of its connections is the newer one', async () => {
    const fake = fakeConnection();
    await open(fake);
    const first = hello(fake);
    await reconnect(fake);
    const second = hello(fake);
    if (first?.kind !== 'hello' || second?.kind !== 'hello') throw new Error('no hello');
    expect(second.from?.page).toBe(first.from?.page);
    expect(second.from!.nth).toBeGreaterThan(first.from!.nth);
  });

  it('changes to a table that is not here make the page ask for the whole table', async () => {
    const fake = fakeConnection();
    await open(fake);
    fake.receive({ kind: 'table', seq: 7, table: TABLE });
    fake.receive({ kind: 'delta', after: 4, seq: 5, table: { round: 3 } });
    expect(fake.messages).toHaveLength(1);
    expect(fake.sockets[0]!.closedByPage).toBe(true);
    fake.connection.retryNow();
    await fake.runPromises();
    fake.welcome();
    expect(hello(fake)).not.toHaveProperty('resume');
  });
});

describe('the pause', () => {
  it('the page waits as long as a restarting server asks it to', async () => {
    const fake = fakeConnection();
    await open(fake);
    fake.sockets[0]!.events.closed(CLOSE.restarting, '734');
    expect(fake.pauses()).toEqual([734]);
  });

  it('the page chooses its own pause where the server names none that it can use', async () => {
    const fake = fakeConnection();
    await open(fake);
    fake.sockets[0]!.events.closed(CLOSE.restarting, '99999');
    expect(fake.pauses()[0]).toBeLessThanOrEqual(500);
  });
});

describe('a silent connection', () => {
  it('a connection that never opens is given up', async () => {
    const fake = fakeConnection();
    fake.connection.start();
    await fake.runPromises();
    fake.elapse(8000);
    expect(fake.states.at(-1)).toEqual({ kind: 'waiting', failures: 1 });
    fake.connection.retryNow();
    await fake.runPromises();
    expect(fake.pauses()).toEqual([16_000]);
  });

  it('a connection is given up when two heartbeats are missing, and not while they come', async () => {
    const fake = fakeConnection();
    await open(fake);
    const first = fake.pauses().length;
    fake.receive({ kind: 'heartbeat' });
    expect(fake.pauses()).toHaveLength(first);
    expect(fake.messages).toEqual([]);
    fake.elapse(2.25 * HEARTBEAT_MS);
    expect(fake.states.at(-1)).toEqual({ kind: 'waiting', failures: 1 });
    expect(fake.sockets[0]!.closedByPage).toBe(true);
  });
});

describe('a server that cannot save', () => {
  it('a server that cannot save is shown as something else than a lost connection', async () => {
    const fake = fakeConnection();
    await open(fake);
    fake.receive({ kind: 'storage', writable: false });
    expect(fake.states.at(-1)).toEqual({ kind: 'read-only' });
    fake.receive({ kind: 'storage', writable: true });
    expect(fake.states.at(-1)).toEqual({ kind: 'open' });
  });

  it.each(['try-later', 'too-fast', 'newer-connection'] as const)(
    'a request that is rejected with %s is sent again with the same id until it is answered',
    async (code) => {
      const fake = fakeConnection();
      await open(fake);
      fake.connection.send(READY);
      fake.receive({ kind: 'rejected', id: READY.id, code, message: 'later' });
      fake.elapse(2000);
      expect(fake.sockets[0]!.sent.slice(1)).toEqual([READY, READY]);
      fake.receive({ kind: 'ack', id: READY.id });
      await reconnect(fake);
      expect(fake.sockets[1]!.sent).toHaveLength(1);
    },
  );
});
