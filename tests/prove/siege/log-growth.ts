// Part 6: one person does again and again what a log has to remember. The log stays short, and the others stay in.
import path from 'node:path';
import { openSqlite } from '../../../server/store/sqlite.ts';
import { ticketPath } from '../../../shared-engine/protocol/paths.ts';
import { anyAnswer, deal, type Guest, ownView, post, sitDown, tableOfFour } from '../../kit/http-client.ts';
import { storeOf } from '../../kit/logs.ts';
import type { Peer } from '../../kit/sockets.ts';
import { type Attack, type Besieged, findingsOf } from './siege.ts';

const tell = findingsOf('6 log growth');

export const logGrowth: Attack = async ({ server, size }) => {
  const times = size === 'full' ? 2000 : 150;
  const { code, guests, peers } = await tableOfFour(server);
  const [ines] = peers as [Peer];
  for (let n = 0; n < times; n++) await ines.act({ kind: 'ready', ready: n % 2 === 0 });
  const toggled = await grownBy(server, code);
  // Readiness stays in the end, and everybody else gets ready.
  await deal(peers);
  const before = await grownBy(server, code);
  for (let n = 0; n < times; n++) {
    await ines.choose(anyAnswer(ownView(ines), { below: () => 0 }));
    await ines.choose({ kind: 'withdraw', step: 'first-right' });
  }
  const withdrawn = await grownBy(server, code);
  const refused = await comeBackOften(server, guests[0]!, times);
  const returned = await grownBy(server, code);
  const other = await sitDown(server, guests[1]!);
  for (const peer of [other, ...peers]) peer.socket.terminate();
  return [
    tell(`${times} × ready and not ready`, '<= 100 events', inWords(toggled), toggled.events <= 100),
    tell(
      `${times} × submit and withdraw`,
      '<= 30 events',
      inWords(minus(withdrawn, before)),
      withdrawn.events - before.events <= 30,
    ),
    tell(
      `${times} × come back`,
      '<= 130 events, then once a minute',
      `${inWords(minus(returned, withdrawn))}, ${refused} refused`,
      returned.events - withdrawn.events <= 130 && refused > 0,
    ),
    tell(
      'somebody else comes back after all that',
      'at seat 1',
      `at seat ${other.table.you}`,
      other.table.you === 1,
    ),
  ];
};

interface Grown {
  readonly events: number;
  readonly bytes: number;
}

/** Of the room, without its snapshot. */
async function grownBy({ dataFolder }: Besieged, code: string): Promise<Grown> {
  const store = storeOf(openSqlite(path.join(dataFolder, 'quadrille.db'), 'beside'));
  const rows = (await store.history(code))?.rows ?? [];
  await store.close();
  const bytes = rows.reduce((sum, { events, commands }) => sum + events.length + commands.join().length, 0);
  return { events: rows.at(-1)?.version ?? 0, bytes };
}

function minus(one: Grown, other: Grown): Grown {
  return { events: one.events - other.events, bytes: one.bytes - other.bytes };
}

function inWords({ events, bytes }: Grown): string {
  return `${events} events, ${bytes} bytes`;
}

/** How many of so many tickets were refused. */
async function comeBackOften({ url }: Besieged, { code, secret }: Guest, times: number): Promise<number> {
  let refused = 0;
  for (let n = 0; n < times; n++) {
    const { status } = await post(`${url}${ticketPath(code)}`, {}, secret);
    if (status === 429) refused++;
  }
  return refused;
}
