// What one audience has not been told yet: the parts of its table that are other than they were.
import { isDeepStrictEqual } from 'node:util';
import { type Seat, type Table, type TableDelta, viewDelta } from '../../shared-engine/index.ts';
import type { RoomState } from '../room/state.ts';
import {
  audienceOf,
  controlsFor,
  type Listening,
  remainingOf,
  roundView,
  seatInfos,
  type TableFacts,
} from './audience.ts';

/** A moment of the room, as somebody knows it from a seat or as a spectator. */
export interface Moment {
  readonly state: RoomState;
  readonly listening: Listening;
}

/** Both moments are for one person or both for a spectator, so their difference tells only what may be known. */
export function deltaBetween(before: Moment, now: Moment, facts: TableFacts): TableDelta {
  const { state } = now;
  const you = youIn(now);
  const round = state.play?.number ?? 0;
  const controls = facts.policy.hasTeacher ? changedControls(before, now) : null;
  return {
    // Time runs without an event.
    remaining: remainingOf(state, facts),
    ...(youIn(before) !== you && { you }),
    ...(haveSeatsChanged(before.state, state) && { seats: seatInfos(state, facts.absentMs) }),
    ...(before.state.terms !== state.terms && { terms: state.terms }),
    ...((before.state.play?.number ?? 0) !== round && { round }),
    ...(before.state.said !== state.said && { said: state.said }),
    ...(controls && { controls }),
    ...viewDeltaBetween(before, now),
  };
}

/** The seat that somebody listens from; null for a spectator. */
export function youIn({ listening }: Moment): Seat | null {
  return listening?.seat ?? null;
}

/** The host never changes but with a seat. */
export function haveSeatsChanged(before: RoomState, now: RoomState): boolean {
  return before.seats !== now.seats || before.invitations !== now.invitations;
}

/** Null where they are what they were. */
export function changedControls(before: Moment, now: Moment): NonNullable<Table['controls']> | null {
  const then = controlsFor(before.state, before.listening);
  const controls = controlsFor(now.state, now.listening);
  return isDeepStrictEqual(then, controls) ? null : controls;
}

/** Whether the view of `now` is for the same audience as that of `before` and of the same round. */
export function isSameView(before: Moment, now: Moment): boolean {
  const [was, is] = [audienceOf(before.state, before.listening), audienceOf(now.state, now.listening)];
  return was.kind === is.kind && before.state.play?.number === now.state.play?.number;
}

function viewDeltaBetween(before: Moment, now: Moment): Pick<TableDelta, 'view' | 'viewDelta'> {
  const [then, { play }] = [before.state.play, now.state];
  if (isSameView(before, now)) {
    if (play === null || then?.round === play.round) return {};
    const delta = then && viewDelta(then.round, play.round, audienceOf(now.state, now.listening));
    if (delta) return { viewDelta: delta };
  }
  return { view: roundView(now.state, now.listening) };
}
