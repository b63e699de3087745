// What an exchange costs on PostgreSQL, node and database together, beside SQLite: one node, and two that share it.
import { execFileSync } from 'node:child_process';
import { startPostgres } from '../../kit/postgres.ts';
import type { Bench } from '../bench.ts';
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
      const own = { database: await database.newDatabase() };
      const [kept, spread] = [await database.newDatabase(), await database.newDatabase()];
      const cpuOfDatabase = () => databaseCpu(database);
      return await withOwnServer((file) =>
        withOwnServer(
          (node) =>
            twoNodes(kept, (together) =>
              twoNodes(spread, async (apart) => {
                await open(file, [file]);
                await open(node, [node]);
                await open(together[0], together);
                await open(apart[0], apart, true);
                return costsOf([
                  setUp('sqlite', file, [file], async () => 0),
                  setUp('postgres', node, [node], cpuOfDatabase),
                  setUp('together', together[0], together, cpuOfDatabase),
                  setUp('spread', apart[0], apart, cpuOfDatabase),
                ]);
              }),
            ),
          own,
        ),
      );
    } finally {
      await database.discard();
    }
  },
};

type Nodes = readonly [UnderLoad, UnderLoad];

function twoNodes<T>(database: string, run: (nodes: Nodes) => Promise<T>): Promise<T> {
  return withOwnServer((one) => withOwnServer((other) => run([one, other]), { database }), { database });
}

async function open({ driver }: UnderLoad, nodes: readonly UnderLoad[], apart = false): Promise<void> {
  const urls = nodes.map(({ server }) => server.url);
  await driver.ask({ ask: 'open', urls, rooms: ROOMS, peer: null, apart });
}

function setUp(
  name: string,
  { driver }: UnderLoad,
  nodes: readonly UnderLoad[],
  beside: () => Promise<number>,
): SetUp {
  return {
    name,
    play: async (ms) => [await driver.ask({ ask: 'saturate', ms })],
    cpu: async () => nodes.reduce((sum, { server }) => sum + server.cpu(), await beside()),
  };
}
