// What the player marked at a server's table: what a pass aims at, and for which choices the coach was asked.
import { STEPS, type Step } from '../../shared-engine/index.ts';
import type { Helped } from '../coach/helped.ts';
import type { LeftStep } from '../connection/connection.ts';
import type { Aims } from './aims.ts';

export interface Marks {
  readonly aims: Aims;
  readonly helped: Helped;
}

/**
 * Whoever comes back from a round in the page meets the same numbers and steps again, with other tiles: what was marked
 * since the table was left says nothing of them (rule G4).
 */
export function marksUntil({ aims, helped }: Marks, left: LeftStep): Marks {
  return {
    aims: Object.fromEntries(Object.entries(aims).filter(([mark]) => !isLater(mark, left))),
    helped: helped.filter((mark) => !isLater(mark, left)),
  };
}

/** `mark` is a `round/step`. */
function isLater(mark: string, left: LeftStep): boolean {
  const [round, step] = mark.split('/');
  const ahead = Number(round) - left.round;
  return ahead > 0 || (ahead === 0 && STEPS.indexOf(step as Step) > STEPS.indexOf(left.step));
}
