// What the teacher sees while the class plays: built up field by field, a rack only where the terms allow it.
import {
  type Desk,
  type DeskPupil,
  openStep,
  type Round,
  type Step,
  seatView,
  spreadsOf,
} from '../../shared-engine/index.ts';
import { deadlineOf } from '../room/agenda.ts';
import { isAheadOfLine, isHeld } from '../room/lead.ts';
import { goneSince } from '../room/state.ts';
import { entriesOf } from './entries.ts';
import { lineFor } from './line.ts';
import type { LiveClass } from './live-class.ts';
import { type Pupil, pupilsIn } from './state.ts';

export async function deskFor(live: LiveClass, now: number): Promise<Desk> {
  const { state, version, code } = live;
  const { drill, terms, dealt, holdBefore, ended, shown } = state;
  const entries = dealt === 0 ? [] : await entriesOf(live, dealt - 1, null);
  const spreads = spreadsOf(
    entries.map(({ entry }) => entry),
    live.card.card.families.map(({ id }) => id),
  );
  return {
    version,
    code,
    title: drill.title,
    form: drill.form,
    terms,
    deals: drill.deals.map(({ id, title, note }) => ({ id, title: title ?? null, note: note ?? null })),
    dealt,
    holdBefore,
    ended,
    shown,
    pupils: pupilsIn(state).map((pupil) => deskPupil(live, pupil, now)),
    line: lineFor(live),
    spreads: spreads.map(({ seat, kind, step, pupils: chose, stoodIn }) => ({
      seat,
      kind,
      step,
      pupils: chose,
      stoodIn,
    })),
  };
}

function deskPupil(live: LiveClass, pupil: Pupil, now: number): DeskPupil {
  const { id, name, seat, standIn, first } = pupil;
  const room = live.tables.at(pupil.room)?.live.room;
  const chair = room?.state.chairs[seat];
  const present = chair?.kind === 'person' && goneSince(chair) === null;
  const ready = chair?.kind === 'person' && chair.ready;
  const about = { id, name, seat, present, standIn, ready };
  const play = room?.state.play;
  if (!room || !play) {
    return {
      ...about,
      deal: 0,
      at: 'waiting',
      sealed: false,
      held: false,
      since: 0,
      remaining: null,
      rack: null,
    };
  }
  const view = seatView(play.round, seat);
  const ahead = isAheadOfLine(play.round, room.state.lead);
  const step = ahead ? stepOnLine(play.round) : openStep(view.stage);
  const deadline = deadlineOf(room.state, room.stepSince);
  // Who has chosen and waits for the line is not held: the class has still to come there.
  const held = !ahead && isHeld(play.round, room.state.lead);
  return {
    ...about,
    deal: first + play.number,
    at: step ?? 'closed',
    sealed: ahead || view.answer !== null,
    held,
    since: step === null ? 0 : Math.max(0, now - room.stepSince),
    remaining: deadline === null || held || ahead ? null : Math.max(0, deadline - now),
    rack: live.state.terms.racks ? view.rack : null,
  };
}

/** The step that this table has behind it and the class has still to go on from. */
function stepOnLine({ settled, own = [] }: Round): Step | null {
  const at = settled[own.length];
  if (at === undefined) return null;
  return at.kind === 'move' ? at.step : at.kind === 'vote' ? 'vote' : 'courtesy-ask';
}
