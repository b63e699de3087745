// Two servers, one disk, four people: a round played through every trouble that a seed can think of.
import type { RoomEvent } from '../../server/room/event.ts';
import { replayRoom } from '../../server/room/evolve.ts';
import { logged } from '../../server/room/room.ts';
import { personsOf, type RoomState } from '../../server/room/state.ts';
import { announcing } from '../../server/store/announcing.ts';
import { memoryStore } from '../../server/store/memory.ts';
import { memoryNodes } from '../../server/store/nodes-memory.ts';
import { memoryTickets } from '../../server/store/tickets.ts';
import { simplestLegal } from '../../server/work/bots.ts';
import { type AnswerChoice, HOUSE_CARD, type Random, stream } from '../../shared-engine/index.ts';
import { seededEntropy } from '../kit/server.ts';
import { type Assembly, sound } from './assembly.ts';
import { diskOf, quietDisk } from './disk.ts';
import { type SimulatedLine, simulatedLine } from './simulated-connection.ts';
import { SimulatedNode } from './simulated-server.ts';
import { Resident } from './simulated-player.ts';
import { reviewOf } from './sample-review.ts';
import { planTroubles, type Trouble } from './faults.ts';
import { MachineClock, VirtualTime } from './virtual-time.ts';
import { choicesIn, faultsIn, ownersIn } from './invariants.ts';

const CODE = 'ABCDEFGH';
/** From the last trouble on, everything is to be in order after this long, in milliseconds. */
const HEALING_MS = 5000;
/** A round that is not closed this long after the last trouble will never be. */
const PATIENCE_MS = 15 * 60_000;

interface Machine {
  clock: MachineClock;
  node: SimulatedNode;
  readonly lines: Set<SimulatedLine>;
  up: boolean;
  die(): void;
}

export interface Outcome {
  readonly faults: readonly string[];
  readonly choices: number;
  readonly troubles: number;
  /** Whatever else was said, in one number: the same seed gives the same. */
  readonly trace: string;
}

