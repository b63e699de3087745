// The page's connection to the server: hello, requests stored until answered, and reconnecting by itself.
import { describe, expect, it, vi } from 'vitest';
import { askTicket } from '../../client/connection/api.ts';
import { backoffMs } from '../../client/connection/backoff.ts';
import type { ClientRequest } from '../../client/connection/pending.ts';
import { CLOSE, HEARTBEAT_MS } from '../../shared-engine/protocol/version.ts';
import { type FakeConnection, fakeConnection } from '../kit/fake-connection.ts';
import { memoryStorage } from '../kit/memory-storage.ts';

const VOTE: ClientRequest = {
  kind: 'choose',
  id: 'my-vote',
  round: 1,
  seat: 2,
  choice: { kind: 'vote', step: 'vote', go: true },
};

async function open(fake: FakeConnection): Promise<void> {
  fake.connection.start();
  await fake.runPromises();
  fake.welcome();
}

describe('a connection that opens', () => {
  it('the page first says hello with its ticket and its versions', async () => {
    const fake = fakeConnection();
    await open(fake);
    expect(fake.sockets[0]!.sent).toEqual([
      { kind: 'hello', id: 'id-2', versions: [1, 1], ticket: 'ticket', from: { page: 'id-1', nth: 1 } },
    ]);
    expect(fake.states.map(({ kind }) => kind)).toEqual(['connecting', 'open']);
  });

  it('frames that the page does not understand are ignored', async () => {
    const fake = fakeConnection();
    await open(fake);
    fake.sockets[0]!.events.text('{"kind":"ack"');
    fake.sockets[0]!.events.text('{"kind":"surprise"}');
    fake.receive({ kind: 'ack', id: 'x' });
    expect(fake.messages).toEqual([{ kind: 'ack', id: 'x' }]);
  });

  it('the connection ends where there is no such room', async () => {
    const fake = fakeConnection();
    fake.ticket = { ok: false, code: 'no-such-room', message: 'none' };
    fake.connection.start();
    await fake.runPromises();
    expect(fake.states.at(-1)).toEqual({ kind: 'ended', reason: 'no-room' });
    expect(fake.pauses()).toEqual([]);
  });

  it('an answer that this page is too old to read ends the connection and asks for a reload; one that makes no sense is asked for again', async () => {
    const stubbed = (body: unknown, init?: ResponseInit) =>
      vi.stubGlobal('fetch', async () => Response.json(body, init));
    const fake = fakeConnection();
    stubbed({ ticket: { of: 'another form' } });
    fake.ticket = await askTicket('TABLE', new AbortController().signal);
    fake.connection.start();
    await fake.runPromises();
    expect(fake.states.at(-1)).toEqual({ kind: 'ended', reason: 'outdated' });
    stubbed({ error: 'of a proxy' }, { status: 503 });
    fake.ticket = await askTicket('TABLE', new AbortController().signal);
    expect(fake.ticket).toMatchObject({ ok: false, code: 'unclear' });
    fake.connection.start();
    await fake.runPromises();
    expect(fake.states.at(-1)).toEqual({ kind: 'waiting', failures: 1 });
    vi.unstubAllGlobals();
  });

  it('the connection ends where somebody has come back to the seat since, and asks again where it was overtaken', async () => {
    const fake = fakeConnection();
    fake.ticket = { ok: false, code: 'ask-again', message: 'again' };
    fake.connection.start();
    await fake.runPromises();
    expect(fake.states.at(-1)).toEqual({ kind: 'waiting', failures: 1 });
    fake.ticket = { ok: false, code: 'old-secret', message: 'too old' };
    fake.elapse(backoffMs(0, 0.5));
    await fake.runPromises();
    expect(fake.states.at(-1)).toEqual({ kind: 'ended', reason: 'seat-lost' });
    expect(fake.pauses()).toEqual([]);
  });
});

