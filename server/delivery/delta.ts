// What one audience has not been told yet: the parts of its table that are other than they were.
import { isDeepStrictEqual } from 'node:util';
import { type TableDelta, viewDelta } from '../../shared-engine/index.ts';
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
  const { state, listening } = now;
  const you = listening?.seat ?? null;
  const round = state.play?.number ?? 0;
  return {
    // Time runs without an event.
    remaining: remainingOf(state, facts),
    ...((before.listening?.seat ?? null) !== you && { you }),
    ...(haveSeatsChanged(before.state, state) && { seats: seatInfos(state, facts.absentMs) }),
    ...(before.state.terms !== state.terms && { terms: state.terms }),
    ...((before.state.play?.number ?? 0) !== round && { round }),
    ...(before.state.said !== state.said && { said: state.said }),
    ...(facts.policy.hasTeacher && controlsDelta(before, now)),
    ...viewDeltaBetween(before, now),
  };
}

/** The host never changes but with a seat. */
function haveSeatsChanged(before: RoomState, now: RoomState): boolean {
  return before.seats !== now.seats || before.invitations !== now.invitations;
}

function controlsDelta(before: Moment, now: Moment): Pick<TableDelta, 'controls'> {
  const then = controlsFor(before.state, before.listening);
  const controls = controlsFor(now.state, now.listening);
  return isDeepStrictEqual(then, controls) ? {} : { controls };
}

function viewDeltaBetween(before: Moment, now: Moment): Pick<TableDelta, 'view' | 'viewDelta'> {
  const [then, { play }] = [before.state.play, now.state];
  const was = audienceOf(before.state, before.listening);
  const audience = audienceOf(now.state, now.listening);
  if (was.kind === audience.kind && then?.number === play?.number) {
    if (play === null || then?.round === play.round) return {};
    const delta = then && viewDelta(then.round, play.round, audience);
    if (delta) return { viewDelta: delta };
  }
  return { view: roundView(now.state, now.listening) };
}
