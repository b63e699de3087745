// A club evening behind one address: people open the page, take seats, play a step and reload, all at the same time.
import { readdirSync } from 'node:fs';
import path from 'node:path';
import { BUILT_PAGE } from '../../server/http/pages.ts';
import { cardPath, roomPath, tablePath } from '../../shared-engine/protocol/paths.ts';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import { anyAnswer, deal, type Guest, openRoom, ownView, sitDown, takeSeat } from './http-client.ts';
import type { TestServer } from './server.ts';
import type { Peer } from './sockets.ts';

type Address = Pick<TestServer, 'url'>;

/** Everybody's requests at one server, counted. */
export class Router {
  requests = 0;
  /** What was answered otherwise than with what was asked for. */
  readonly refused: string[] = [];
  readonly #server: Address;
  /** Files that a first visit takes beside the document. */
  readonly #files: readonly string[];

  constructor(server: Address, files: readonly string[]) {
    this.#server = server;
    this.#files = files;
  }

  async get(path: string, secret = ''): Promise<void> {
    const headers = { authorization: `Bearer ${secret}` };
    const response = await this.#counted(1, () => fetch(`${this.#server.url}${path}`, { headers }));
    await response.arrayBuffer();
    if (!response.ok) this.refused.push(`${path} ${response.status}`);
  }

  /** The document and every file of the page, as a browser that has none of them asks for them. */
  async visit(path: string): Promise<void> {
    for (const file of [path, ...this.#files]) await this.get(file);
  }

  /** Four people with seats at a new table. */
  async table(): Promise<readonly Guest[]> {
    const host = await this.#counted(1, () => openRoom(this.#server));
    const friends = await this.#counted(3, () =>
      Promise.all([1, 2, 3].map(() => takeSeat(this.#server, host.code))),
    );
    return [host, ...friends];
  }

  /** A page that opens at a seat, with its files stored already: the table, its card, a ticket and a socket. */
  async arrive(guest: Guest): Promise<Peer> {
    await this.get(tablePath(guest.code));
    for (const path of [roomPath(guest.code), cardPath(guest.code)]) await this.get(path, guest.secret);
    return this.#counted(2, () => sitDown(this.#server, guest));
  }

  /** Rejects where a guest gets nowhere. */
  #counted<T>(requests: number, ask: () => Promise<T>): Promise<T> {
    this.requests += requests;
    return ask();
  }
}

export interface ClubEvening {
  readonly people: readonly Guest[];
  /** At the end, in the order of the people. */
  readonly peers: readonly Peer[];
  /** From the first request of each to the table on the screen, and from a reload to it, in milliseconds. */
  readonly joinMs: readonly number[];
  readonly reloadMs: readonly number[];
}

export async function clubEvening(
  router: Router,
  { tables, reloads }: { readonly tables: number; readonly reloads: number },
): Promise<ClubEvening> {
  const seated = await Promise.all(Array.from({ length: tables }, () => router.table()));
  const people = seated.flat();
  const joinMs: number[] = [];
  const reloadMs: number[] = [];
  let peers = await Promise.all(
    people.map((guest) =>
      timed(joinMs, async () => {
        await router.visit(tablePath(guest.code));
        return router.arrive(guest);
      }),
    ),
  );
  await Promise.all(seated.map((_, n) => deal(peers.slice(4 * n, 4 * n + 4))));
  await Promise.all(peers.map(chooseFirst));
  for (let reload = 0; reload < reloads; reload++) {
    peers = await Promise.all(
      people.map(async (guest, n) => {
        // The old socket ends late, as on a weak line: the new one is there before.
        const again = await timed(reloadMs, () => router.arrive(guest));
        await peers[n]!.close();
        return again;
      }),
    );
  }
  return { people, peers, joinMs, reloadMs };
}

/** Any legal answer to the first question; it is acknowledged. */
export async function chooseFirst(peer: Peer): Promise<void> {
  const answer = await peer.choose(anyAnswer(ownView(peer), stream('club', `seat ${peer.table.you}`)));
  if (answer.kind !== 'ack') throw new Error(`${answer.code}: ${answer.message}`);
}

/** Of the page as it is built: the scripts and styles that a first visit fetches, beside the document. */
export function builtFiles(): string[] {
  return readdirSync(path.join(BUILT_PAGE, 'assets'))
    .filter((file) => /\.(js|css)$/.test(file))
    .map((file) => `/assets/${file}`);
}

/** Of these figures, the one that 99 of 100 do not exceed. */
export function p99(figures: readonly number[]): number {
  const sorted = figures.toSorted((a, b) => a - b);
  return sorted[Math.max(0, Math.ceil(0.99 * sorted.length) - 1)] ?? 0;
}

async function timed<T>(into: number[], run: () => Promise<T>): Promise<T> {
  const started = performance.now();
  const result = await run();
  into.push(performance.now() - started);
  return result;
}
