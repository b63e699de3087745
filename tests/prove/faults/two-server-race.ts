// Races two servers that decide on one room at the same instant, again and again, on a store that they share.
import { isDeepStrictEqual } from 'node:util';
import { Aggregate } from '../../../server/aggregate/aggregate.ts';
import { Committer } from '../../../server/aggregate/committer.ts';
import { record } from '../../../server/aggregate/recorded.ts';
import { replay } from '../../../server/aggregate/replay.ts';
import { createLog } from '../../../server/log.ts';
import type { Clock, Store } from '../../../server/ports.ts';
import type { RoomCommand, SeatHolder } from '../../../server/room/command.ts';
import type { RoomEvent } from '../../../server/room/event.ts';
import { FRIENDS_TABLE } from '../../../server/room/policy.ts';
import { ROOM, type Room, roomWith } from '../../../server/room/room.ts';
import { HOUSE_CARD } from '../../../shared-engine/card/house/card.ts';
import { type Random, stream } from '../../../shared-engine/rules/deal/random.ts';
import { SEATS, type Seat } from '../../../shared-engine/rules/deal/seat.ts';
import { STANDARD_TERMS } from '../../../shared-engine/rules/exchange/terms.ts';
import { logOf } from '../../kit/room-logs.ts';
import { anyChoice, seatsToAct, seedNamed } from '../../kit/rounds.ts';
import { holdersIn, violationsIn } from '../../simulator/invariants.ts';

const CODE = 'ABCDEFGH';

export interface RaceResult {
  readonly races: number;
  /** Appends of each server that were stored; a server that won all of them had no rival. */
  readonly wins: readonly [number, number];
  readonly violations: readonly string[];
}

/** `stores` give access to the same rooms. */
export async function raceTwoServers(
  count: number,
  seed: string,
  stores: readonly [Store, Store],
  clock: Clock,
): Promise<RaceResult> {
  const random = stream(seed, 'races');
  const first = record(fourPlayers(), { after: 0, at: clock.now() });
  const opening = logOf(first);
  await stores[0].create(CODE, opening);
  const holders = holdersIn(first);
  const log = createLog('silent');
  const wins: [number, number] = [0, 0];
  const rooms = stores.map((shared, at): Room => {
    const store = counting(shared, () => {
      wins[at === 0 ? 0 : 1]++;
    });
    const ports = { store, committer: new Committer(store), clock, log };
    return new Aggregate(roomWith(FRIENDS_TABLE), CODE, replay(ROOM, opening)!, ports);
  });
  const [here, there] = [rooms[0]!, rooms[1]!];
  const violations: string[] = [];
  for (let at = 0; at < count; at++) {
    const [mine, yours] = racingCommands(here, holders, at, random);
    const before = here.state.seq;
    const starts = [() => here.submit(mine.command, mine.id), () => there.submit(yours.command, yours.id)];
    // Who is asked first has a head start, so they take turns.
    if (at % 2 === 1) starts.reverse();
    const answers = await Promise.all(starts.map((start) => start()));
    const accepted = answers.filter(({ ok }) => ok).length;
    if (accepted !== mine.accepted) violations.push(`race ${at}: ${accepted} accepted, not ${mine.accepted}`);
    const last = Math.max(here.state.seq, there.state.seq);
    if (last === before) violations.push(`race ${at}: nothing happened`);
    await Promise.all(rooms.map((room) => room.catchUp(last)));
    if (!isDeepStrictEqual(here.state, there.state)) violations.push(`race ${at}: the two differ`);
    if (violations.length > 5) break;
  }
  const stored = (await stores[1].history(CODE)) ?? opening;
  const { id, name } = HOUSE_CARD;
  const live = rooms.map(({ state }) => state);
  const found = violationsIn({
    code: CODE,
    card: { id, name },
    stored,
    live,
    players: [],
    // Nobody was told anything.
    absentMs: 0,
    healed: true,
  });
  const scheduled = stored.rows.flatMap(({ commands }) => commands.filter((id) => id.startsWith('server/')));
  if (scheduled.length < count / 10) found.push(`only ${scheduled.length} scheduled actions were raced for`);
  return { races: count, wins, violations: [...violations, ...found] };
}

function counting(store: Store, won: () => void): Store {
  return {
    ...store,
    async commit(batch) {
      const outcomes = await store.commit(batch);
      for (const outcome of outcomes) if (outcome === 'committed') won();
      return outcomes;
    },
  };
}

interface RacingCommand {
  readonly command: RoomCommand;
  readonly id: string;
  /** How many of the two commands are to be accepted. */
  readonly accepted: number;
}

/** Two commands for the same instant: the same scheduled action, one seat twice, or two seats. */
function racingCommands(
  room: Room,
  holders: readonly SeatHolder[],
  at: number,
  random: Random,
): [RacingCommand, RacingCommand] {
  const { play } = room.state;
  if (play === null || play.round.phase === 'closed') {
    const number = (play?.number ?? 0) + 1;
    const id = `server/deal ${number} after ${room.state.seq}`;
    const deal = (name: string): RacingCommand => ({
      command: { kind: 'deal', code: room.code, seed: seedNamed(`${at} ${name}`) },
      id,
      accepted: 2,
    });
    return [deal('here'), deal('there')];
  }
  const { round, number, withdrawals } = play;
  const waiting = seatsToAct(round);
  const seat = waiting[random.below(waiting.length)]!;
  const other = waiting[random.below(waiting.length)]!;
  const kind = random.below(3);
  if (kind === 0) {
    const id = `server/${number} ${round.resolved.length}:${seat} ${withdrawals[seat]}`;
    const action = (): RacingCommand => ({
      command: {
        kind: 'choose-for',
        seat,
        by: 'stand-in',
        round: number,
        choice: anyChoice(round, seat, random),
      },
      id,
      accepted: 2,
    });
    return [action(), action()];
  }
  const rival = kind === 1 ? seat : other;
  const choose = (who: Seat, name: string): RacingCommand => ({
    command: {
      kind: 'choose',
      holder: holders.find(({ seat }) => seat === who)!,
      round: number,
      seat: who,
      choice: anyChoice(round, who, random),
    },
    id: `${at} ${name}`,
    accepted: seat === rival ? 1 : 2,
  });
  return [choose(seat, 'here'), choose(rival, 'there')];
}

function fourPlayers(): RoomEvent[] {
  const terms = STANDARD_TERMS.friends;
  return [
    { kind: 'opened', mode: 'friends', classCode: null, terms, card: { kind: 'house' } },
    ...SEATS.map((seat): RoomEvent => {
      return { kind: 'seat-taken', seat, name: `Guest ${seat}`, secretHash: `${seat}`.repeat(64) };
    }),
  ];
}
