// A room as an event-sourced aggregate: its pure functions, and where loading it may begin.
import { begin, evolve } from '../../shared-engine/index.ts';
import type { Aggregate, Change } from '../aggregate/aggregate.ts';
import type { Recorded } from '../aggregate/recorded.ts';
import { evolveAll } from '../aggregate/replay.ts';
import type { AggregateType } from '../aggregate/type.ts';
import type { RoomCommand } from './command.ts';
import { decideRoom } from './decide.ts';
import type { RoomEvent } from './event.ts';
import { beginRoom, evolveRoom } from './evolve.ts';
import type { TablePolicy } from './policy.ts';
import { shortLogOf } from './round-log.ts';
import type { Play, RoomState } from './state.ts';
import { type RoomSnapshot, roomEvents, roomSnapshotFrom } from './stored-event.ts';

export type Room = Aggregate<RoomState, RoomEvent, RoomCommand>;
export type RoomChange = Change<RoomState, RoomEvent>;
export type RecordedRoomEvent = Recorded<RoomEvent>;

/** All of a room but its decisions, which its policy takes part in. */
export const ROOM: Omit<AggregateType<RoomState, RoomEvent, RoomCommand>, 'decide'> = {
  kinds: ['room', 'class-table'],
  codec: roomEvents,
  begin: beginRoom,
  evolve: evolveRoom,
  startsAnew: (event) => event.kind === 'round' && event.event.kind === 'dealt',
  snapshotOf: snapshotText,
  restore: (begun, text) => restored(begun, roomSnapshotFrom(text)),
};

export function roomWith(policy: TablePolicy): AggregateType<RoomState, RoomEvent, RoomCommand> {
  return { ...ROOM, decide: (state, command, at) => decideRoom(state, command, policy, at) };
}

/** The room that these events lead to, the first one on; null where they do not begin with its opening. */
export function replayRoom(recorded: readonly RecordedRoomEvent[]): RoomState | null {
  const [first] = recorded;
  const begun = first ? beginRoom(first) : null;
  return begun && evolveAll(ROOM, begun, recorded);
}

function snapshotText({
  seq,
  at,
  terms,
  seats,
  host,
  invitations,
  controls,
  timerOwners,
  play,
  returns,
  sittings,
  moves,
  changes,
  said,
  phrases,
  closed,
}: RoomState): string | null {
  if (closed) return null;
  const snapshot: RoomSnapshot = {
    seq,
    at,
    terms,
    seats,
    host,
    invitations,
    controls,
    timerOwners,
    play: play && storedPlay(play),
    returns,
    sittings,
    moves,
    changes,
    said,
    phrases,
  };
  return JSON.stringify(snapshot);
}

function storedPlay({ round, ...play }: Play): NonNullable<RoomSnapshot['play']> {
  return { ...play, events: shortLogOf(round) };
}

function restored(begun: RoomState, { play, ...state }: RoomSnapshot): RoomState {
  return { ...begun, ...state, play: play && playFrom(play) };
}

function playFrom({ events, ...play }: NonNullable<RoomSnapshot['play']>): Play {
  return { ...play, round: events.reduce(evolve, begin(play.dealt)) };
}
