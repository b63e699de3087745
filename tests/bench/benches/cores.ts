// One process and two, each with a file of its own on a core of its own: what the second one adds.
import { execFileSync } from 'node:child_process';
import type { Bench } from '../bench.ts';
import { costsOf, type SetUp } from '../rooms/cost.ts';
import { type UnderLoad, withOwnServer } from '../rooms/measurement.ts';
import { DRIVER_CORE } from '../rooms/processes.ts';

const ROOT = new URL('../../../', import.meta.url);
const TSC = new URL('node_modules/typescript/bin/tsc', ROOT).pathname;
const ROOMS = 100;

export const bench: Bench = {
  summary: 'Exchanges a second and a CPU-second of one process and of two with a file each.',
  async run() {
    execFileSync(process.execPath, [TSC, '-b', 'server'], { cwd: ROOT, stdio: 'ignore' });
    return withOwnServer((one) =>
      withOwnServer(
        async (other) => {
          for (const { driver, server } of [one, other]) {
            await driver.ask({ ask: 'open', urls: [server.url], rooms: ROOMS, peer: null });
          }
          return costsOf([setUp('one', [one]), setUp('two', [one, other])]);
        },
        // On a machine of two cores it shares this one with both drivers: the rate is a lower bound there.
        { core: DRIVER_CORE },
      ),
    );
  },
};

function setUp(name: string, processes: readonly UnderLoad[]): SetUp {
  return {
    name,
    play: (ms) => Promise.all(processes.map(({ driver }) => driver.ask({ ask: 'saturate', ms }))),
    cpu: async () => processes.reduce((sum, { server }) => sum + server.cpu(), 0),
  };
}
