// Simulates two servers, one disk and four people who play a round while faults drawn from a seed happen.

import { recordedIn } from '../../server/aggregate/recorded.ts';
import { replayRoom } from '../../server/room/room.ts';
import { personsOf, type RoomState } from '../../server/room/state.ts';
import { roomEvents } from '../../server/room/stored-event.ts';
import { HOUSE_CARD } from '../../shared-engine/card/house/card.ts';
import { eventsOf, logOf } from '../kit/room-logs.ts';
import { type Assembly, asShipped } from './assembly.ts';
import { FAULT_EFFECTS } from './fault-effects.ts';
import { planFaults } from './faults.ts';
import { choicesIn, violationsIn } from './invariants.ts';
import { ABSENT_MS } from './simulated-server.ts';
import { CODE, World } from './world.ts';

/** Everything must agree again this long after the last fault, in milliseconds. */
const SETTLE_MS = 5000;
/** A round that is not closed this long after the last fault counts as stuck, in milliseconds. */
const ROUND_TIMEOUT_MS = 15 * 60_000;

export interface Outcome {
  readonly violations: readonly string[];
  readonly choices: number;
  readonly faults: number;
  /** Everything that was stored and received, as text: the same seed must give the same trace. */
  readonly trace: string;
}

/** The seed and the assembly alone decide what happens. */
export async function simulate(seed: string, assembly: Assembly = asShipped): Promise<Outcome> {
  const world = new World(seed, assembly);
  await world.begin();
  const { faults, isClosed } = await playThroughFaults(world);
  const live = await liveStates(world);
  const stored = (await world.rooms.history(CODE)) ?? logOf([]);
  const events = stored.rows.flatMap((row) => recordedIn(row, roomEvents));
  const { players, machines } = world;
  const { id, name } = HOUSE_CARD;
  const evidence = {
    code: CODE,
    card: { id, name },
    stored,
    live,
    players,
    absentMs: ABSENT_MS,
    healed: true,
  };
  const violations = [
    ...violationsIn(evidence),
    ...(live.length < machines.length ? ['a server does not answer'] : []),
    ...(isClosed ? [] : ['the round was never closed']),
    ...(await violationsAtTheEnd(world)),
  ];
  return {
    violations,
    choices: choicesIn(events),
    faults,
    trace: JSON.stringify([stored, players.map(({ received }) => received.map(({ seq }) => seq))]),
  };
}

/** Until everybody has closed the round or nothing moves any more, and then until all may agree. */
async function playThroughFaults(world: World): Promise<{ faults: number; isClosed: boolean }> {
  const { time, random, players } = world;
  const faults = planFaults(random);
  let healedAt = time.now;
  for (const fault of faults) {
    time.after(fault.after, () => FAULT_EFFECTS[fault.kind](world, fault));
    healedAt = Math.max(healedAt, time.now + fault.after + fault.ms);
  }
  const allDone = () => time.now > healedAt && players.every((one) => one.holder === null || one.isDone);
  await time.run(healedAt + ROUND_TIMEOUT_MS, allDone);
  const isClosed = allDone();
  // Everybody reconnects once, so that a connection silently lost does not excuse a missing message.
  for (const player of players) player.reconnect();
  await time.run(time.now + SETTLE_MS, () => false);
  return { faults: faults.length, isClosed };
}

/** The room as each server that answers has it. */
async function liveStates({ machines, time }: World): Promise<RoomState[]> {
  const live: RoomState[] = [];
  for (const { server } of machines) {
    const found: RoomState[] = [];
    void server.stateOf(CODE).then((state) => state && found.push(state));
    await time.run(time.now + SETTLE_MS, () => found.length > 0);
    live.push(...found);
  }
  return live;
}

/** The first server ends without closing its connections; the second must notice who is gone. */
async function violationsAtTheEnd({ machines, players, rooms, time }: World): Promise<string[]> {
  for (const player of players) player.stop();
  machines[0]!.kill();
  await time.run(time.now + SETTLE_MS, () => false);
  const state = replayRoom((await eventsOf(rooms, CODE)) ?? []);
  machines[1]!.kill();
  const isAnybodyThere = state && personsOf(state).some(({ presence }) => presence.kind === 'connected');
  return isAnybodyThere ? ['somebody who is gone counts as connected'] : [];
}
