// Two servers that decide on one room at the same instant, again and again, on whatever store they share.
import { isDeepStrictEqual } from 'node:util';
import { createLog } from '../../../server/log.ts';
import type { Clock, Store } from '../../../server/ports.ts';
import type { Owner, RoomCommand } from '../../../server/room/command.ts';
import type { RoomEvent } from '../../../server/room/event.ts';
import { Recent } from '../../../server/room/recent.ts';
import { logged, Room } from '../../../server/room/room.ts';
import { HOUSE_CARD, type Random, SEATS, type Seat, stream } from '../../../shared-engine/index.ts';
import { anyChoice, owing, seedNamed } from '../../kit/rounds.ts';
import { faultsIn, ownersIn } from '../../simulator/invariants.ts';

const CODE = 'ABCDEFGH';

export interface Raced {
  readonly races: number;
  /** Writes of each server that were kept: one whose writes all are has not been raced against. */
  readonly wins: readonly [number, number];
  readonly faults: readonly string[];
}

/** `stores` are two ways to the same rooms. */
export async function race(
  count: number,
  seed: string,
  stores: readonly [Store, Store],
  clock: Clock,
): Promise<Raced> {
  const random = stream(seed, 'races');
  const first = logged(fourPeople(), { after: 0, at: clock.now(), command: null });
  await stores[0].create(CODE, first);
  const owners = ownersIn(first);
  const log = createLog('silent');
  const wins: [number, number] = [0, 0];
  const rooms = stores.map((way, at) => {
    const store = counting(way, () => {
      wins[at === 0 ? 0 : 1]++;
    });
    return new Room(CODE, first, Recent.fromLog(first)!, { store, clock, log });
  });
  const [here, there] = [rooms[0]!, rooms[1]!];
  const faults: string[] = [];
  for (let at = 0; at < count; at++) {
    const [mine, yours] = rivals(here, owners, at, random);
    const before = here.state.seq;
    const starts = [() => here.submit(mine.command, mine.id), () => there.submit(yours.command, yours.id)];
    // Who is asked first has a head start, so they take turns.
    if (at % 2 === 1) starts.reverse();
    const answers = await Promise.all(starts.map((start) => start()));
    const accepted = answers.filter(({ ok }) => ok).length;
    if (accepted !== mine.accepted) faults.push(`race ${at}: ${accepted} accepted, not ${mine.accepted}`);
    const last = Math.max(here.state.seq, there.state.seq);
    if (last === before) faults.push(`race ${at}: nothing happened`);
    await Promise.all(rooms.map((room) => room.catchUp(last)));
    if (!isDeepStrictEqual(here.state, there.state)) faults.push(`race ${at}: the two differ`);
    if (faults.length > 5) break;
  }
  const kept = (await stores[1].load(CODE))!;
  const { id, name } = HOUSE_CARD;
  const live = rooms.map(({ state }) => state);
  const found = faultsIn({ code: CODE, card: { id, name }, log: kept, live, residents: [], settled: true });
  const houseIds = kept.flatMap(({ command }) => (command?.startsWith('house/') ? [command] : []));
  if (houseIds.length < count / 10) found.push(`only ${houseIds.length} moves of the house were raced for`);
  return { races: count, wins, faults: [...faults, ...found] };
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

interface Rival {
  readonly command: RoomCommand;
  readonly id: string;
  /** How many of the two commands are to be accepted. */
  readonly accepted: number;
}

/** Two commands for the same instant: the same duty of the house, one seat twice, or two seats. */
function rivals(room: Room, owners: readonly Owner[], at: number, random: Random): [Rival, Rival] {
  const { play } = room.state;
  if (play === null || play.round.phase === 'closed') {
    const number = (play?.number ?? 0) + 1;
    const id = `house/deal ${number} after ${room.state.seq}`;
    const deal = (name: string): Rival => ({
      command: { kind: 'deal', seed: seedNamed(`${at} ${name}`) },
      id,
      accepted: 2,
    });
    return [deal('here'), deal('there')];
  }
  const { round, number, takenBack } = play;
  const waiting = owing(round);
  const seat = waiting[random.below(waiting.length)]!;
  const other = waiting[random.below(waiting.length)]!;
  const kind = random.below(3);
  if (kind === 0) {
    const id = `house/${number} ${round.settled.length}:${seat} ${takenBack[seat]}`;
    const duty = (): Rival => ({
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
  const choose = (who: Seat, name: string): Rival => ({
    command: {
      kind: 'choose',
      owner: owners.find((owner) => owner.seat === who)!,
      round: number,
      seat: who,
      choice: anyChoice(round, who, random),
    },
    id: `${at} ${name}`,
    accepted: seat === rival ? 1 : 2,
  });
  return [choose(seat, 'here'), choose(rival, 'there')];
}

function fourPeople(): RoomEvent[] {
  const terms = { deadline: null, layOpen: false };
  return [
    { kind: 'opened', door: 'friends', terms, card: { kind: 'house' } },
    ...SEATS.map((seat): RoomEvent => {
      return { kind: 'seat-taken', seat, name: `Guest ${seat}`, key: `${seat}`.repeat(64) };
    }),
  ];
}
