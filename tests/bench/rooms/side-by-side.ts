// Our server and its peers at full speed: all alive and warm, each measured once a turn, compared within the turn.
import type { Figures } from '../bench.ts';
import { type UnderLoad, withOwnServer, withPeer } from './measurement.ts';
import type { Losses } from './own-seat.ts';

const ROOMS = 100;
/** Other load on the machine meets all alike in a turn; every second one goes the other way round. */
const TURNS = 7;
const SPAN_MS = 3000;
/** Exchanges until a server's code is compiled: before that its figures say how long it has run. */
const WARM_UP = 8000;
/** A driver busier than this share of its core measures itself, not the server. */
const BUSIEST = 0.9;

/** Module and name in the figures of each peer. */
const PEERS = [
  ['colyseus', 'colyseus'],
  ['boardgame', 'boardgameio'],
  ['prototype', 'prototype'],
  ['bare', 'bare_ws'],
] as const;
const OWN = 'own';

interface Contender extends UnderLoad {
  readonly name: string;
  /** The module that plays a peer's table; null for our own server. */
  readonly peer: string | null;
}

interface Measured {
  /** Null when the driver was too busy for this to say what the server can do. */
  readonly perSecond: number | null;
  /** Exchanges for each second of processor time that the server used, however busy the driver was. */
  readonly perServerSecond: number;
  readonly driverCpu: number;
  /** Since the driver was started. */
  readonly losses: Losses;
}

type Turn = ReadonlyMap<string, Measured>;

export function sideBySide(): Promise<Figures> {
  return withAll([[null, OWN], ...PEERS], [], async (contenders) => {
    for (const contender of contenders) await warmUp(contender);
    const turns: Turn[] = [];
    for (let turn = 0; turn < TURNS; turn++) {
      const measured = new Map<string, Measured>();
      const order = turn % 2 === 0 ? contenders : [...contenders].reverse();
      for (const contender of order) measured.set(contender.name, await measure(contender));
      turns.push(measured);
    }
    return figuresOf(turns);
  });
}

type Entry = readonly [peer: string | null, name: string];

function withAll<T>(
  [entry, ...rest]: readonly Entry[],
  alive: readonly Contender[],
  run: (contenders: readonly Contender[]) => Promise<T>,
): Promise<T> {
  if (entry === undefined) return run(alive);
  const [peer, name] = entry;
  const withServer = peer === null ? withOwnServer<T> : withPeer(peer)<T>;
  return withServer((load) => withAll(rest, [...alive, { ...load, peer, name }], run));
}

async function warmUp({ server, driver, peer }: Contender): Promise<void> {
  await driver.ask({ ask: 'open', urls: [server.url], rooms: ROOMS, peer });
  for (let made = 0; made < WARM_UP; ) {
    made += (await driver.ask({ ask: 'saturate', ms: SPAN_MS })).times.length;
  }
}

async function measure({ server, driver }: Contender): Promise<Measured> {
  const used = server.cpu();
  const { times, seconds, cpu, losses } = await driver.ask({ ask: 'saturate', ms: SPAN_MS });
  return {
    perSecond: cpu > BUSIEST ? null : times.length / seconds,
    perServerSecond: (times.length / (server.cpu() - used)) * 1000,
    driverCpu: cpu,
    losses,
  };
}

function figuresOf(turns: readonly Turn[]): Figures {
  const all = turns.flatMap((turn) => [...turn.values()]);
  const last = [...turns.at(-1)!.values()];
  return {
    ...rateOf(turns, OWN),
    ...Object.fromEntries(PEERS.flatMap(([, name]) => Object.entries(comparison(turns, name)))),
    lost: last.reduce((sum, { losses }) => sum + losses.lost, 0),
    doubled: last.reduce((sum, { losses }) => sum + losses.doubled, 0),
    driver_cpu: rounded(Math.max(...all.map(({ driverCpu }) => driverCpu))),
    void_spans: all.filter(({ perSecond }) => perSecond === null).length,
  };
}

/** The headline is a ratio of processor time, which other load on the machine leaves alone. */
function comparison(turns: readonly Turn[], name: string): Figures {
  const perCpu = turns.map((turn) => turn.get(OWN)!.perServerSecond / turn.get(name)!.perServerSecond);
  const rates = turns.flatMap((turn) => {
    const [ours, theirs] = [turn.get(OWN)!.perSecond, turn.get(name)!.perSecond];
    return ours === null || theirs === null ? [] : [ours / theirs];
  });
  const { middle, lowest, highest } = spreadOf(perCpu);
  return {
    [`vs_${name}_cpu`]: middle,
    [`vs_${name}_cpu_lowest`]: lowest,
    [`vs_${name}_cpu_highest`]: highest,
    [`vs_${name}_rate`]: spreadOf(rates).middle,
    ...rateOf(turns, name),
  };
}

function rateOf(turns: readonly Turn[], name: string): Figures {
  const measured = turns.map((turn) => turn.get(name)!);
  return {
    [`${name}_exchanges_per_s`]: spreadOf(measured.flatMap(({ perSecond }) => perSecond ?? [])).middle,
    [`${name}_exchanges_per_cpu_second`]: spreadOf(measured.map((one) => one.perServerSecond)).middle,
  };
}

export function spreadOf(values: readonly number[]) {
  const sorted = [...values].sort((a, b) => a - b);
  return {
    middle: rounded(sorted[Math.floor(sorted.length / 2)]),
    lowest: rounded(sorted[0]),
    highest: rounded(sorted.at(-1)),
  };
}

/** To hundredths; null for nothing. */
export function rounded(value: number | undefined): number | null {
  return value === undefined ? null : Math.round(value * 100) / 100;
}
