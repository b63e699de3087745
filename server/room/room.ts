// A room as an event-sourced aggregate: its pure functions, and where loading it may begin.
import { begin } from '../../shared-engine/index.ts';
import type { Aggregate, Change } from '../aggregate/aggregate.ts';
import type { Recorded } from '../aggregate/recorded.ts';
import { evolveAll } from '../aggregate/replay.ts';
import type { AggregateType } from '../aggregate/type.ts';
import type { RoomCommand } from './command.ts';
import { decideRoom } from './decide.ts';
import type { RoomEvent } from './event.ts';
import { beginRoom, evolveRoom } from './evolve.ts';
import type { TablePolicy } from './policy.ts';
import type { RoomState } from './state.ts';
import { type RoomSnapshot, roomEvents, roomSnapshotFrom } from './stored-event.ts';

export type Room = Aggregate<RoomState, RoomEvent, RoomCommand>;
export type RoomChange = Change<RoomState, RoomEvent>;
export type RecordedRoomEvent = Recorded<RoomEvent>;

/** All of a room but its decisions, which its policy takes part in. */
export const ROOM: Omit<AggregateType<RoomState, RoomEvent, RoomCommand>, 'decide'> = {
  kind: 'room',
  codec: roomEvents,
  begin: beginRoom,
  evolve: evolveRoom,
  snapshotOf: (state, event) =>
    event.kind === 'round' && event.event.kind === 'dealt' ? snapshotText(state) : null,
  restore: (begun, text) => restored(begun, roomSnapshotFrom(text)),
};

export function roomWith(policy: TablePolicy): AggregateType<RoomState, RoomEvent, RoomCommand> {
  return { ...ROOM, decide: (state, command) => decideRoom(state, command, policy) };
}

/** The room that these events lead to, the first one on; null where they do not begin with its opening. */
export function replayRoom(recorded: readonly RecordedRoomEvent[]): RoomState | null {
  const [first] = recorded;
  const begun = first ? beginRoom(first) : null;
  return begun && evolveAll(ROOM, begun, recorded);
}

function snapshotText({ seq, at, seats, host, controls, timerOwners, play }: RoomState): string | null {
  if (play === null) return null;
  const { number, dealt } = play;
  const snapshot: RoomSnapshot = { seq, at, seats, host, controls, timerOwners, number, dealt };
  return JSON.stringify(snapshot);
}

function restored(begun: RoomState, { number, dealt, ...state }: RoomSnapshot): RoomState {
  const step = { stepAt: state.at, withdrawals: [0, 0, 0, 0], moreTime: 0 } as const;
  const play = { number, dealtSeq: state.seq, dealt, round: begin(dealt), ...step };
  return { ...begun, ...state, play };
}
