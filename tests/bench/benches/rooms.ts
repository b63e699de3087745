// Rooms under load, durable, beside room frameworks that carry the same exchange in memory; ratios within one run.
import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import type { Bench, Figures } from '../bench.ts';
import { withOwnServer, withPeer } from '../rooms/measurement.ts';
import { recovery } from '../rooms/recovery.ts';

const ROOT = new URL('../../../', import.meta.url);
const TSC = new URL('node_modules/typescript/bin/tsc', ROOT).pathname;
const PEERS = new URL('../peers/', import.meta.url);
const ROOMS = 100;
/** Turns, in each of which every server is measured once, so that other load on the machine meets all alike. */
const TURNS = 5;
const WARM_UP_MS = 1500;
const SPAN_MS = 3000;
/** A driver busier than this share of its core measures itself, not the server. */
const BUSIEST = 0.9;
const PACED_ROOMS = 500;
const EVERY_MS = 2000;
const PACED_MS = 20_000;
const PEER_NAMES = ['colyseus', 'boardgame', 'bare'] as const;

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

interface Rate {
  /** Null when the driver was too busy for this to say what the server can do. */
  readonly perSecond: number | null;
  /** Exchanges for each second of processor time that the server used, however busy the driver was. */
  readonly perServerSecond: number;
}

/** Values by name, and the middle, the lowest and the highest of each. */
class Sheet {
  readonly #values = new Map<string, number[]>();

  add(name: string, value: number): void {
    this.#values.set(
      name,
      [...this.#of(name), value].sort((a, b) => a - b),
    );
  }

  middle(name: string): number | null {
    const values = this.#of(name);
    return rounded(values[Math.floor(values.length / 2)]);
  }

  lowest(name: string): number | null {
    return rounded(this.#of(name)[0]);
  }

  highest(name: string): number | null {
    return rounded(this.#of(name).at(-1));
  }

  #of(name: string): readonly number[] {
    return this.#values.get(name) ?? [];
  }
}

async function sideBySide(): Promise<Figures> {
  const ratios = new Sheet();
  const perCpu = new Sheet();
  const rates = new Sheet();
  let [busiest, voided, lost, doubled] = [0, 0, 0, 0];
  for (let turn = 0; turn < TURNS; turn++) {
    const own = await measure(null);
    if (own.perSecond !== null) rates.add('own', own.perSecond);
    for (const peer of PEER_NAMES) {
      const theirs = await measure(peer);
      perCpu.add(peer, own.perServerSecond / theirs.perServerSecond);
      if (theirs.perSecond === null) continue;
      rates.add(peer, theirs.perSecond);
      if (own.perSecond !== null) ratios.add(peer, own.perSecond / theirs.perSecond);
    }
  }
  return {
    vs_colyseus: ratios.middle('colyseus'),
    vs_boardgameio: ratios.middle('boardgame'),
    vs_bare_ws: ratios.middle('bare'),
    vs_colyseus_lowest: ratios.lowest('colyseus'),
    vs_colyseus_highest: ratios.highest('colyseus'),
    vs_colyseus_per_cpu_second: perCpu.middle('colyseus'),
    vs_boardgameio_per_cpu_second: perCpu.middle('boardgame'),
    vs_bare_ws_per_cpu_second: perCpu.middle('bare'),
    exchanges_per_s: rates.middle('own'),
    colyseus_exchanges_per_s: rates.middle('colyseus'),
    boardgameio_exchanges_per_s: rates.middle('boardgame'),
    bare_ws_exchanges_per_s: rates.middle('bare'),
    saturated_lost: lost,
    saturated_doubled: doubled,
    driver_cpu: rounded(busiest),
    void_runs: voided,
  };

  async function measure(peer: string | null): Promise<Rate> {
    return (peer === null ? withOwnServer : withPeer(peer))(async ({ server, driver }) => {
      await driver.ask({ ask: 'open', url: server.url, rooms: ROOMS, peer });
      await driver.ask({ ask: 'saturate', ms: WARM_UP_MS });
      const used = server.cpu();
      const { times, seconds, cpu, losses } = await driver.ask({ ask: 'saturate', ms: SPAN_MS });
      lost += losses.lost;
      doubled += losses.doubled;
      busiest = Math.max(busiest, cpu);
      if (cpu > BUSIEST) voided++;
      return {
        perSecond: cpu > BUSIEST ? null : times.length / seconds,
        perServerSecond: (times.length / (server.cpu() - used)) * 1000,
      };
    });
  }
}

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

function rounded(value: number | undefined): number | null {
  return value === undefined ? null : Math.round(value * 100) / 100;
}