describe('a connection that is cut', () => {
  it('a connection that is cut comes back after a pause with a new ticket', async () => {
    const fake = fakeConnection();
    await open(fake);
    fake.sockets[0]!.events.closed(1006);
    expect(fake.states.at(-1)).toEqual({ kind: 'waiting', failures: 1 });
    fake.elapse(backoffMs(0, 0.5));
    await fake.runPromises();
    fake.welcome();
    expect(fake.states.at(-1)).toEqual({ kind: 'open' });
  });

  it('the page waits longer each time, and tries at once when the player asks', async () => {
    const fake = fakeConnection();
    fake.ticket = { ok: false, code: 'unreachable', message: 'no net' };
    fake.connection.start();
    await fake.runPromises();
    fake.elapse(backoffMs(0, 0.5));
    await fake.runPromises();
    expect(fake.pauses()).toEqual([backoffMs(1, 0.5)]);
    fake.ticket = { ok: true, value: { ticket: 'second' } };
    fake.connection.retryNow();
    await fake.runPromises();
    fake.welcome();
    expect(fake.states.at(-1)).toEqual({ kind: 'open' });
    expect(fake.pauses()).toEqual([2.25 * HEARTBEAT_MS]);
  });

  it('the page does not fight for a seat that another page took', async () => {
    const fake = fakeConnection();
    await open(fake);
    fake.sockets[0]!.events.closed(CLOSE.replaced);
    expect(fake.states.at(-1)).toEqual({ kind: 'ended', reason: 'replaced' });
    fake.connection.retryNow();
    await fake.runPromises();
    expect(fake.sockets).toHaveLength(1);
  });

  it('the page does not listen to a connection that it has given up', async () => {
    const fake = fakeConnection();
    await open(fake);
    const old = fake.sockets[0]!;
    await open(fake);
    old.events.text(JSON.stringify({ kind: 'ack', id: 'late' }));
    old.events.closed(1006);
    expect(old.closedByPage).toBe(true);
    expect(fake.messages).toEqual([]);
    expect(fake.states.at(-1)).toEqual({ kind: 'open' });
  });

  it('a ticket that nobody waits for any more is no longer asked for, so that its cookie does not come after a newer one', async () => {
    const fake = fakeConnection();
    fake.connection.start();
    fake.connection.start();
    expect(fake.ticketRequests.map(({ aborted }) => aborted)).toEqual([true, false]);
    await fake.runPromises();
    fake.welcome();
    expect([fake.sockets.length, fake.ticketRequests.at(-1)!.aborted]).toEqual([1, false]);
  });
});

describe('a request', () => {
  it('a request made without a connection is sent once, with its own id, when the connection is back', async () => {
    const fake = fakeConnection();
    await open(fake);
    fake.sockets[0]!.events.closed(1006);
    fake.connection.send(VOTE);
    expect(fake.sockets[0]!.sent).toHaveLength(1);
    fake.connection.retryNow();
    await fake.runPromises();
    fake.welcome();
    expect(fake.sockets[1]!.sent.slice(1)).toEqual([VOTE]);
  });

  it('a request without an answer is sent again on the next connection, and not after its answer', async () => {
    const fake = fakeConnection();
    await open(fake);
    fake.connection.send(VOTE);
    fake.sockets[0]!.events.closed(1006);
    fake.connection.retryNow();
    await fake.runPromises();
    fake.welcome();
    fake.receive({ kind: 'ack', id: VOTE.id });
    fake.sockets[1]!.events.closed(1006);
    fake.connection.retryNow();
    await fake.runPromises();
    fake.welcome();
    expect(fake.sockets.map(({ sent }) => sent.length - 1)).toEqual([1, 1, 0]);
  });

  it('a request survives a reload of the page', async () => {
    const storage = memoryStorage();
    const before = fakeConnection(storage);
    before.connection.send(VOTE);
    const after = fakeConnection(storage);
    await open(after);
    expect(after.sockets[0]!.sent.slice(1)).toEqual([VOTE]);
  });

  it('a request is forgotten when the server rejects it', async () => {
    const storage = memoryStorage();
    const fake = fakeConnection(storage);
    await open(fake);
    fake.connection.send(VOTE);
    fake.receive({ kind: 'rejected', id: VOTE.id, code: 'wrong-step', message: 'too late' });
    expect(storage.read('requests')).toBeNull();
  });

  it('a request that is never answered makes the page connect anew', async () => {
    const fake = fakeConnection();
    await open(fake);
    fake.connection.send(VOTE);
    fake.elapse(8_000);
    await fake.runPromises();
    fake.welcome();
    expect(fake.sockets[1]!.sent.slice(1)).toEqual([VOTE]);
  });
});

it('WK9 who analyzes the seat is said first on each connection, is never stored, and not after a stop', async () => {
  const storage = memoryStorage();
  const fake = fakeConnection(storage);
  const said = { kind: 'analyzed-by', id: 'said', round: 2, by: 'page' } as const;
  fake.connection.announce(said);
  await open(fake);
  expect(fake.sockets[0]!.sent.slice(1)).toEqual([said]);
  const taken = { ...said, by: 'server' } as const;
  fake.connection.announce(taken);
  fake.connection.send(VOTE);
  await open(fake);
  expect(fake.sockets[1]!.sent.slice(1)).toEqual([taken, VOTE]);
  fake.receive({ kind: 'ack', id: VOTE.id });
  expect(storage.read('requests')).toBeNull();
  fake.connection.stop();
  await open(fake);
  expect(fake.sockets[2]!.sent).toHaveLength(1);
});

describe('the pause before the next attempt', () => {
  it('the pause doubles, stays in the upper half of its range, and is never longer than three seconds', () => {
    for (let failures = 0; failures < 40; failures++) {
      const shortest = backoffMs(failures, 0);
      const longest = backoffMs(failures, 0.999_999);
      expect(shortest).toBeGreaterThanOrEqual(longest / 2 - 1);
      expect(longest).toBeLessThanOrEqual(3_000);
    }
    expect([0, 1, 2, 3].map((failures) => backoffMs(failures, 0))).toEqual([250, 500, 1000, 1500]);
  });
});
