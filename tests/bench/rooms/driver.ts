// The driver's process: opens rooms at a server and plays them as its parent asks, one request after the other.
import { createInterface } from 'node:readline';
import type { OpenTable, SeatEvents } from './driven-table.ts';
import { Exchanges } from './exchanges.ts';
import type { Losses } from './own-seat.ts';
import { type OwnTable, openOwnTable } from './own-table.ts';

export type Request =
  /**
   * `peer`: the module that plays a peer's table, or null for our own server. Rooms take turns with several servers, or
   * the seats of each room do where they are `apart`.
   */
  | {
      readonly ask: 'open';
      readonly urls: readonly string[];
      readonly rooms: number;
      readonly peer: string | null;
      readonly apart?: boolean;
    }
  | { readonly ask: 'saturate'; readonly ms: number }
  /** The four answers of an exchange come spread over so many milliseconds, or all at once where `over` is 0. */
  | { readonly ask: 'pace'; readonly every: number; readonly ms: number; readonly over: number }
  /** Every room plays so many rounds and waits for the reviews of the last one. */
  | { readonly ask: 'play-rounds'; readonly rounds: number }
  | { readonly ask: 'drop-and-return' };

export interface Reply {
  /** Seconds from the request to this reply. */
  readonly seconds: number;
  /** Share of one core that the driver used meanwhile, 0 to 1. */
  readonly cpu: number;
  /** Milliseconds of each exchange, for those requests that make some. */
  readonly times: readonly number[];
  /** How often the driver itself was late with an answer that was due, by more than 5 ms. */
  readonly stalls: number;
  readonly losses: Losses;
}

/** How long an exchange may take before it counts as lost, in milliseconds. */
const PATIENCE = 10_000;
/** Rooms opened at the same time. */
const AT_ONCE = 8;

const exchanges = new Exchanges();
const own: OwnTable[] = [];
const losses: Losses = { lost: 0, doubled: 0 };

async function perform(request: Request): Promise<void> {
  switch (request.ask) {
    case 'open':
      return openAll(request);
    case 'saturate':
      return exchanges.saturated(request.ms);
    case 'pace':
      return exchanges.paced(request);
    case 'play-rounds':
      return playRounds(request.rounds);
    case 'drop-and-return':
      return dropAndReturn();
  }
}

async function openAll({ urls, rooms, peer, apart = false }: Request & { ask: 'open' }): Promise<void> {
  const open = peer === null ? openOwn : await playerOf(peer);
  const lanes = Array.from({ length: AT_ONCE }, async (_, lane) => {
    for (let room = lane; room < rooms; room += AT_ONCE) {
      await exchanges.add(apart ? urls : [urls[room % urls.length]!], open);
    }
  });
  await Promise.all(lanes);
  for (const table of own) table.begin();
  await exchanges.asked();
}

const openOwn: OpenTable = async (urls, events) => {
  const table = await openOwnTable(urls, events, losses);
  own.push(table);
  return table.driven;
};

async function playerOf(peer: string): Promise<OpenTable> {
  const module: { openTable(url: string, seats: readonly SeatEvents[]): ReturnType<OpenTable> } =
    await import(new URL(`../peers/${peer}-table.mjs`, import.meta.url).href);
  return ([url], seats) => module.openTable(url!, seats);
}

async function playRounds(rounds: number): Promise<void> {
  for (const table of own) table.endAfter(rounds);
  await exchanges.saturatedUntil(() => own.every((table) => table.isReviewed(rounds)));
}

/** Cuts every connection while answers are on their way; all reconnect at once and play on. */
async function dropAndReturn(): Promise<void> {
  exchanges.once();
  await Promise.all(own.map((table) => table.drop()));
  await Promise.all(own.map((table) => table.comeBack()));
}

async function replyTo(request: Request): Promise<Reply> {
  exchanges.clear();
  const [began, used] = [performance.now(), process.cpuUsage()];
  await perform(request);
  const ms = performance.now() - began;
  const { user, system } = process.cpuUsage(used);
  const times = [...exchanges.times];
  const { stalls } = exchanges;
  losses.lost += await exchanges.settled(PATIENCE);
  return { seconds: ms / 1000, cpu: (user + system) / 1000 / ms, times, stalls, losses };
}

for await (const line of createInterface({ input: process.stdin })) {
  const request: Request = JSON.parse(line);
  process.stdout.write(`${JSON.stringify(await replyTo(request))}\n`);
}
