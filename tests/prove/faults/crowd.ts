// Rooms full of simulated players at real sockets, each with the page's own connection, who keep playing through every fault.
import { WebSocket } from 'ws';
import type { OpenSocket } from '../../../client/connection/socket.ts';
import { recordedIn } from '../../../server/aggregate/recorded.ts';
import type { Store } from '../../../server/ports.ts';
import { roomEvents } from '../../../server/room/stored-event.ts';
import { HOUSE_CARD } from '../../../shared-engine/card/house/card.ts';
import { SOCKET_PATH, ticketPath } from '../../../shared-engine/protocol/paths.ts';
import { ticketSchema } from '../../../shared-engine/protocol/room-http.ts';
import { CLOSE } from '../../../shared-engine/protocol/version.ts';
import { type Random, stream } from '../../../shared-engine/rules/deal/random.ts';
import type { Seat } from '../../../shared-engine/rules/deal/seat.ts';
import { FRIENDS, type Guest, openRoom, post, takeSeat } from '../../kit/http-client.ts';
import { choicesIn, violationsIn } from '../../simulator/invariants.ts';
import { SimulatedPlayer } from '../../simulator/simulated-player.ts';
import { ABSENT_MS, pause } from './server-under-test.ts';

export interface CrowdOptions {
  readonly rooms: number;
  /** Where the servers listen; each connection picks one of them at random. */
  readonly urls: readonly string[];
  readonly seed: string;
  /** The longest pause before a choice, in milliseconds. */
  readonly maxThinkingMs: number;
  /** Seconds for a step, or null. */
  readonly deadline: number | null;
  /** In a hundred frames, how many are sent twice, and how many once more a good while later. */
  readonly duplicatePercent?: number;
}

export interface Verdict {
  readonly violations: readonly string[];
  readonly choices: number;
  readonly acknowledged: number;
  readonly rounds: number;
  /** The longest time that a command waited for its answer after `healedAt`, in milliseconds. */
  readonly slowestAnswerMs: number;
  /** The longest that a timer of this process came late, in milliseconds: how busy the machine was. */
  readonly maxTimerDelayMs: number;
}

interface Room {
  readonly code: string;
  readonly players: readonly SimulatedPlayer[];
}

export class Crowd {
  readonly #wish: CrowdOptions;
  readonly #random: Random;
  readonly #parties: Room[] = [];
  /** By room, the number of the round that nobody goes beyond. */
  readonly #last = new Map<string, number>();
  /** How often a connection closed with each code. */
  readonly closeCodes = new Map<number, number>();
  /** How often a server said that it cannot store anything. */
  storageWarnings = 0;
  readonly #lateness = watchTimerDelay();

  private constructor(wish: CrowdOptions) {
    this.#wish = wish;
    this.#random = stream(wish.seed, 'crowd');
  }

  /** Opens the rooms and seats three people at each, with a bot on the fourth seat and one spectator. */
  static async gather(wish: CrowdOptions): Promise<Crowd> {
    const crowd = new Crowd(wish);
    for (let at = 0; at < wish.rooms; at++) await crowd.#open(at);
    await crowd.until(() => crowd.players.every(({ last }) => last !== undefined), 20_000);
    return crowd;
  }

  get players(): SimulatedPlayer[] {
    return this.#parties.flatMap(({ players }) => players);
  }

  get codes(): readonly string[] {
    return this.#parties.map(({ code }) => code);
  }

  get random(): Random {
    return this.#random;
  }

  /** True when it came to hold in time. */
  async until(holds: () => boolean, ms: number): Promise<boolean> {
    const end = performance.now() + ms;
    while (!holds()) {
      if (performance.now() > end) return false;
      await pause(20);
    }
    return true;
  }

  /** Everybody finishes the open round, then the rooms' logs are checked. */
  async finish(store: Store, healedAt: number, patience = 60_000): Promise<Verdict> {
    for (const { code, players } of this.#parties) {
      this.#last.set(code, Math.max(1, ...players.map(({ last }) => last?.table.round ?? 0)));
    }
    const seated = this.players.filter(({ holder }) => holder !== null);
    const closed = await this.until(() => seated.every((one) => one.isDone), patience);
    await this.until(() => this.divided === 0, 10_000);
    const violations = closed
      ? []
      : [
          `not closed: ${seated
            .filter((one) => !one.isDone)
            .map(describe)
            .join(', ')}`,
        ];
    let choices = 0;
    let rounds = 0;
    for (const { code, players } of this.#parties) {
      const stored = await store.history(code);
      if (stored === null) continue;
      const log = stored.rows.flatMap((row) => recordedIn(row, roomEvents));
      const { id, name } = HOUSE_CARD;
      const scene = {
        code,
        card: { id, name },
        stored,
        live: [],
        players,
        absentMs: ABSENT_MS,
        healed: closed,
      };
      // Somebody may come or go between the look at the log and the look at the people; the log is read last.
      violations.push(...violationsIn(scene).map((violation) => `${code}: ${violation}`));
      choices += choicesIn(log);
      rounds += log.filter(({ event }) => event.kind === 'round' && event.event.kind === 'dealt').length;
    }
    const ordered = this.players.flatMap((one) => [...one.sent.values()]);
    const acknowledged = ordered.filter(({ answers }) => answers.some(({ code }) => code === 'ack')).length;
    const waits = ordered.flatMap(({ at, answers }) => {
      const last = answers.find(({ code }) => code !== 'try-later' && code !== 'too-fast');
      return last && last.at > healedAt ? [last.at - Math.max(at, healedAt)] : [];
    });
    this.stop();
    const maxTimerDelayMs = this.#lateness();
    return {
      violations,
      choices,
      acknowledged,
      rounds,
      slowestAnswerMs: Math.round(Math.max(0, ...waits)),
      maxTimerDelayMs,
    };
  }

