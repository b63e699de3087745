// What an anonymous class keeps to itself: who is counted, who has finished a step, and where a player may be shown to be.
import {
  begin,
  evolve,
  type Face,
  facesOf,
  isAfterVote,
  isAnonymous,
  openRound,
  type Round,
  type Seat,
  STEPS,
  type Step,
  stepOf,
} from '../../shared-engine/index.ts';
import { isPlayedOut } from '../room/teacher-controls.ts';
import type { FollowedClass } from './followed-class.ts';
import { dealOf, roundOf } from './player-results.ts';
import {
  type ClassPlayer,
  type ClassState,
  classTableTerms,
  isGuided,
  outcomesOf,
  playersIn,
} from './state.ts';

/** Those who were in the class on this seat when the deal was dealt, also if they have left since (rule AN2). */
export function cohortOf({ players, cohorts }: ClassState, deal: number, seat: Seat): readonly ClassPlayer[] {
  const ids = cohorts[deal] ?? [];
  return players.filter((player) => player.seat === seat && ids.includes(player.id));
}

/** Whether the step is over for this player, who may have gone past it without a choice. */
export function hasFinished(live: FollowedClass, player: ClassPlayer, deal: number, step: Step): boolean {
  const round = roundOf(live, player, deal);
  if (round === null) return false;
  const open = stepOf(round);
  return open === null || isPlayedOut(round) || STEPS.indexOf(open) > STEPS.indexOf(step);
}

/** The rack that everybody on the seat held, as it follows from the deal and from what a guided class continued with. */
export function commonRack(
  { state }: FollowedClass,
  { deal, seat, step }: { readonly deal: number; readonly seat: Seat; readonly step: Step },
): readonly Face[] | null {
  const prepared = state.deals[deal];
  if (prepared === undefined) return null;
  let round = begin(openRound(prepared, classTableTerms(state)));
  for (const outcome of outcomesOf(state, deal)) {
    if (stepOf(round) === step) break;
    round = evolve(round, { kind: 'resolved', outcome });
  }
  return stepOf(round) === step ? facesOf(round.racks[seat]) : null;
}

/** Whether the way through a deal tells a player's vote, so that places after it must not be shown (rule AN7). */
export function hidesPlaces(state: ClassState): boolean {
  return isAnonymous(state.terms) && !isGuided(state);
}

export interface HiddenPlace {
  /** Place in the drill of the deal in which the player is said to be after the vote. */
  readonly deal: number;
}

/**
 * Where a player is said to be in place of where the player is; null where that may be shown. From the vote on nobody
 * is shown to have come further than the last of the class, who has still to finish the deal.
 */
export function hiddenPlaceOf(live: FollowedClass, player: ClassPlayer): HiddenPlace | null {
  if (!hidesPlaces(live.state)) return null;
  const deal = Math.max(unfinishedDeal(live), player.first);
  const at = dealOf(live, player);
  if (at < deal) return null;
  return at > deal || isPastVote(roundOf(live, player, at)) ? { deal } : null;
}

/** Place in the drill of the first deal that somebody has still to finish. */
export function unfinishedDeal(live: FollowedClass): number {
  const deals = playersIn(live.state).flatMap((player) => {
    const deal = dealOf(live, player);
    const round = roundOf(live, player, deal);
    return round === null ? [] : [round.phase === 'closed' ? deal + 1 : deal];
  });
  return Math.min(live.state.dealt, ...deals);
}

function isPastVote(round: Round | null): boolean {
  const step = round && stepOf(round);
  return round !== null && (step === null || isAfterVote(step));
}
