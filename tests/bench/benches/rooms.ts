// Rooms under load, durable, beside room frameworks that carry the same exchange in memory; ratios within one run.
import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import type { Bench, Figures } from '../bench.ts';
import { memoryOf, type UnderLoad, withOwnServer } from '../rooms/measurement.ts';
import { recovery } from '../rooms/recovery.ts';
import { rounded, sideBySide } from '../rooms/side-by-side.ts';

const ROOT = new URL('../../../', import.meta.url);
const TSC = new URL('node_modules/typescript/bin/tsc', ROOT).pathname;
const PEERS = new URL('../peers/', import.meta.url);
const PACED_ROOMS = 500;
const EVERY_MS = 2000;
const PACED_MS = 20_000;
/** Within this time the four answers of an exchange come where people think apart. */
const SPREAD_MS = 1200;
const ROOMS_OF_MEMORY = 25;
/** Of eight exchanges each. */
const ROUNDS_OF_MEMORY = 8;

export const bench: Bench = {
  summary:
    'Exchanges a CPU-second beside four peers, waits at a pace, 2,000 returns, memory after reviews, recovery.',
  async run() {
    if (!existsSync(new URL('node_modules/', PEERS))) {
      execFileSync('npm', ['ci', '--no-audit', '--no-fund'], { cwd: PEERS, stdio: 'ignore' });
    }
    execFileSync(process.execPath, [TSC, '-b', 'server'], { cwd: ROOT, stdio: 'ignore' });
    const saturated = await sideBySide();
    const paced = await withOwnServer(atAPace);
    return {
      ...saturated,
      ...paced,
      kb_per_seat: await withOwnServer(afterReviews, { reviews: true }),
      recover_1000_s: await recovery(1000),
      lost: Number(saturated.lost) + Number(paced.lost),
      doubled: Number(saturated.doubled) + Number(paced.doubled),
    };
  },
};

async function atAPace({ server, driver }: UnderLoad): Promise<Figures> {
  await driver.ask({ ask: 'open', urls: [server.url], rooms: PACED_ROOMS, peer: null });
  // Opening 500 rooms and dealing first is not part of the steady pace.
  await driver.ask({ ask: 'pace', every: EVERY_MS, ms: PACED_MS / 2, over: 0 });
  const lockstep = await costOf(PACED_MS, 0);
  const apart = await costOf(PACED_MS / 2, SPREAD_MS);
  const sorted = [...lockstep.times].sort((a, b) => a - b);
  const quantile = (share: number) => rounded(sorted[Math.floor(sorted.length * share)]);
  const back = await driver.ask({ ask: 'drop-and-return' });
  return {
    paced_exchanges: sorted.length,
    paced_p50_ms: quantile(0.5),
    paced_p99_ms: quantile(0.99),
    paced_p999_ms: quantile(0.999),
    paced_driver_cpu: rounded(lockstep.cpu),
    paced_driver_stalls: lockstep.stalls,
    paced_cpu_us: Math.round(lockstep.cost * 1000),
    spread_cpu_us: Math.round(apart.cost * 1000),
    spread_cost: rounded(apart.cost / lockstep.cost),
    resume_2000_s: rounded(back.seconds),
    lost: back.losses.lost,
    doubled: back.losses.doubled,
  };

  /** In milliseconds of processor time an exchange, at the same pace however far apart the answers come. */
  async function costOf(ms: number, over: number) {
    const used = server.cpu();
    const reply = await driver.ask({ ask: 'pace', every: EVERY_MS, ms, over });
    return { ...reply, cost: (server.cpu() - used) / reply.times.length };
  }
}

/** Kilobytes a seat after 64 exchanges, with the review of the last round not yet replaced by the next deal. */
async function afterReviews({ server, driver }: UnderLoad): Promise<number | null> {
  // What rounds load into a server, and the code that is compiled for them, is there once, not for each seat.
  const before = await withMoreRooms();
  return rounded(((await withMoreRooms()) - before) / 1024 / (ROOMS_OF_MEMORY * 4));

  async function withMoreRooms(): Promise<number> {
    await driver.ask({ ask: 'open', urls: [server.url], rooms: ROOMS_OF_MEMORY, peer: null });
    await driver.ask({ ask: 'play-rounds', rounds: ROUNDS_OF_MEMORY });
    return memoryOf(server);
  }
}