  stop(): void {
    for (const one of this.players) one.stop();
  }

  /** Rooms whose people do not all know the same number of events. */
  get divided(): number {
    return this.#parties.filter(({ players }) => new Set(players.map(({ last }) => last?.seq)).size > 1)
      .length;
  }

  async #open(at: number): Promise<void> {
    const { urls, deadline } = this.#wish;
    const [url] = urls;
    const server = { url: url! };
    const terms = { deadline, revealRacks: false };
    const host = await openRoom(server, { ...FRIENDS, terms, bots: [null, null, 'casual'] });
    const guests = [host, await takeSeat(server, host.code), await takeSeat(server, host.code)];
    const players = [...guests, null].map((guest, place) =>
      this.#resident(`r${at}s${place}`, host.code, guest),
    );
    this.#parties.push({ code: host.code, players });
    for (const one of players) one.start();
  }

  #resident(name: string, code: string, guest: Guest | null): SimulatedPlayer {
    const { seed, maxThinkingMs } = this.#wish;
    const pocket = { secret: guest?.secret };
    return new SimulatedPlayer(name, guest && holderOf(guest.seat), {
      after: (ms, run) => {
        const timer = setTimeout(run, ms);
        return () => clearTimeout(timer);
      },
      now: () => performance.now(),
      random: stream(seed, name),
      maxThinkingMs: maxThinkingMs,
      lastRound: () => this.#last.get(code) ?? Number.POSITIVE_INFINITY,
      askTicket: async (signal) => {
        try {
          const response = await post(`${this.#anyUrl()}${ticketPath(code)}`, {}, pocket.secret, signal);
          const fresh = /^seat=([^;]+)/.exec(response.headers.get('set-cookie') ?? '')?.[1];
          pocket.secret = fresh ?? pocket.secret;
          return { ok: true, value: ticketSchema.parse(await response.json()) };
        } catch {
          return { ok: false, code: 'unreachable', message: 'no answer' };
        }
      },
      openWire: (events) => this.#wire(events),
    });
  }

  #anyUrl(): string {
    const { urls } = this.#wish;
    return urls[this.#random.below(urls.length)]!;
  }

  #wire(events: Parameters<OpenSocket>[0]): ReturnType<OpenSocket> {
    const socket = new WebSocket(`${this.#anyUrl().replace('http', 'ws')}${SOCKET_PATH}`);
    socket.on('open', () => events.opened());
    socket.on('message', (data) => {
      const text = data.toString();
      if (text.includes('"storage"') && text.includes('false')) this.storageWarnings++;
      events.text(text);
    });
    socket.on('close', (code, reason) => {
      this.closeCodes.set(code, (this.closeCodes.get(code) ?? 0) + 1);
      events.closed(code, reason.toString());
    });
    socket.on('error', () => {});
    return {
      send: (text) => {
        if (socket.readyState !== WebSocket.OPEN) return;
        socket.send(text);
        const chance = this.#random.below(100);
        const { duplicatePercent = 0 } = this.#wish;
        if (text.includes('"hello"')) return;
        if (chance < duplicatePercent) socket.send(text);
        if (chance >= 100 - duplicatePercent) {
          setTimeout(() => socket.readyState === WebSocket.OPEN && socket.send(text), 700);
        }
      },
      close: () => socket.close(1000),
    };
  }
}

/** Starts a 50 ms timer; the function returned stops it and answers its worst delay in milliseconds. */
function watchTimerDelay(): () => number {
  let late = 0;
  let last = performance.now();
  const timer = setInterval(() => {
    const now = performance.now();
    late = Math.max(late, now - last - 50);
    last = now;
  }, 50);
  timer.unref();
  return () => {
    clearInterval(timer);
    return Math.round(late);
  };
}

/** The events of a new room: it opens, seat 0 is taken, the bot sits down, then seats 1 and 2. */
function holderOf(seat: Seat): { seat: Seat; since: number } {
  return { seat, since: seat === 0 ? 2 : 3 + seat };
}

function describe({ name, link, last, unanswered }: SimulatedPlayer): string {
  return `${name} (${link.kind}, round ${last?.table.round}, ${unanswered.length} unanswered)`;
}

/** How many connections were closed with the code of a server that restarts. */
export function restartCloses({ closeCodes }: Crowd): number {
  return closeCodes.get(CLOSE.restarting) ?? 0;
}
