// The pure part of a room: any sequence of commands leaves a log that replays to the same room.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { record } from '../../server/aggregate/recorded.ts';
import type { RoomCommand } from '../../server/room/command.ts';
import { decideRoom, openingEvents } from '../../server/room/decide.ts';
import { evolveRoom } from '../../server/room/evolve.ts';
import { FRIENDS_TABLE } from '../../server/room/policy.ts';
import { type RecordedRoomEvent, replayRoom } from '../../server/room/room.ts';
import { isRoundRunning, type RoomState } from '../../server/room/state.ts';
import { STYLES } from '../../shared-engine/policy/styles.ts';
import { dealTiles } from '../../shared-engine/rules/deal/deal.ts';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import { SEATS, type Seat } from '../../shared-engine/rules/deal/seat.ts';
import { STANDARD_TERMS } from '../../shared-engine/rules/exchange/terms.ts';
import { bagOf, facesOf, sizeOf } from '../../shared-engine/rules/tiles/bag.ts';
import { anyChoice, seatsToAct, seedNamed } from '../kit/rounds.ts';

const seat = fc.constantFrom<Seat>(...SEATS);
const style = fc.constantFrom(...STYLES);

/** A wish, made a command when it is known who sits where. */
const wish = fc.oneof(
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('sit'), seat: fc.option(seat) }) },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('leave'), seat }) },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('ready'), seat, ready: fc.boolean() }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('seat-bot'), by: seat, seat, style }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('swap'), by: seat, seat }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('unseat'), by: seat, seat }) },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('deal'), name: fc.string({ maxLength: 3 }) }) },
  { weight: 8, arbitrary: fc.record({ kind: fc.constant('answers'), name: fc.string({ maxLength: 3 }) }) },
);
type Wish = typeof wish extends fc.Arbitrary<infer T> ? T : never;

interface Run {
  readonly state: RoomState;
  readonly log: readonly RecordedRoomEvent[];
}

function opened(): Run {
  const events = openingEvents({
    mode: 'friends',
    terms: STANDARD_TERMS.friends,
    card: { kind: 'house' },
    classCode: null,
    host: { name: 'Ines', secretHash: 'a0', bots: ['casual', null, null] },
  });
  const log = record(events, { after: 0, at: 0 });
  return { state: replayRoom(log)!, log };
}

function next(run: Run, command: RoomCommand): Run {
  const at = run.log.length * 10;
  const decision = decideRoom(run.state, command, FRIENDS_TABLE, at);
  if (!decision.ok) return run;
  const more = record(decision.events, { after: run.state.seq, at });
  return { state: more.reduce(evolveRoom, run.state), log: [...run.log, ...more] };
}

function commandsOf(wished: Wish, state: RoomState): RoomCommand[] {
  const owner = (at: Seat) => {
    const chair = state.seats[at];
    return { seat: at, since: chair.kind === 'person' ? chair.since : 0 };
  };
  switch (wished.kind) {
    case 'sit':
      return [
        { kind: 'take-seat', seat: wished.seat, name: `guest ${state.seq}`, secretHash: `${state.seq}` },
      ];
    case 'leave':
      return [{ kind: 'action', holder: owner(wished.seat), action: { kind: 'leave' } }];
    case 'ready':
      return [{ kind: 'action', holder: owner(wished.seat), action: { kind: 'ready', ready: wished.ready } }];
    case 'seat-bot':
      return [
        {
          kind: 'action',
          holder: owner(wished.by),
          action: { kind: 'seat-bot', seat: wished.seat, style: wished.style },
        },
      ];
    case 'swap':
      return [
        { kind: 'action', holder: owner(wished.by), action: { kind: 'swap-seats', seat: wished.seat } },
      ];
    case 'unseat':
      return [{ kind: 'action', holder: owner(wished.by), action: { kind: 'unseat', seat: wished.seat } }];
    case 'deal':
      return [{ kind: 'deal', code: 'ROOM2345', seed: seedNamed(wished.name) }];
    case 'answers': {
      const { play } = state;
      if (play === null) return [];
      return seatsToAct(play.round).map((at) => ({
        kind: 'choose-for',
        seat: at,
        by: 'bot',
        round: play.number,
        choice: anyChoice(play.round, at, stream(wished.name, String(at))),
      }));
    }
  }
}

function played(wishes: readonly Wish[]): Run {
  return wishes.reduce((run, wished) => commandsOf(wished, run.state).reduce(next, run), opened());
}

const wishes = fc.array(wish, { maxLength: 60 });