/** Nothing but the seed and the assembly decides what happens. */
export async function simulate(seed: string, assembly: Assembly = sound): Promise<Outcome> {
  const random = stream(seed, 'world');
  const time = new VirtualTime();
  const rooms = memoryStore();
  const kept = assembly.place?.(rooms) ?? rooms;
  const disk = quietDisk();
  const entropy = seededEntropy(seed);
  const circle = memoryNodes(entropy);
  const tickets =
    assembly.tickets?.(memoryTickets(new MachineClock(time, 0), entropy)) ??
    memoryTickets(new MachineClock(time, 0), entropy);
  const hearers = new Set<(wake: { code: string; seq: number }) => void>();
  const net = { slow: 8, twice: 0, deaf: 0 };

  function start(skew: number): Machine {
    const clock = new MachineClock(time, skew);
    const nodes = circle.join();
    const mine = new Set<(wake: { code: string; seq: number }) => void>();
    const bus = {
      publish(wake: { code: string; seq: number }) {
        for (const hear of hearers) {
          if (random.below(100) >= net.deaf) time.after(random.below(net.slow) + 1, () => hear(wake));
        }
      },
      subscribe(hear: (wake: { code: string; seq: number }) => void) {
        const heard = (wake: { code: string; seq: number }) => clock.after(0, () => hear(wake));
        hearers.add(heard);
        mine.add(heard);
        return () => hearers.delete(heard);
      },
      close: async () => {},
    };
    const own = diskOf(kept, disk, clock, random);
    const store = assembly.store?.(own) ?? own;
    const ports = {
      clock,
      entropy,
      bus: assembly.bus?.(bus) ?? bus,
      store: announcing(store, assembly.bus?.(bus) ?? bus),
      nodes: assembly.nodes?.(nodes) ?? nodes,
      tickets,
      bots: assembly.bots ?? { choose: async ({ view }) => goingOn(simplestLegal(view)) },
      reviewer: { review: async (record) => reviewOf(assembly.reviewed?.(record.seat) ?? record.seat) },
    } satisfies ConstructorParameters<typeof SimulatedNode>[0];
    const machine: Machine = {
      clock,
      node: new SimulatedNode(ports),
      lines: new Set(),
      up: true,
      die() {
        machine.up = false;
        clock.die();
        for (const heard of mine) hearers.delete(heard);
        void nodes.close();
        for (const line of machine.lines) line.serverDied();
      },
    };
    return machine;
  }

  await rooms.create(CODE, firstEvents());
  const log = async () => (await rooms.load(CODE)) ?? [];
  const owners = ownersIn(await log());
  const skewOf = () => [0, 0, 3_600_000, -3_600_000, 7_000][random.below(5)]!;
  const machines = [start(skewOf()), start(skewOf())];

  function resident(name: string, owner: Resident['owner']): Resident {
    const after = (ms: number, run: () => void) => time.after(ms, run);
    return new Resident(name, owner, {
      after,
      now: () => time.now,
      random: stream(seed, name),
      thinking: 1500,
      rounds: () => 1,
      askTicket: async () => {
        await new Promise<void>((resolve) => after(1 + random.below(2 * net.slow), resolve));
        const up = machines.filter((machine) => machine.up);
        const at = up[random.below(Math.max(1, up.length))];
        const live = await at?.node.registry.find(CODE).catch(() => null);
        if (!live) return { ok: false, code: 'unreachable', sentence: 'no answer' };
        return { ok: true, value: { ticket: await tickets.issue({ code: CODE, owner }) } };
      },
      openWire: (events) => {
        const up = machines.filter((machine) => machine.up);
        const machine = up[random.below(Math.max(1, up.length))];
        const line = simulatedLine(
          {
            time,
            random,
            slow: () => net.slow,
            twice: () => net.twice,
            ended: () => machine?.lines.delete(line),
          },
          events,
          (end) => machine?.node.connect(assembly.line?.(end, owner) ?? end) ?? null,
        );
        machine?.lines.add(line);
        return line.wire;
      },
    });
  }

  const residents = [
    ...owners.map((owner) => resident(`seat ${owner.seat}`, owner)),
    resident('watcher', null),
  ];
  for (const one of residents) one.start();

  const lines = () => machines.flatMap((machine) => [...machine.lines]);
  const begin: Readonly<Record<Trouble['kind'], (trouble: Trouble, random: Random) => void>> = {
    cut: () => pick(lines(), random)?.cut(),
    silence: () => pick(lines(), random)?.fallSilent(),
    reload: () => pick(residents, random)?.again(),
    kill({ ms, at }) {
      machines[at]!.die();
      time.after(ms, () => {
        machines[at] = start(skewOf());
      });
    },
    freeze: ({ ms, at }) => machines[at]!.clock.freeze(ms),
    'disk away': ({ ms }) =>
      during(
        ms,
        () => (disk.away = true),
        () => (disk.away = false),
      ),
    'disk full': ({ ms }) =>
      during(
        ms,
        () => (disk.full = true),
        () => (disk.full = false),
      ),
    'disk mute': ({ ms }) =>
      during(
        ms,
        () => (disk.mute = 30),
        () => (disk.mute = 0),
      ),
    'disk slow': ({ ms }) =>
      during(
        ms,
        () => (disk.slow = 400),
        () => (disk.slow = 3),
      ),
    deaf: ({ ms }) =>
      during(
        ms,
        () => (net.deaf = 100),
        () => (net.deaf = 0),
      ),
    twice: ({ ms }) =>
      during(
        ms,
        () => (net.twice = 50),
        () => (net.twice = 0),
      ),
    'slow net': ({ ms }) =>
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

  const troubles = planTroubles(random);
  let healedAt = time.now;
  for (const trouble of troubles) {
    time.after(trouble.after, () => begin[trouble.kind](trouble, random));
    healedAt = Math.max(healedAt, time.now + trouble.after + trouble.ms);
  }
  const allDone = () => time.now > healedAt && residents.every((one) => one.owner === null || one.isDone);
  await time.run(healedAt + PATIENCE_MS, allDone);
  const closed = allDone();
  // Everybody comes once more, so that a line nobody knows to be dead is no excuse.
  for (const one of residents) one.again();
  await time.run(time.now + HEALING_MS, () => false);

  const live: RoomState[] = [];
  for (const { node } of machines) {
    const found: RoomState[] = [];
    void node.stateOf(CODE).then((state) => state && found.push(state));
    await time.run(time.now + HEALING_MS, () => found.length > 0);
    live.push(...found);
  }
  const end = await log();
  const { id, name } = HOUSE_CARD;
  const faults = faultsIn({ code: CODE, card: { id, name }, log: end, live, residents, settled: true });
  if (live.length < machines.length) faults.push('a server does not answer');
  if (!closed) faults.push('the round was never closed');
  // The evening ends as evenings do: somebody pulls the plug, nobody says goodbye.
  for (const one of residents) one.stop();
  machines[0]!.die();
  await time.run(time.now + HEALING_MS, () => false);
  const atTheEnd = replayRoom(await log());
  if (atTheEnd !== null && personsOf(atTheEnd).some(({ presence }) => presence.kind === 'here')) {
    faults.push('somebody who is gone counts as here');
  }
  machines[1]!.die();
  return {
    faults,
    choices: choicesIn(end),
    troubles: troubles.length,
    trace: JSON.stringify([end, residents.map(({ told }) => told.map(({ seq }) => seq))]),
  };
}

function firstEvents() {
  const key = (name: string) => name.repeat(64).slice(0, 64);
  const events: RoomEvent[] = [
    {
      kind: 'opened',
      door: 'friends',
      terms: { deadline: 15, layOpen: false },
      card: { kind: 'house' },
    },
    { kind: 'seat-taken', seat: 0, name: 'Ines', key: key('a') },
    { kind: 'bot-seated', seat: 3, name: 'Odo', style: 'casual' },
    { kind: 'seat-taken', seat: 1, name: 'Tomas', key: key('b') },
    { kind: 'seat-taken', seat: 2, name: 'Wilma', key: key('c') },
  ];
  return logged(events, { after: 0, at: Date.UTC(2026, 0, 1), command: null });
}

/** The second Charleston is to be met as well. */
function goingOn(choice: AnswerChoice): AnswerChoice {
  return choice.kind === 'vote' ? { ...choice, go: true } : choice;
}

function pick<T>(list: readonly T[], random: Random): T | undefined {
  return list.length === 0 ? undefined : list[random.below(list.length)];
}
