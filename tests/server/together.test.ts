// What friends agree on before a deal: how the table plays.
import { afterAll, beforeAll, expect, test } from 'vitest';
import { STANDARD_TERMS } from '../../shared-engine/rules/exchange/terms.ts';
import { deal, ownView, tableOfFour, watch } from '../kit/http-client.ts';
import { startServer, type TestServer } from '../kit/server.ts';

let server: TestServer;
beforeAll(async () => {
  server = await startServer({ seed: 'together' });
});
afterAll(() => server.stop());

test('SC5 W2 the host changes how the table plays, everybody is told, and nobody is taken to be ready for it', async () => {
  const { code, peers } = await tableOfFour(server);
  const [host, guest] = [peers[0]!, peers[1]!];
  const spectator = await watch(server, code);
  await guest.act({ kind: 'ready', ready: true });
  await host.untilTable(({ seats: [, at] }) => at.kind === 'person' && at.ready, 'readiness');
  const asked = { secondCharleston: 'none', passLog: true } as const;
  expect(await host.act({ kind: 'set-terms', terms: asked })).toMatchObject({ kind: 'ack' });
  const terms = { ...STANDARD_TERMS.friends, ...asked };
  for (const peer of [...peers, spectator]) {
    await peer.untilTable((table) => table.terms.secondCharleston === 'none', 'the new way');
    expect(peer.table.terms).toEqual(terms);
    expect(peer.table.seats[1]).toMatchObject({ ready: false });
  }
  expect(await host.act({ kind: 'set-terms', terms: { whoIsEast: 'always' } })).toMatchObject({
    code: 'east-not-in-turn',
  });
  await deal(peers);
  expect(ownView(guest).terms).toEqual(terms);
  expect(await host.act({ kind: 'set-terms', terms: {} })).toMatchObject({ code: 'round-running' });
});
