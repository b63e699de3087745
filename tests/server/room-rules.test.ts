// The pure part of a room: any sequence of commands leaves a log that replays to the same room.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { RoomCommand } from '../../server/room/command.ts';
import { decideRoom, openingEvents } from '../../server/room/decide.ts';
import type { Logged } from '../../server/room/event.ts';
import { evolveRoom, replayRoom } from '../../server/room/evolve.ts';
import { logged } from '../../server/room/room.ts';
import { type RoomState, roundRuns } from '../../server/room/state.ts';
import {
  bagOf,
  dealTiles,
  facesOf,
  SEATS,
  type Seat,
  STYLES,
  sizeOf,
  stream,
} from '../../shared-engine/index.ts';
import { anyChoice, owing, seedNamed } from '../kit/rounds.ts';

const seat = fc.constantFrom<Seat>(...SEATS);
const style = fc.constantFrom(...STYLES);

/** A wish, made a command when it is known who sits where. */
const wish = fc.oneof(
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('sit'), seat: fc.option(seat) }) },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('leave'), seat }) },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('ready'), seat, ready: fc.boolean() }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('seat-bot'), by: seat, seat, style }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('unseat'), by: seat, seat }) },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('deal'), name: fc.string({ maxLength: 3 }) }) },
  { weight: 8, arbitrary: fc.record({ kind: fc.constant('answers'), name: fc.string({ maxLength: 3 }) }) },
);
type Wish = typeof wish extends fc.Arbitrary<infer T> ? T : never;

interface Run {
  readonly state: RoomState;
  readonly log: readonly Logged[];
}

function opened(): Run {
  const events = openingEvents({
    door: 'friends',
    terms: { deadline: null, layOpen: false },
    bots: ['casual', null, null],
    card: { kind: 'house' },
    name: 'Ines',
    key: 'a0',
  });
  const log = logged(events, { after: 0, at: 0, command: null });
  return { state: replayRoom(log)!, log };
}

function after(run: Run, command: RoomCommand): Run {
  const decision = decideRoom(run.state, command);
  if (!decision.ok) return run;
  const at = run.log.length * 10;
  const more = logged(decision.events, { after: run.state.seq, at, command: null });
  return { state: more.reduce(evolveRoom, run.state), log: [...run.log, ...more] };
}

function commandsOf(wished: Wish, state: RoomState): RoomCommand[] {
  const owner = (at: Seat) => {
    const chair = state.chairs[at];
    return { seat: at, since: chair.kind === 'person' ? chair.since : 0 };
  };
  switch (wished.kind) {
    case 'sit':
      return [{ kind: 'take-seat', seat: wished.seat, name: `guest ${state.seq}`, key: `${state.seq}` }];
    case 'leave':
      return [{ kind: 'act', owner: owner(wished.seat), act: { kind: 'leave' } }];
    case 'ready':
      return [{ kind: 'act', owner: owner(wished.seat), act: { kind: 'ready', ready: wished.ready } }];
    case 'seat-bot':
      return [
        {
          kind: 'act',
          owner: owner(wished.by),
          act: { kind: 'seat-bot', seat: wished.seat, style: wished.style },
        },
      ];
    case 'unseat':
      return [{ kind: 'act', owner: owner(wished.by), act: { kind: 'unseat', seat: wished.seat } }];
    case 'deal':
      return [{ kind: 'deal', seed: seedNamed(wished.name) }];
    case 'answers': {
      const { play } = state;
      if (play === null) return [];
      return owing(play.round).map((at) => ({
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
  return wishes.reduce((run, wished) => commandsOf(wished, run.state).reduce(after, run), opened());
}

const wishes = fc.array(wish, { maxLength: 60 });

describe('any sequence of commands', () => {
  test('E2 leaves a log, numbered without a gap, that replays to the same room', () => {
    fc.assert(
      fc.property(wishes, (list) => {
        const { state, log } = played(list);
        expect(replayRoom(log)).toEqual(state);
        expect(log.map(({ seq }) => seq)).toEqual(log.map((_, index) => index + 1));
      }),
    );
  });

  test('leaves a host who is a person, and 152 tiles, and nobody’s chair empty while tiles are out', () => {
    fc.assert(
      fc.property(wishes, (list) => {
        const { state } = played(list);
        const persons = SEATS.filter((at) => state.chairs[at].kind === 'person');
        if (state.host === null) expect(persons).toEqual([]);
        else expect(persons).toContain(state.host);
        if (state.play === null) return;
        const { racks, deal } = state.play.round;
        expect(sizeOf(bagOf([...racks.flatMap(facesOf), ...dealTiles(deal).wall]))).toBe(152);
        if (roundRuns(state)) expect(state.chairs.map(({ kind }) => kind)).not.toContain('empty');
      }),
    );
  });

  test('never lets two people at a table share a stay', () => {
    fc.assert(
      fc.property(wishes, (list) => {
        const { state } = played(list);
        const stays = state.chairs.flatMap((chair) => (chair.kind === 'person' ? [chair.since] : []));
        expect(new Set(stays).size).toBe(stays.length);
      }),
    );
  });
});

test('a closed room refuses everything with one code', () => {
  const closed = after(opened(), { kind: 'close' });
  expect(closed.state.closed).toBe(true);
  const commands: RoomCommand[] = [
    { kind: 'take-seat', seat: null, name: 'Odo', key: 'b' },
    { kind: 'deal', seed: seedNamed('closed') },
    { kind: 'close' },
  ];
  for (const command of commands)
    expect(decideRoom(closed.state, command)).toMatchObject({ code: 'no-such-room' });
});

test('a log that does not begin with the opening is no room', () => {
  expect(replayRoom([])).toBeNull();
  expect(replayRoom([{ seq: 1, at: 0, command: null, event: { kind: 'closed' } }])).toBeNull();
});
