// What the page says of what keeps costing somebody.
import {
  type AimsMet,
  type aimsOver,
  type Habit,
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
  how: 'How this was worked out',
  aims: 'What you aimed at',
  exercises: 'Ten minutes today: choose again',
  /** Where there is nothing to choose again yet. */
  day: 'Play the deal of the day',
  racks: 'Ten racks, one question',
  rounds: 'My rounds',
} as const;

/** How the sums were made, and when a habit is named. */
export const METHOD = [
  `Only choices that a review called costly or a little worse are added up here. A kind with few cases is drawn toward the mean of all kinds. Under ${LEAST_CASES} cases nothing is said of it. The tiles that luck brought are not in these numbers.`,
  'A habit is named only when one kind of mistake comes up in clearly more of your rounds than of our club-player bot’s. That holds however often you look: of 20 people without a habit, at most one is ever told of one. The bot’s mistakes were counted on the house card. On another card, take this with care.',
] as const;

const STEPS: Readonly<Record<StepKind, string>> = {
  right: 'Passing right',
  across: 'Passing across',
  left: 'Passing left',
  vote: 'Second Charleston: stop or continue',
  blind: 'How many to pass blind',
  courtesy: 'The courtesy',
};

export function stepKindName(kind: StepKind): string {
  return STEPS[kind];
}

export { mistakeName };

/** `Over 31 rounds, one habit stands out: you broke up a pair or more, in the second Charleston. …` */
export function headline({ rounds, named: [habit] }: Habits): string {
  if (rounds === 0) return HABITS.none;
  const over = rounds === 1 ? 'In one round' : `Over ${rounds} rounds`;
  if (rounds < LEAST_CASES) {
    return `${over} there is too little to tell. ${LEAST_CASES} rounds are a start.`;
  }
  if (habit === undefined) return `${over}, no one habit stands out.`;
  return `${over}, one habit stands out: you ${habitWords(habit)}. It cost you ${aboutWins(habit.perRound)} a round.`;
}

/** How often the habit showed, beside the bot, and which other habits there are; null where none is named. */
export function habitCounts({ named: [habit, ...others] }: Habits): string | null {
  if (habit === undefined) return null;
  const { kind, made, offered, usual } = habit;
  const bot = usual < 1 ? 'hardly ever does so' : `does so in about ${Math.round(usual)} of that many`;
  const when =
    kind === 'flower-given'
      ? `in ${made} of ${offered} rounds with a flower, at the first chance`
      : `in ${made} of ${offered} rounds`;
  const counted = `You did so ${when}. Our club-player bot ${bot}.`;
  if (others.length === 0) return counted;
  return `${counted} Also in more rounds than the bot, at a smaller cost: you ${others.map(habitWords).join('; you ')}.`;
}

/** As after “you”. */
export function habitWords({ kind, part }: Pick<Habit, 'kind' | 'part'>): string {
  return `${lower(mistakeName(kind))}${part === 'any' ? '' : `, in the ${part} Charleston`}`;
}

/** The step that cost most; null where there is too little to say so. */
export function stepLine({ rounds, steps: [first] }: Habits): string | null {
  if (!first?.isSaid || rounds < LEAST_CASES || first.perRound < 0.05) return null;
  return `Of the steps, ${lower(STEPS[first.kind])} cost you most: ${aboutWins(first.perRound)} a round.`;
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
