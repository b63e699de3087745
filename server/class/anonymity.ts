// Where the terms keep choices anonymous: which steps everybody has finished, so that choices may be shown.
import { type Anonymity, STEPS, type Step, stepOf } from '../../shared-engine/index.ts';
import { isPlayedOut } from '../room/teacher-controls.ts';
import type { ActiveClass } from './active-class.ts';
import { roundOf } from './player-results.ts';
import { type ClassPlayer, playersIn } from './state.ts';

/** For the deal at this place of the drill; null where single players may be shown. */
export function anonymityFor(live: ActiveClass, deal: number): Anonymity {
  const { terms } = live.state;
  if (terms.names) return null;
  return ({ seat, step }) =>
    playersIn(live.state)
      .filter((player) => player.seat === seat && player.first <= deal)
      .every((player) => hasFinished(live, player, deal, step));
}

function hasFinished(live: ActiveClass, player: ClassPlayer, deal: number, step: Step): boolean {
  const round = roundOf(live, player, deal);
  if (round === null) return false;
  const open = stepOf(round);
  return open === null || isPlayedOut(round) || STEPS.indexOf(open) > STEPS.indexOf(step);
}
