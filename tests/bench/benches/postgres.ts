// What an exchange costs on PostgreSQL, node and database together, beside SQLite: one node, and two that share it.
import { execFileSync } from 'node:child_process';
import { startPostgres, type TestPostgres } from '../../kit/postgres.ts';
import type { Bench, Figures } from '../bench.ts';
import { costsOf, type SetUp } from '../rooms/cost.ts';
import { databaseCpu } from '../rooms/database-cpu.ts';
import { type UnderLoad, withOwnServer } from '../rooms/measurement.ts';

const ROOT = new URL('../../../', import.meta.url);
const TSC = new URL('node_modules/typescript/bin/tsc', ROOT).pathname;
const ROOMS = 100;

export const bench: Bench = {
  summary:
    'Processor time an exchange on PostgreSQL beside SQLite: one node, two with rooms kept together or spread.',
  async run() {
    execFileSync(process.execPath, [TSC, '-b', 'server'], { cwd: ROOT, stdio: 'ignore' });
    const database = await startPostgres({ durable: true });
    try {
      return { ...(await oneNode(database)), ...(await sharedByTwo(database)) };
    } finally {
      await database.discard();
    }
  },
};

async function oneNode(database: TestPostgres): Promise<Figures> {
  const url = await database.newDatabase();
  return withOwnServer((file) =>
    withOwnServer(
      async (node) => {
        await open([file], false);
        await open([node], false);
        return costsOf([
          setUp('sqlite', [file], async () => 0),
          setUp('postgres', [node], () => databaseCpu(database)),
        ]);
      },
      { database: url },
    ),
  );
}

async function sharedByTwo(database: TestPostgres): Promise<Figures> {
  return twoNodes(await database.newDatabase(), async (together) =>
    twoNodes(await database.newDatabase(), async (apart) => {
      await open(together, false);
      await open(apart, true);
      const beside = () => databaseCpu(database);
      return costsOf([setUp('together', together, beside), setUp('spread', apart, beside)]);
    }),
  );
}

type Nodes = readonly [UnderLoad, ...UnderLoad[]];

function twoNodes<T>(database: string, run: (nodes: Nodes) => Promise<T>): Promise<T> {
  return withOwnServer((one) => withOwnServer((other) => run([one, other]), { database }), { database });
}

/** Where the seats of each room are `apart`, they are at different nodes. */
async function open(nodes: Nodes, apart: boolean): Promise<void> {
  const urls = nodes.map(({ server }) => server.url);
  await nodes[0].driver.ask({ ask: 'open', urls, rooms: ROOMS, peer: null, apart });
}

/** Played by one driver, that of the first node; `beside` is the processor time of what the nodes share. */
function setUp(name: string, nodes: Nodes, beside: () => Promise<number>): SetUp {
  return {
    name,
    play: async (ms) => [await nodes[0].driver.ask({ ask: 'saturate', ms })],
    cpu: async () => nodes.reduce((sum, { server }) => sum + server.cpu(), await beside()),
  };
}
