// What the page says of what keeps costing somebody.
import {
  type AimsMet,
  type aimsOver,
  type HabitRow,
  type Habits,
  LEAST_CASES,
  mistakeName,
  type StepKind,
} from '../../../shared-engine/index.ts';

export const HABITS = {
  title: 'What keeps costing me',
  opening: 'Adding up your rounds…',
  none: 'Nothing to add up yet. Play a few rounds and come back.',
  steps: 'By step',
  mistakes: 'By kind of mistake',
  noMistakes: 'No costly choice yet.',
  unit: 'Wins in 100 games that your choices cost, a round',
  numbers: 'The numbers',
  kind: 'Kind',
  cases: 'Choices',
  cost: 'A round',
  method: `Only differences that a review told as costly or a little worse are added up. A kind with few cases is drawn towards the mean of all kinds, and under ${LEAST_CASES} cases nothing is said of it. The tiles that luck brought are not in these numbers.`,
  how: 'How this was worked out',
  aims: 'What you aimed at',
  exercises: 'Ten minutes today: your own choices again',
  rounds: 'My rounds',
} as const;

const STEPS: Readonly<Record<StepKind, string>> = {
  right: 'Passing right',
  across: 'Passing across',
  left: 'Passing left',
  vote: 'Second Charleston, stop or go on',
  blind: 'Passing blind, how many',
  courtesy: 'The courtesy',
};

export function stepKindName(kind: StepKind): string {
  return STEPS[kind];
}

export { mistakeName };

/** `Over 31 rounds, passing across cost you most: about 1.3 wins in 100 games a round.` */
export function headline({ rounds, perRound, steps }: Habits): string {
  if (rounds === 0) return HABITS.none;
  const over = rounds === 1 ? 'In one round' : `Over ${rounds} rounds`;
  const [first] = steps;
  if (!first?.isSaid || rounds < LEAST_CASES) {
    return `${over} there is too little to tell. ${LEAST_CASES} rounds are a start.`;
  }
  if (perRound < 0.05) return `${over}, no kind of choice cost you anything worth telling.`;
  return `${over}, ${lower(STEPS[first.kind])} cost you most: ${aboutWins(first.perRound)} a round.`;
}

/** A second sentence, on the kind of mistake; null where there are too few of any kind. */
export function mistakeHeadline({ mistakes }: Habits): string | null {
  const [first] = mistakes;
  if (!first?.isSaid) return null;
  return `The costliest kind of mistake: ${lower(mistakeName(first.kind))}, ${aboutWins(first.perRound)} a round.`;
}

export function allChoices({ perRound, halfWidth, rounds }: Habits): string {
  const between = rounds > 1 ? ` (between ${low(perRound, halfWidth)} and ${high(perRound, halfWidth)})` : '';
  return `All your choices together cost ${aboutWins(perRound)} a round${between}.`;
}

/** Null where the coach was never asked. */
export function helpedWords({ helped, unaidedPasses }: Habits): string | null {
  const { cases, perCase } = helped;
  if (cases === 0) return null;
  const asked = `The coach helped with ${cases === 1 ? 'one choice' : `${cases} choices`}, which ${cases === 1 ? 'is' : 'are'} not in these numbers.`;
  if (cases < LEAST_CASES || unaidedPasses.cases < LEAST_CASES) return asked;
  return `${asked} With help a choice cost ${aboutWins(perCase)}, a pass without it ${aboutWins(unaidedPasses.perCase)}.`;
}

/** How often what was aimed at before a pass was within reach; null where too little was said. */
export function aimWords({ latest, earlier }: ReturnType<typeof aimsOver>): string | null {
  const said = latest.said + earlier.said;
  if (said < LEAST_CASES) return null;
  const all = `Of the ${said} sections you aimed at before a pass, ${latest.near + earlier.near} were within reach.`;
  if (latest.said < LEAST_CASES || earlier.said < LEAST_CASES) return all;
  return `${all} In your latest rounds it was ${ofThem(latest)}, before that ${ofThem(earlier)}.`;
}

function ofThem({ said, near }: AimsMet): string {
  return `${near} of ${said}`;
}

export function rowWords({ isSaid, cases, perRound }: HabitRow<string>): string {
  if (!isSaid) return `too few: ${cases} of ${LEAST_CASES}`;
  return perRound < 0.05 ? 'next to nothing' : `about ${perRound.toFixed(1)}`;
}

export function intervalWords({ perRound, halfWidth }: HabitRow<string>): string {
  return `${perRound.toFixed(2)} (${low(perRound, halfWidth)} to ${high(perRound, halfWidth)})`;
}

function aboutWins(value: number): string {
  return `about ${value.toFixed(1)} wins in 100 games`;
}

function low(value: number, halfWidth: number): string {
  return Math.max(0, value - halfWidth).toFixed(1);
}

function high(value: number, halfWidth: number): string {
  return (value + halfWidth).toFixed(1);
}

function lower(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}