describe('any sequence of commands', () => {
  test('E2 ST2 ST4 leaves a log, numbered without a gap, that replays to the same room', () => {
    fc.assert(
      fc.property(wishes, (list) => {
        const { state, log } = played(list);
        expect(replayRoom(log)).toEqual(state);
        expect(log.map(({ seq }) => seq)).toEqual(log.map((_, index) => index + 1));
      }),
    );
  });

  test('leaves a host who is a person, 152 tiles, and no seat empty while tiles are dealt', () => {
    fc.assert(
      fc.property(wishes, (list) => {
        const { state } = played(list);
        const persons = SEATS.filter((at) => state.seats[at].kind === 'person');
        if (state.host === null) expect(persons).toEqual([]);
        else expect(persons).toContain(state.host);
        if (state.play === null) return;
        const { racks, deal } = state.play.round;
        expect(sizeOf(bagOf([...racks.flatMap(facesOf), ...dealTiles(deal).wall]))).toBe(152);
        if (isRoundRunning(state)) expect(state.seats.map(({ kind }) => kind)).not.toContain('empty');
      }),
    );
  });

  test('ID4 never lets two people at a table share a stay', () => {
    fc.assert(
      fc.property(wishes, (list) => {
        const { state } = played(list);
        const stays = state.seats.flatMap((chair) => (chair.kind === 'person' ? [chair.since] : []));
        expect(new Set(stays).size).toBe(stays.length);
      }),
    );
  });
});

test('a closed room rejects everything with one code', () => {
  const closed = next(opened(), { kind: 'close' });
  expect(closed.state.closed).toBe(true);
  const commands: RoomCommand[] = [
    { kind: 'take-seat', seat: null, name: 'Odo', secretHash: 'b' },
    { kind: 'deal', code: 'ROOM2345', seed: seedNamed('closed') },
    { kind: 'close' },
  ];
  for (const command of commands)
    expect(decideRoom(closed.state, command, FRIENDS_TABLE, 0)).toMatchObject({ code: 'no-such-room' });
});

test('a log that does not begin with the opening is no room', () => {
  expect(replayRoom([])).toBeNull();
  expect(replayRoom([{ seq: 1, at: 0, event: { kind: 'closed' } }])).toBeNull();
});

describe('what goes with a person', () => {
  const sit = (run: Run, at: Seat, name: string) =>
    next(run, { kind: 'take-seat', seat: at, name, secretHash: name });
  const act = (run: Run, at: Seat, action: Extract<RoomCommand, { kind: 'action' }>['action']) =>
    next(run, { kind: 'action', holder: { seat: at, since: sinceAt(run.state, at) }, action });
  const sinceAt = ({ seats }: RoomState, at: Seat) => {
    const held = seats[at];
    return held.kind === 'person' ? held.since : 0;
  };

  test('TG2 words go when whoever said them or is meant by them goes, and the next one there has said nothing', () => {
    let run = sit(sit(opened(), 2, 'Tomas'), 3, 'Wilma');
    run = act(run, 2, { kind: 'say', phrase: 'ready', to: null });
    run = act(run, 0, { kind: 'say', phrase: 'your-turn', to: 2 });
    run = act(run, 3, { kind: 'say', phrase: 'one-moment', to: null });
    expect(run.state.said.map(({ seat: by }) => by)).toEqual([2, 0, 3]);
    run = sit(act(run, 2, { kind: 'leave' }), 2, 'Odo');
    expect(run.state.said.map(({ seat: by }) => by)).toEqual([3]);
  });

  test('TG1 LM7 what somebody has used up goes along to another place, and no place tires for others', () => {
    let run = sit(opened(), 2, 'Tomas');
    for (let said = 0; said < 3; said++) run = act(run, 2, { kind: 'say', phrase: 'ready', to: null });
    const before = run.state.phrases[2];
    for (let turn = 0; turn < 40; turn++)
      run = act(run, turn % 2 === 0 ? 2 : 3, { kind: 'swap-seats', seat: turn % 2 === 0 ? 3 : 2 });
    const now: Seat = run.state.seats[2].kind === 'person' ? 2 : 3;
    expect(run.state.phrases[now]).toEqual(before);
    // Twenty moves at once are enough, and they have tired nobody's place.
    expect(run.state.seats[2].kind === 'person' || run.state.seats[3].kind === 'person').toBe(true);
    const free: Seat = now === 2 ? 3 : 2;
    expect(sit(run, free, 'Wilma').state.seats[free]).toMatchObject({ kind: 'person', name: 'Wilma' });
    expect(run.state.sittings[free]).toEqual(opened().state.sittings[free]);
  });
});
