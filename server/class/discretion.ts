// Where the terms let nobody be told from the others: what has been chosen by all, so that no single choice tells whose it was.
import { type Discretion, openStep, STEPS, type Step, seatView } from '../../shared-engine/index.ts';
import { isPlayedOut } from '../room/lead.ts';
import { roundOf } from './entries.ts';
import type { LiveClass } from './live-class.ts';
import { type Pupil, pupilsIn } from './state.ts';

/** For the deal at this place of the drill; null where single pupils may be shown. */
export function discretionFor(live: LiveClass, deal: number): Discretion {
  const { terms } = live.state;
  if (terms.names) return null;
  return ({ seat, step }) =>
    pupilsIn(live.state)
      .filter((pupil) => pupil.seat === seat && pupil.first <= deal)
      .every((pupil) => hasBehind(live, pupil, deal, step));
}

function hasBehind(live: LiveClass, pupil: Pupil, deal: number, step: Step): boolean {
  const round = roundOf(live, pupil, deal);
  if (round === null) return false;
  const open = openStep(seatView(round, pupil.seat).stage);
  return open === null || isPlayedOut(round) || STEPS.indexOf(open) > STEPS.indexOf(step);
}
