// The log of a room in which many rounds were played, as a server writes it: rows of one step each, a snapshot a deal.
import { setImmediate } from 'node:timers/promises';
import { Aggregate } from '../../../server/aggregate/aggregate.ts';
import { Committer } from '../../../server/aggregate/committer.ts';
import { create } from '../../../server/aggregate/create.ts';
import { replay } from '../../../server/aggregate/replay.ts';
import { systemClock } from '../../../server/clock.ts';
import { createLog } from '../../../server/log.ts';
import type { StoredLog } from '../../../server/ports.ts';
import type { Opening, RoomCommand } from '../../../server/room/command.ts';
import { openingEvents } from '../../../server/room/decide.ts';
import { FRIENDS_TABLE } from '../../../server/room/policy.ts';
import { type Room, roomWith } from '../../../server/room/room.ts';
import { newSeed, systemEntropy } from '../../../server/secrets.ts';
import { memoryStore } from '../../../server/store/memory.ts';
import { SEATS, type Seat } from '../../../shared-engine/rules/deal/seat.ts';
import { pendingDecisionOf } from '../../../shared-engine/rules/exchange/pending-decision.ts';
import { STANDARD_TERMS } from '../../../shared-engine/rules/exchange/terms.ts';
import { simplestAnswer } from '../../../shared-engine/rules/view/pending-decision.ts';
import { seatView } from '../../../shared-engine/rules/view/view.ts';

/** The last round is dealt and its first step answered by two seats. */
export async function playedLog(rounds: number): Promise<StoredLog> {
  const store = memoryStore();
  const type = roomWith(FRIENDS_TABLE);
  const opening: Opening = {
    mode: 'friends',
    terms: STANDARD_TERMS.friends,
    card: { kind: 'house' },
    classCode: null,
    host: { name: 'Ines', secretHash: '0'.repeat(64), bots: [null, null, null] },
  };
  const ports = { store, clock: systemClock, entropy: systemEntropy };
  const code = (await create(type, openingEvents(opening), ports, 'room'))!;
  const replayed = replay(type, (await store.load(code))!)!;
  const log = createLog('silent');
  const room = new Aggregate(type, code, replayed, { ...ports, committer: new Committer(store), log });
  await together(
    room,
    [1, 2, 3].map((seat) => take(SEATS[seat]!)),
  );
  for (let round = 1; round <= rounds; round++) {
    await together(room, [{ kind: 'deal', code, seed: newSeed(systemEntropy) }]);
    if (round === rounds) await together(room, answers(room).slice(0, 2));
    else while (room.state.play?.round.phase !== 'closed') await together(room, answers(room));
  }
  return (await store.history(code))!;
}

function take(seat: Seat): RoomCommand {
  return { kind: 'take-seat', seat, name: `Guest ${seat}`, secretHash: String(seat).repeat(64) };
}

function answers(room: Room): RoomCommand[] {
  const { number, round } = room.state.play!;
  return SEATS.flatMap((seat): RoomCommand[] => {
    const decision = pendingDecisionOf(round, seat);
    if (decision === null) return [];
    const simplest = simplestAnswer(decision, seatView(round, seat).rack);
    const choice = simplest.kind === 'vote' ? { ...simplest, go: true } : simplest;
    return [{ kind: 'choose-for', seat, by: 'bot', round: number, choice }];
  });
}

async function together(room: Room, commands: readonly RoomCommand[]): Promise<void> {
  const given = await Promise.all(
    commands.map((command, n) => room.submit(command, `bench/${room.state.seq}.${n}`)),
  );
  const rejected = given.find(({ ok }) => !ok);
  if (rejected) throw new Error('A round of the benchmark cannot be played.');
  await setImmediate();
}
