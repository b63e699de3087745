// A deal with scripted answers: what the bots around the player pass, vote and ask, and which tiles they are dealt for it.
import {
  type AnswerChoice,
  addTo,
  bagOf,
  copiesOf,
  countOf,
  type DealScript,
  type Face,
  type Four,
  forFour,
  giverTo,
  MOVE_STEPS,
  MOVES,
  neighbor,
  SEATS,
} from '../rules/index.ts';
import type { Drill, DrillDeal } from './format.ts';
import { type DealPlace, type DrillProblem, drillProblem } from './problem.ts';

/** The answers of the other seats as the file has them (rule R6); none where the deal has no script. */
export function dealScript({ seat, scripted }: DrillDeal): DealScript {
  if (!scripted) return [];
  const { arrivals, stopped, asked } = scripted;
  const passes = MOVE_STEPS.flatMap((step) => {
    const tiles = arrivals[step] ?? [];
    const choice: AnswerChoice = { kind: 'pass', step, tiles, blind: 0 };
    return tiles.length > 0 ? [{ seat: giverTo(seat, MOVES[step].toward), choice }] : [];
  });
  const votes = SEATS.filter((other) => stopped && other !== seat).map((other) => {
    const choice: AnswerChoice = { kind: 'vote', step: 'vote', go: !stopped?.includes(other) };
    return { seat: other, choice };
  });
  if (asked === undefined) return [...passes, ...votes];
  const choice: AnswerChoice = { kind: 'ask', step: 'courtesy-ask', count: asked };
  return [...passes, ...votes, { seat: neighbor(seat, 'across'), choice }];
}

/** The script of a deal that was rotated so that the seat it was made for is seat 0, as the tables of a class are. */
export function rotatedScript(deal: DrillDeal): DealScript {
  return dealScript(deal).map(({ seat, choice }) => ({
    seat: SEATS[(seat + SEATS.length - deal.seat) % SEATS.length]!,
    choice,
  }));
}

/**
 * The racks with the tiles that their bots pass on by the script, as far as the set has them beside all the others: what
 * the player gave away and got back is not dealt twice.
 */
export function scriptedRacks(racks: Four<readonly Face[]>, deal: DrillDeal): Four<readonly Face[]> {
  const passes = dealScript(deal).flatMap(({ seat, choice }) =>
    choice.kind === 'pass' ? choice.tiles.map((face) => ({ seat, face })) : [],
  );
  let used = bagOf(racks.flat());
  const dealt = passes.filter(({ face }) => {
    if (countOf(used, face) >= copiesOf(face)) return false;
    used = addTo(used, [face]);
    return true;
  });
  return forFour((seat) => [
    ...racks[seat],
    ...dealt.filter((pass) => pass.seat === seat).map(({ face }) => face),
  ]);
}

/** Why this deal cannot have a script; none where it has none. */
export function scriptProblems(deal: DrillDeal, form: Drill['form'], place: DealPlace): DrillProblem[] {
  const { seat, scripted, tiles } = deal;
  if (!scripted) return [];
  const problem = (words: string) => drillProblem('cannot-be-scripted', place, words);
  const problems: DrillProblem[] = [];
  if (form === 'tables') {
    problems.push(problem('it is scripted, which needs bots on the other seats; play it alone or guided.'));
  }
  if (tiles.kind !== 'manual') {
    problems.push(problem('only a deal with tiles set by hand can be scripted; remove "scripted".'));
  }
  if (Object.values(scripted.arrivals).some((faces) => faces.includes('joker'))) {
    problems.push(problem('a joker is never passed, so none can arrive; remove it from "scripted".'));
  }
  if (scripted.stopped?.includes(seat)) {
    problems.push(problem(`seat ${seat} is the player's, who votes for itself; remove it from "stopped".`));
  }
  return problems;
}
