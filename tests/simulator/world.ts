// The simulated world: one store, one network, servers that start and die, and the people at one table.
import { record } from '../../server/aggregate/recorded.ts';
import type { Tickets, Wake, WakeBus } from '../../server/ports.ts';
import type { RoomEvent } from '../../server/room/event.ts';
import { memoryStore } from '../../server/store/memory.ts';
import { memoryNodes } from '../../server/store/nodes-memory.ts';
import { publishingStore } from '../../server/store/publishing-store.ts';
import { memoryTickets } from '../../server/store/tickets.ts';
import { simplestLegal } from '../../server/workers/bots.ts';
import { type Random, stream } from '../../shared-engine/rules/deal/random.ts';
import type { AnswerChoice } from '../../shared-engine/rules/exchange/command.ts';
import { STANDARD_TERMS } from '../../shared-engine/rules/exchange/terms.ts';
import { eventsOf, logOf } from '../kit/room-logs.ts';
import { seededEntropy } from '../kit/server.ts';
import type { Assembly } from './assembly.ts';
import { faultyStore, healthyDisk } from './disk.ts';
import { holdersIn } from './invariants.ts';
import { reviewOf } from './sample-review.ts';
import { type SimulatedConnection, simulatedConnection } from './simulated-connection.ts';
import { SimulatedPlayer } from './simulated-player.ts';
import { SimulatedServer } from './simulated-server.ts';
import { MachineClock, VirtualTime } from './virtual-time.ts';

export const CODE = 'ABCDEFGH';
/** How wrong the clock of a server may be, in milliseconds. */
const SKEWS = [0, 0, 3_600_000, -3_600_000, 7_000] as const;

export interface Machine {
  readonly clock: MachineClock;
  readonly server: SimulatedServer;
  readonly connections: Set<SimulatedConnection>;
  up: boolean;
  kill(): void;
}

type WakeListener = (wake: Wake) => void;
type OpenWire = ConstructorParameters<typeof SimulatedPlayer>[2]['openWire'];

export class World {
  readonly random: Random;
  readonly time = new VirtualTime();
  readonly rooms = memoryStore();
  readonly disk = healthyDisk();
  readonly network = { maxDelayMs: 8, duplicatePercent: 0, lostWakesPercent: 0 };
  readonly machines: Machine[] = [];
  readonly players: SimulatedPlayer[] = [];
  readonly #seed: string;
  readonly #assembly: Assembly;
  readonly #entropy: ReturnType<typeof seededEntropy>;
  readonly #circle: ReturnType<typeof memoryNodes>;
  readonly #tickets: Tickets;
  readonly #sharedStore: ReturnType<typeof memoryStore>;
  readonly #wakeListeners = new Set<WakeListener>();

