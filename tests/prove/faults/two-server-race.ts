// Races two servers that decide on one room at the same instant, again and again, on a store that they share.
import { isDeepStrictEqual } from 'node:util';
import { createLog } from '../../../server/log.ts';
import type { Clock, Store } from '../../../server/ports.ts';
import type { RoomCommand, SeatHolder } from '../../../server/room/command.ts';
import type { RoomEvent } from '../../../server/room/event.ts';
import { StateHistory } from '../../../server/room/recent.ts';
import { logged, Room } from '../../../server/room/room.ts';
import { HOUSE_CARD, type Random, SEATS, type Seat, stream } from '../../../shared-engine/index.ts';
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
  const first = logged(fourPlayers(), { after: 0, at: clock.now(), command: null });
  await stores[0].create(CODE, first);
  const owners = holdersIn(first);
  const log = createLog('silent');
  const wins: [number, number] = [0, 0];
  const rooms = stores.map((way, at) => {
    const store = counting(way, () => {
      wins[at === 0 ? 0 : 1]++;
    });
    return new Room(CODE, first, StateHistory.fromLog(first)!, { store, clock, log });
  });
  const [here, there] = [rooms[0]!, rooms[1]!];
  const violations: string[] = [];
  for (let at = 0; at < count; at++) {
    const [mine, yours] = racingCommands(here, owners, at, random);
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
  const kept = (await stores[1].load(CODE))!;
  const { id, name } = HOUSE_CARD;
  const live = rooms.map(({ state }) => state);
  const found = violationsIn({ code: CODE, card: { id, name }, log: kept, live, players: [], healed: true });
  const houseIds = kept.flatMap(({ command }) => (command?.startsWith('house/') ? [command] : []));
  if (houseIds.length < count / 10) found.push(`only ${houseIds.length} moves of the house were raced for`);
  return { races: count, wins, violations: [...violations, ...found] };
}

function counting(store: Store, kept: () => void): Store {
  return {
    ...store,
    async append(code, after, log) {
      const outcome = await store.append(code, after, log);
      if (outcome === 'kept') kept();
      return outcome;
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
  owners: readonly SeatHolder[],
  at: number,
  random: Random,
): [RacingCommand, RacingCommand] {
  const { play } = room.state;
  if (play === null || play.round.phase === 'closed') {
    const number = (play?.number ?? 0) + 1;
    const id = `house/deal ${number} after ${room.state.seq}`;
    const deal = (name: string): RacingCommand => ({
      command: { kind: 'deal', seed: seedNamed(`${at} ${name}`) },
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
    const id = `house/${number} ${round.resolved.length}:${seat} ${withdrawals[seat]}`;
    const duty = (): RacingCommand => ({
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
    return [duty(), duty()];
  }
  const rival = kind === 1 ? seat : other;
  const choose = (who: Seat, name: string): RacingCommand => ({
    command: {
      kind: 'choose',
      holder: owners.find((owner) => owner.seat === who)!,
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
  const terms = { deadline: null, revealRacks: false };
  return [
    { kind: 'opened', mode: 'friends', terms, card: { kind: 'house' } },
    ...SEATS.map((seat): RoomEvent => {
      return { kind: 'seat-taken', seat, name: `Guest ${seat}`, secretHash: `${seat}`.repeat(64) };
    }),
  ];
}
