// Simulates two servers, one disk and four people who play a round while faults drawn from a seed happen.
import { record } from '../../server/aggregate/recorded.ts';
import type { Wake } from '../../server/ports.ts';
import type { RoomEvent } from '../../server/room/event.ts';
import { replayRoom } from '../../server/room/room.ts';
import { personsOf, type RoomState } from '../../server/room/state.ts';
import { memoryStore } from '../../server/store/memory.ts';
import { memoryNodes } from '../../server/store/nodes-memory.ts';
import { publishingStore } from '../../server/store/publishing-store.ts';
import { memoryTickets } from '../../server/store/tickets.ts';
import { simplestLegal } from '../../server/workers/bots.ts';
import { HOUSE_CARD } from '../../shared-engine/card/house/card.ts';
import { type Random, stream } from '../../shared-engine/rules/deal/random.ts';
import type { AnswerChoice } from '../../shared-engine/rules/exchange/command.ts';
import { eventsOf, logOf } from '../kit/room-logs.ts';
import { seededEntropy } from '../kit/server.ts';
import { type Assembly, asShipped } from './assembly.ts';
import { faultyStore, healthyDisk } from './disk.ts';
import { type Fault, planFaults } from './faults.ts';
import { choicesIn, holdersIn, violationsIn } from './invariants.ts';
import { reviewOf } from './sample-review.ts';
import { type SimulatedConnection, simulatedConnection } from './simulated-connection.ts';
import { SimulatedPlayer } from './simulated-player.ts';
import { SimulatedServer } from './simulated-server.ts';
import { MachineClock, VirtualTime } from './virtual-time.ts';

const CODE = 'ABCDEFGH';
/** Everything must agree again this long after the last fault, in milliseconds. */
const SETTLE_MS = 5000;
/** A round that is not closed this long after the last fault counts as stuck, in milliseconds. */
const ROUND_TIMEOUT_MS = 15 * 60_000;

interface Machine {
  clock: MachineClock;
  server: SimulatedServer;
  readonly connections: Set<SimulatedConnection>;
  up: boolean;
  kill(): void;
}

export interface Outcome {
  readonly violations: readonly string[];
  readonly choices: number;
  readonly faults: number;
  /** Everything that was stored and received, as text: the same seed must give the same trace. */
  readonly trace: string;
}