  constructor(seed: string, assembly: Assembly) {
    this.#seed = seed;
    this.#assembly = assembly;
    this.random = stream(seed, 'world');
    this.#sharedStore = assembly.sharedStore?.(this.rooms) ?? this.rooms;
    this.#entropy = seededEntropy(seed);
    this.#circle = memoryNodes(this.#entropy);
    const tickets = memoryTickets(new MachineClock(this.time, 0), this.#entropy);
    this.#tickets = assembly.tickets?.(tickets) ?? tickets;
  }

  /** Two servers start, and everybody at the table connects to one of them. */
  async begin(): Promise<void> {
    await this.rooms.create(CODE, logOf(firstEvents()));
    const holders = holdersIn((await eventsOf(this.rooms, CODE)) ?? []);
    for (let server = 0; server < 2; server++) this.machines.push(this.start());
    for (const holder of holders) this.players.push(this.#player(`seat ${holder.seat}`, holder));
    this.players.push(this.#player('spectator', null));
    for (const player of this.players) player.start();
  }

  start(): Machine {
    const clock = new MachineClock(this.time, SKEWS[this.random.below(SKEWS.length)]!);
    const nodes = this.#circle.join();
    const listeners = new Set<WakeListener>();
    const server = this.#server(clock, nodes, listeners);
    const machine: Machine = {
      clock,
      server,
      connections: new Set(),
      up: true,
      kill: () => {
        machine.up = false;
        clock.stop();
        for (const listener of listeners) this.#wakeListeners.delete(listener);
        void nodes.close();
        for (const connection of machine.connections) connection.serverDied();
      },
    };
    return machine;
  }

  /** One of the servers that run. */
  anyServer(): Machine | undefined {
    const up = this.machines.filter((machine) => machine.up);
    return up[this.random.below(Math.max(1, up.length))];
  }

  #server(
    clock: MachineClock,
    nodes: ReturnType<ReturnType<typeof memoryNodes>['join']>,
    listeners: Set<WakeListener>,
  ): SimulatedServer {
    const assembly = this.#assembly;
    const plain = this.#bus(clock, listeners);
    const bus = assembly.bus?.(plain) ?? plain;
    const faulty = faultyStore(this.#sharedStore, this.disk, clock, this.random);
    return new SimulatedServer({
      clock,
      entropy: this.#entropy,
      bus,
      store: publishingStore(assembly.store?.(faulty) ?? faulty, bus),
      nodes: assembly.nodes?.(nodes) ?? nodes,
      tickets: this.#tickets,
      bots: assembly.bots ?? { choose: async ({ view }) => votingToContinue(simplestLegal(view)) },
      reviewer: { review: async ({ record: { seat } }) => reviewOf(assembly.reviewedSeat?.(seat) ?? seat) },
    });
  }

  #bus(clock: MachineClock, listeners: Set<WakeListener>): WakeBus {
    const { random, network, time } = this;
    return {
      publish: (wake) => {
        for (const listener of this.#wakeListeners) {
          if (random.below(100) < network.lostWakesPercent) continue;
          time.after(random.below(network.maxDelayMs) + 1, () => listener(wake));
        }
      },
      subscribe: (listener) => {
        const late: WakeListener = (wake) => clock.after(0, () => listener(wake));
        this.#wakeListeners.add(late);
        listeners.add(late);
        return () => this.#wakeListeners.delete(late);
      },
      close: async () => {},
    };
  }

  #player(name: string, holder: SimulatedPlayer['holder']): SimulatedPlayer {
    const { random, network, time } = this;
    const after = (ms: number, run: () => void) => time.after(ms, run);
    return new SimulatedPlayer(name, holder, {
      after,
      now: () => time.now,
      random: stream(this.#seed, name),
      maxThinkingMs: 1500,
      lastRound: () => 1,
      askTicket: async () => {
        await new Promise<void>((resolve) => after(1 + random.below(2 * network.maxDelayMs), resolve));
        const live = await this.anyServer()
          ?.server.registry.find(CODE)
          .catch(() => null);
        if (!live) return { ok: false, code: 'unreachable', message: 'no answer' };
        return {
          ok: true,
          value: { ticket: await this.#tickets.issue({ code: CODE, holder, shown: null }) },
        };
      },
      openWire: (events) => this.#connect(events, holder),
    });
  }

  #connect(events: Parameters<OpenWire>[0], holder: SimulatedPlayer['holder']): ReturnType<OpenWire> {
    const { time, random, network } = this;
    const machine = this.anyServer();
    const connection = simulatedConnection(
      {
        time,
        random,
        maxDelayMs: () => network.maxDelayMs,
        duplicatePercent: () => network.duplicatePercent,
        onEnded: () => machine?.connections.delete(connection),
      },
      events,
      (end) => machine?.server.connect(this.#assembly.connection?.(end, holder) ?? end) ?? null,
    );
    machine?.connections.add(connection);
    return connection.wire;
  }
}

function firstEvents() {
  const hash = (digit: string) => digit.repeat(64);
  const events: RoomEvent[] = [
    {
      kind: 'opened',
      mode: 'friends',
      terms: { ...STANDARD_TERMS.friends, deadline: 15 },
      card: { kind: 'house' },
      classCode: null,
    },
    { kind: 'seat-taken', seat: 0, name: 'Ines', secretHash: hash('a') },
    { kind: 'bot-seated', seat: 3, name: 'Odo', style: 'casual' },
    { kind: 'seat-taken', seat: 1, name: 'Tomas', secretHash: hash('b') },
    { kind: 'seat-taken', seat: 2, name: 'Wilma', secretHash: hash('c') },
  ];
  return record(events, { after: 0, at: Date.UTC(2026, 0, 1) });
}

/** Bots vote to continue, so that the second Charleston is played too. */
function votingToContinue(choice: AnswerChoice): AnswerChoice {
  return choice.kind === 'vote' ? { ...choice, go: true } : choice;
}
