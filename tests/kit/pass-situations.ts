// Rounds as they stand at some pass, by seed: what a coach is asked about.
import { stream } from '../../shared-engine/rules/deal/random.ts';
import { decisionFor, pendingDecisionOf } from '../../shared-engine/rules/exchange/pending-decision.ts';
import { seatView } from '../../shared-engine/rules/view/view.ts';
import { opened, playOn } from './rounds.ts';

/** Seat 0 at one of the six passes, by turns. */
export function atSomePass(n: number, seed = 'coach') {
  const steps = n % 6;
  const { round } = playOn(opened(`${seed} ${n}`), stream(`${seed} ${n}`, 'choices'), (now) => {
    return now.resolved.length >= steps && now.phase === 'passing';
  });
  const view = seatView(round, 0);
  return {
    record: view.record,
    rack: view.rack,
    decision: pendingDecisionOf(round, 0) ?? decisionFor(round, 0, round.terms),
  };
}
