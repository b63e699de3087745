// Rooms under load, durable, beside room frameworks that carry the same exchange in memory; ratios within one run.
import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import type { Bench, Figures } from '../bench.ts';
import { withOwnServer } from '../rooms/measurement.ts';
import { recovery } from '../rooms/recovery.ts';
import { rounded, sideBySide } from '../rooms/side-by-side.ts';

const ROOT = new URL('../../../', import.meta.url);
const TSC = new URL('node_modules/typescript/bin/tsc', ROOT).pathname;
const PEERS = new URL('../peers/', import.meta.url);
const PACED_ROOMS = 500;
const EVERY_MS = 2000;
const PACED_MS = 20_000;

export const bench: Bench = {
  summary:
    'Exchanges a second beside three peers in memory, waits at a pace, 2,000 returns, memory a seat, recovery.',
  async run() {
    if (!existsSync(new URL('node_modules/', PEERS))) {
      execFileSync('npm', ['ci', '--no-audit', '--no-fund'], { cwd: PEERS, stdio: 'ignore' });
    }
    execFileSync(process.execPath, [TSC, '-b', 'server'], { cwd: ROOT, stdio: 'ignore' });
    const saturated = await sideBySide();
    const paced = await atAPace();
    return { ...saturated, ...paced, recover_1000_rooms_s: await recovery(1000) };
  },
};

async function atAPace(): Promise<Figures> {
  return withOwnServer(async ({ server, driver }) => {
    const before = await memoryOf(server);
    await driver.ask({ ask: 'open', url: server.url, rooms: PACED_ROOMS, peer: null });
    const kb = ((await memoryOf(server)) - before) / 1024 / (PACED_ROOMS * 4);
    // Opening 500 rooms and dealing first is not part of the steady pace.
    await driver.ask({ ask: 'pace', every: EVERY_MS, ms: PACED_MS / 2 });
    const { times, cpu } = await driver.ask({ ask: 'pace', every: EVERY_MS, ms: PACED_MS });
    const sorted = [...times].sort((a, b) => a - b);
    const quantile = (share: number) => rounded(sorted[Math.floor(sorted.length * share)]);
    const back = await driver.ask({ ask: 'drop-and-return' });
    return {
      paced_exchanges: times.length,
      paced_p50_ms: quantile(0.5),
      paced_p99_ms: quantile(0.99),
      paced_p999_ms: quantile(0.999),
      paced_driver_cpu: rounded(cpu),
      resume_2000_s: rounded(back.seconds),
      lost: back.losses.lost,
      doubled: back.losses.doubled,
      kb_per_idle_seat: rounded(kb),
    };
  });
}

/** Bytes the server holds after everything else was collected: its heap and the buffers beside it. */
async function memoryOf(server: { ask(line: string): Promise<string> }): Promise<number> {
  const { heapUsed, external }: { heapUsed: number; external: number } = JSON.parse(
    (await server.ask('memory')).replace('memory ', ''),
  );
  return heapUsed + external;
}
