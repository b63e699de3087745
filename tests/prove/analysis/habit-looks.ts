// Rounds of players of several kinds on the same deals, judged once, and what the page says of whoever played some of them.
import type { Budget } from '../../../shared-engine/analysis/comparison/budget.ts';
import {
  analyzeOffered,
  decisionKey,
  decisionsIn,
} from '../../../shared-engine/analysis/review/deep-analysis.ts';
import { reviewRound } from '../../../shared-engine/analysis/review/review-round.ts';
import { type Habit, habitsOf } from '../../../shared-engine/practice/habits.ts';
import { type StoredChoice, storedChoice } from '../../../shared-engine/practice/stored-round.ts';
import { type Random, stream } from '../../../shared-engine/rules/deal/random.ts';
import type { SeatRecord } from '../../../shared-engine/rules/view/record.ts';
import { houseKernel } from '../../kit/reviews.ts';
import { analyst } from './choices.ts';
import { habitRound, type PlantedHabit } from './habit-players.ts';

/** As much of a stored round as the page adds up. */
export interface JudgedRound {
  readonly choices: readonly StoredChoice[];
}

/** The first habit that the page names of a player, and after how many rounds. */
export interface FirstNamed {
  readonly habit: Habit;
  readonly after: number;
}

/**
 * Round `nth` of a player of each kind. All are dealt the same tiles, and what two of them chose alike from the same
 * knowledge is judged once: it would be judged alike.
 */
export function judgedRounds(
  name: string,
  nth: number,
  kinds: readonly (PlantedHabit | null)[],
  budget: Budget,
): readonly JudgedRound[] {
  const judged = new Map<string, StoredChoice>();
  return kinds.map((habit) => ({ choices: judgedChoices(habitRound(name, nth, habit), budget, judged) }));
}

/** As the page stores them, by its own functions; whose choice it was makes no difference to the judge. */
function judgedChoices(
  record: SeatRecord,
  budget: Budget,
  judged: Map<string, StoredChoice>,
): readonly StoredChoice[] {
  const review = reviewRound(record, houseKernel);
  return decisionsIn(record).map((decision, nth) => {
    const key = decisionKey(decision);
    const known = judged.get(key);
    if (known !== undefined) return known;
    const analysis = analyzeOffered(analyst, decision, { budget });
    const made = storedChoice({ ...review.choices[nth]!, by: 'player', analysis });
    judged.set(key, made);
    return made;
  });
}

/** Somebody who plays so many of these rounds, each drawn anew, and looks at the page after every one. */
export function lookedAfterEvery(
  pool: readonly JudgedRound[],
  rounds: number,
  seed: string,
): FirstNamed | null {
  const random: Random = stream(seed, 'rounds of a player');
  const played: JudgedRound[] = [];
  for (let after = 1; after <= rounds; after++) {
    played.push(pool[random.below(pool.length)]!);
    const [habit] = habitsOf(played).named;
    if (habit !== undefined) return { habit, after };
  }
  return null;
}
