// How the page comes back and what it tells: news instead of everything, the server's hint, silence, orders asked again.
import { describe, expect, it } from 'vitest';
import { CLOSE, HEARTBEAT_MS, type Table } from '../../shared-engine/index.ts';
import { type FakeConnection, fakeConnection } from '../kit/fake-connection.ts';

const TABLE: Table = {
  code: 'ABCDEFGH',
  you: 1,
  seats: [{ kind: 'empty' }, { kind: 'empty' }, { kind: 'empty' }, { kind: 'empty' }],
  terms: { deadline: null, revealRacks: false },
  card: { id: 'house', name: 'House card' },
  round: 0,
  remaining: null,
  view: null,
};
const READY = { kind: 'action', id: 'order', act: { kind: 'ready', ready: true } } as const;

async function open(fake: FakeConnection): Promise<void> {
  fake.connection.start();
  await fake.settle();
  fake.welcome();
}

async function again(fake: FakeConnection): Promise<void> {
  fake.lines.at(-1)!.events.closed(1006);
  fake.connection.retryNow();
  await fake.settle();
  fake.welcome();
}

const hello = (fake: FakeConnection) => fake.lines.at(-1)!.sent[0];

describe('the table after a cut', () => {
  it('is asked for from the number that the page has, and news make it whole', async () => {
    const fake = fakeConnection();
    await open(fake);
    expect(hello(fake)).not.toHaveProperty('resume');
    fake.say({ kind: 'table', seq: 7, table: TABLE });
    await again(fake);
    expect(hello(fake)).toMatchObject({ resume: { seq: 7, you: 1 } });
    fake.say({ kind: 'delta', after: 7, seq: 9, table: { round: 3, remaining: 500 } });
    expect(fake.messages.at(-1)).toEqual({
      kind: 'table',
      seq: 9,
      table: { ...TABLE, round: 3, remaining: 500 },
    });
    await again(fake);
    expect(hello(fake)).toMatchObject({ resume: { seq: 9, you: 1 } });
  });

  it('is asked for whole after a start of the player’s own, who may have taken a seat', async () => {
    const fake = fakeConnection();
    await open(fake);
    fake.say({ kind: 'table', seq: 7, table: { ...TABLE, you: null } });
    await open(fake);
    expect(hello(fake)).not.toHaveProperty('resume');
  });

  it('is asked for by a page that says which of its lines is the newer', async () => {
    const fake = fakeConnection();
    await open(fake);
    const first = hello(fake);
    await again(fake);
    const second = hello(fake);
    if (first?.kind !== 'hello' || second?.kind !== 'hello') throw new Error('no hello');
    expect(second.from?.page).toBe(first.from?.page);
    expect(second.from!.nth).toBeGreaterThan(first.from!.nth);
  });

  it('is not made of news about a table that is not here, but asked for whole', async () => {
    const fake = fakeConnection();
    await open(fake);
    fake.say({ kind: 'table', seq: 7, table: TABLE });
    fake.say({ kind: 'delta', after: 4, seq: 5, table: { round: 3 } });
    expect(fake.messages).toHaveLength(1);
    expect(fake.lines[0]!.closedByPage).toBe(true);
    fake.connection.retryNow();
    await fake.settle();
    fake.welcome();
    expect(hello(fake)).not.toHaveProperty('resume');
  });
});

describe('the pause', () => {
  it('is the one that a restarting server asks for', async () => {
    const fake = fakeConnection();
    await open(fake);
    fake.lines[0]!.events.closed(CLOSE.restarting, '734');
    expect(fake.pauses()).toEqual([734]);
  });

  it('is the page’s own where the server says nothing that can be used', async () => {
    const fake = fakeConnection();
    await open(fake);
    fake.lines[0]!.events.closed(CLOSE.restarting, '99999');
    expect(fake.pauses()[0]).toBeLessThanOrEqual(500);
  });
});

describe('a line that says nothing', () => {
  it('is given up when it never opens', async () => {
    const fake = fakeConnection();
    fake.connection.start();
    await fake.settle();
    fake.elapse(8000);
    expect(fake.states.at(-1)).toEqual({ kind: 'waiting', failures: 1 });
    fake.connection.retryNow();
    await fake.settle();
    expect(fake.pauses()).toEqual([16_000]);
  });

  it('is given up after two signs of life that did not come, and not while they come', async () => {
    const fake = fakeConnection();
    await open(fake);
    const first = fake.pauses().length;
    fake.say({ kind: 'heartbeat' });
    expect(fake.pauses()).toHaveLength(first);
    expect(fake.messages).toEqual([]);
    fake.elapse(2.5 * HEARTBEAT_MS);
    expect(fake.states.at(-1)).toEqual({ kind: 'waiting', failures: 1 });
    expect(fake.lines[0]!.closedByPage).toBe(true);
  });
});

describe('a server that can keep nothing', () => {
  it('is told apart from a line that is down', async () => {
    const fake = fakeConnection();
    await open(fake);
    fake.say({ kind: 'storage', writable: false });
    expect(fake.states.at(-1)).toEqual({ kind: 'looking' });
    fake.say({ kind: 'storage', writable: true });
    expect(fake.states.at(-1)).toEqual({ kind: 'open' });
  });

  it('is asked again, with the same id, until there is an answer', async () => {
    const fake = fakeConnection();
    await open(fake);
    fake.connection.send(READY);
    fake.say({ kind: 'rejected', id: READY.id, code: 'try-later', message: 'later' });
    fake.elapse(2000);
    expect(fake.lines[0]!.sent.slice(1)).toEqual([READY, READY]);
    fake.say({ kind: 'ack', id: READY.id });
    await again(fake);
    expect(fake.lines[1]!.sent).toHaveLength(1);
  });
});
