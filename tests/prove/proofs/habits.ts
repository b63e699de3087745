// What the page of habits names: a planted habit within 25 rounds, and hardly ever one of somebody who has none.
import { mistakeName } from '../../../shared-engine/practice/habits.ts';
import { HABIT_JUDGING } from '../analysis/budgets.ts';
import {
  type FirstNamed,
  type JudgedRound,
  judgedRounds,
  lookedAfterEvery,
} from '../analysis/habit-looks.ts';
import { PLANTED, type PlantedHabit } from '../analysis/habit-players.ts';
import { shareText } from '../analysis/proportions.ts';
import type { Proof, ProofRow, Size } from '../proof.ts';

const PLAYERS: Record<Size, number> = { small: 20, full: 200 };
const ROUNDS = 25;
/** The kinds of player that are judged; the small size is quick where numbers alone tell. */
const KINDS: Record<Size, readonly (PlantedHabit | null)[]> = {
  small: PLANTED.filter(({ kinds }) => kinds.includes('too-many-blind')),
  full: [...PLANTED, null],
};

export const proof: Proof = {
  summary:
    'Simulated players with one habit are told of it within 25 rounds, those without are hardly ever told of any.',
  async run({ seed, size, tell }) {
    const kinds = KINDS[size];
    const { rounds, budget } = HABIT_JUDGING[size];
    const pools = kinds.map((): JudgedRound[] => []);
    for (let nth = 0; nth < rounds; nth++) {
      for (const [place, round] of judgedRounds(seed, nth, kinds, budget).entries())
        pools[place]!.push(round);
      if ((nth + 1) % 20 === 0) {
        tell?.({ what: 'rounds of each kind judged', value: nth + 1, bar: String(rounds), ok: true });
      }
    }
    return kinds.map((planted, place) => {
      const pool = pools[place]!;
      const named = Array.from({ length: PLAYERS[size] }, (_, player) =>
        lookedAfterEvery(pool, ROUNDS, `${seed} ${planted?.words} ${player}`),
      );
      return planted === null ? innocents(named, rounds) : guilty(planted, named, rounds);
    });
  },
};

/** The first that the page ever names must be it. */
function guilty(planted: PlantedHabit, named: readonly (FirstNamed | null)[], pool: number): ProofRow {
  const right = named.filter((first) => first !== null && isPlanted(planted, first));
  const wrong = named.filter((first) => first !== null && !isPlanted(planted, first));
  const after = right.map((first) => first!.after).toSorted((a, b) => a - b);
  return {
    what: `players whose habit is the first that is named, within ${ROUNDS} rounds: ${planted.words} (drawn from ${pool} judged rounds)`,
    value: `${shareText(right.length, named.length)}, the middle one after ${after[after.length >> 1] ?? 'no'} rounds${told(wrong)}`,
    bar: 'at least 90 %',
    ok: right.length >= 0.9 * named.length,
  };
}

function innocents(named: readonly (FirstNamed | null)[], pool: number): ProofRow {
  const accused = named.filter((first) => first !== null);
  return {
    what: `players without a habit who are told of one, over all looks at ${ROUNDS} rounds (drawn from ${pool} judged rounds)`,
    value: `${shareText(accused.length, named.length)}${told(accused)}`,
    bar: 'at most 5 %',
    ok: accused.length <= 0.05 * named.length,
  };
}

function isPlanted({ kinds, part }: PlantedHabit, { habit }: FirstNamed): boolean {
  return kinds.includes(habit.kind) && (part === null || habit.part === part);
}

/** Each name once, with how many were told it. */
function told(named: readonly (FirstNamed | null)[]): string {
  const names = named.flatMap((first) => (first === null ? [] : [nameOf(first)]));
  const counted = [...new Set(names)].map((name) => `${name} ${names.filter((one) => one === name).length}`);
  return counted.length === 0 ? '' : `; named instead: ${counted.join(', ')}`;
}

function nameOf({ habit: { kind, part } }: FirstNamed): string {
  return part === 'any' ? mistakeName(kind) : `${mistakeName(kind)} (${part} Charleston)`;
}