/** The seed and the assembly alone decide what happens. */
export async function simulate(seed: string, assembly: Assembly = asShipped): Promise<Outcome> {
  const random = stream(seed, 'world');
  const time = new VirtualTime();
  const rooms = memoryStore();
  const kept = assembly.sharedStore?.(rooms) ?? rooms;
  const disk = healthyDisk();
  const entropy = seededEntropy(seed);
  const circle = memoryNodes(entropy);
  const tickets =
    assembly.tickets?.(memoryTickets(new MachineClock(time, 0), entropy)) ??
    memoryTickets(new MachineClock(time, 0), entropy);
  const hearers = new Set<(wake: Wake) => void>();
  const net = { slow: 8, twice: 0, deaf: 0 };

  function start(skew: number): Machine {
    const clock = new MachineClock(time, skew);
    const nodes = circle.join();
    const mine = new Set<(wake: Wake) => void>();
    const bus = {
      publish(wake: Wake) {
        for (const hear of hearers) {
          if (random.below(100) >= net.deaf) time.after(random.below(net.slow) + 1, () => hear(wake));
        }
      },
      subscribe(hear: (wake: Wake) => void) {
        const heard = (wake: Wake) => clock.after(0, () => hear(wake));
        hearers.add(heard);
        mine.add(heard);
        return () => hearers.delete(heard);
      },
      close: async () => {},
    };
    const own = faultyStore(kept, disk, clock, random);
    const store = assembly.store?.(own) ?? own;
    const ports = {
      clock,
      entropy,
      bus: assembly.bus?.(bus) ?? bus,
      store: publishingStore(store, assembly.bus?.(bus) ?? bus),
      nodes: assembly.nodes?.(nodes) ?? nodes,
      tickets,
      bots: assembly.bots ?? { choose: async ({ view }) => votingToContinue(simplestLegal(view)) },
      reviewer: { review: async ({ record: { seat } }) => reviewOf(assembly.reviewedSeat?.(seat) ?? seat) },
    } satisfies ConstructorParameters<typeof SimulatedServer>[0];
    const machine: Machine = {
      clock,
      server: new SimulatedServer(ports),
      connections: new Set(),
      up: true,
      kill() {
        machine.up = false;
        clock.stop();
        for (const heard of mine) hearers.delete(heard);
        void nodes.close();
        for (const line of machine.connections) line.serverDied();
      },
    };
    return machine;
  }

  await rooms.create(CODE, logOf(firstEvents()));
  const log = async () => (await eventsOf(rooms, CODE)) ?? [];
  const owners = holdersIn(await log());
  const skewOf = () => [0, 0, 3_600_000, -3_600_000, 7_000][random.below(5)]!;
  const machines = [start(skewOf()), start(skewOf())];

  function resident(name: string, holder: SimulatedPlayer['holder']): SimulatedPlayer {
    const after = (ms: number, run: () => void) => time.after(ms, run);
    return new SimulatedPlayer(name, holder, {
      after,
      now: () => time.now,
      random: stream(seed, name),
      maxThinkingMs: 1500,
      lastRound: () => 1,
      askTicket: async () => {
        await new Promise<void>((resolve) => after(1 + random.below(2 * net.slow), resolve));
        const up = machines.filter((machine) => machine.up);
        const at = up[random.below(Math.max(1, up.length))];
        const live = await at?.server.registry.find(CODE).catch(() => null);
        if (!live) return { ok: false, code: 'unreachable', message: 'no answer' };
        return { ok: true, value: { ticket: await tickets.issue({ code: CODE, holder }) } };
      },
      openWire: (events) => {
        const up = machines.filter((machine) => machine.up);
        const machine = up[random.below(Math.max(1, up.length))];
        const line = simulatedConnection(
          {
            time,
            random,
            maxDelayMs: () => net.slow,
            duplicatePercent: () => net.twice,
            onEnded: () => machine?.connections.delete(line),
          },
          events,
          (end) => machine?.server.connect(assembly.connection?.(end, holder) ?? end) ?? null,
        );
        machine?.connections.add(line);
        return line.wire;
      },
    });
  }

  const players = [
    ...owners.map((owner) => resident(`seat ${owner.seat}`, owner)),
    resident('spectator', null),
  ];
  for (const one of players) one.start();

  const lines = () => machines.flatMap((machine) => [...machine.connections]);
  const begin: Readonly<Record<Fault['kind'], (fault: Fault, random: Random) => void>> = {
    'connection cut': () => pick(lines(), random)?.cut(),
    'silent connection': () => pick(lines(), random)?.goSilent(),
    reload: () => pick(players, random)?.reconnect(),
    kill({ ms, server }) {
      machines[server]!.kill();
      time.after(ms, () => {
        machines[server] = start(skewOf());
      });
    },
    freeze: ({ ms, server }) => machines[server]!.clock.freeze(ms),
    'disk unavailable': ({ ms }) =>
      during(
        ms,
        () => (disk.unavailable = true),
        () => (disk.unavailable = false),
      ),
    'disk full': ({ ms }) =>
      during(
        ms,
        () => (disk.full = true),
        () => (disk.full = false),
      ),
    'disk answers lost': ({ ms }) =>
      during(
        ms,
        () => (disk.lostAnswersPercent = 30),
        () => (disk.lostAnswersPercent = 0),
      ),
    'disk slow': ({ ms }) =>
      during(
        ms,
        () => (disk.maxDelayMs = 400),
        () => (disk.maxDelayMs = 3),
      ),
    'wake-ups lost': ({ ms }) =>
      during(
        ms,
        () => (net.deaf = 100),
        () => (net.deaf = 0),
      ),
    'frames twice': ({ ms }) =>
      during(
        ms,
        () => (net.twice = 50),
        () => (net.twice = 0),
      ),
    'slow network': ({ ms }) =>
      during(
        ms,
        () => (net.slow = 900),
        () => (net.slow = 8),
      ),
  };
  function during(ms: number, on: () => void, off: () => void): void {
    on();
    time.after(ms, off);
  }

  const faults = planFaults(random);
  let healedAt = time.now;
  for (const fault of faults) {
    time.after(fault.after, () => begin[fault.kind](fault, random));
    healedAt = Math.max(healedAt, time.now + fault.after + fault.ms);
  }
  const allDone = () => time.now > healedAt && players.every((one) => one.holder === null || one.isDone);
  await time.run(healedAt + ROUND_TIMEOUT_MS, allDone);
  const closed = allDone();
  // Everybody reconnects once, so that a connection silently lost does not excuse a missing message.
  for (const one of players) one.reconnect();
  await time.run(time.now + SETTLE_MS, () => false);

  const live: RoomState[] = [];
  for (const { server } of machines) {
    const found: RoomState[] = [];
    void server.stateOf(CODE).then((state) => state && found.push(state));
    await time.run(time.now + SETTLE_MS, () => found.length > 0);
    live.push(...found);
  }
  const end = await log();
  const { id, name } = HOUSE_CARD;
  const stored = (await rooms.history(CODE)) ?? logOf([]);
  const card = { id, name };
  const violations = violationsIn({ code: CODE, card, stored, live, players, healed: true });
  if (live.length < machines.length) violations.push('a server does not answer');
  if (!closed) violations.push('the round was never closed');
  // The first server ends without closing its connections; the second must notice who is gone.
  for (const one of players) one.stop();
  machines[0]!.kill();
  await time.run(time.now + SETTLE_MS, () => false);
  const atTheEnd = replayRoom(await log());
  if (atTheEnd !== null && personsOf(atTheEnd).some(({ presence }) => presence.kind === 'connected')) {
    violations.push('somebody who is gone counts as connected');
  }
  machines[1]!.kill();
  return {
    violations,
    choices: choicesIn(end),
    faults: faults.length,
    trace: JSON.stringify([stored, players.map(({ received }) => received.map(({ seq }) => seq))]),
  };
}

function firstEvents() {
  const hash = (digit: string) => digit.repeat(64);
  const events: RoomEvent[] = [
    {
      kind: 'opened',
      mode: 'friends',
      terms: { deadline: 15, revealRacks: false },
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

function pick<T>(list: readonly T[], random: Random): T | undefined {
  return list.length === 0 ? undefined : list[random.below(list.length)];
}
