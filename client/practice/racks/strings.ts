// What the page says about ten racks and one question.
import {
  type Constraint,
  type MistakeCategory,
  mistakeName,
  type SectionDistance,
} from '../../../shared-engine/index.ts';
import { sentenceList } from '../../tiles/tile-names.ts';

export const RACKS = {
  title: 'Ten racks, one question',
  about: 'Ten dealt racks, no exchange. You answer, read why, and go on. About ten minutes.',
  question: 'The question',
  questions: {
    pass: 'Which three tiles would you pass first?',
    sections: 'Which two sections would you aim for?',
  },
  wish: 'The racks',
  start: 'Deal the first rack',
  east: 'You are East: 14 tiles.',
  notEast: 'You are not East: 13 tiles.',
  next: 'Next rack',
  finish: 'That was the last. Look back',
  distance: 'How far each section is',
  sum: 'Your answers',
  firstLook: 'All of this is a first look: nothing was played on.',
  nothing: 'No rack of these needs another look.',
  another: 'Worth another look',
  askAgain: 'Ask me these again',
  rest: 'The other racks',
  all: 'The racks',
  again: 'Ten more',
  stop: 'Stop here',
  byHabit: 'from the habit that costs me most',
  noHabit: 'No habit of yours stands out in a first pass so far, so the racks come by chance.',
  byChance: 'No rack for your habit was found, so this one comes by chance.',
  drawing: (tried: number) =>
    `Looking for a rack that fits your habit…${tried > 0 ? ` ${tried} tried so far.` : ''}`,
} as const;

export type RackQuestion = keyof typeof RACKS.questions;

/** What the racks may be like. */
export const WISHES: readonly { readonly name: string; readonly wish: Constraint | null }[] = [
  { name: 'any rack, by chance', wish: null },
  { name: 'three pairs or more', wish: { pairs: { from: 3 } } },
  { name: 'a joker or more', wish: { jokers: { from: 1 } } },
  { name: 'no joker and no flower', wish: { jokers: 0, flowers: 0 } },
  { name: 'like numbers', wish: { likeNumbers: { from: 5 } } },
  { name: 'four or more in a row', wish: { inARow: { from: 4 } } },
  { name: 'far from every hand', wish: { toGo: { from: 10 } } },
];

/** What racks drawn for this habit are. */
export function habitWish(habit: MistakeCategory | null): string {
  if (habit === null) return RACKS.noHabit;
  const name = mistakeName(habit);
  return `Racks with which our club-player bot ${name.charAt(0).toLowerCase()}${name.slice(1)}.`;
}

export function rackTitle(nth: number, of: number): string {
  return `Rack ${nth} of ${of}`;
}

export function chooseTiles(chosen: number): string {
  if (chosen > 3) return 'Three tiles are enough. Take one back.';
  return chosen === 3
    ? ''
    : `Choose ${3 - chosen} ${chosen > 0 ? 'more ' : ''}${chosen === 2 ? 'tile' : 'tiles'}.`;
}

export function chooseSections(chosen: number): string {
  if (chosen > 2) return 'Two sections are enough. Take one back.';
  return chosen === 2 ? '' : `Choose ${chosen === 1 ? 'one more section' : 'two sections'}.`;
}

/** What the named sections are worth, in one sentence. */
export function sectionsSentence(named: readonly string[], distances: readonly SectionDistance[]): string {
  const reached = distances
    .filter(({ id, inReach }) => inReach && named.includes(id))
    .map(({ name }) => name);
  const [nearest] = distances;
  const isNamed = nearest !== undefined && named.includes(nearest.id);
  const closest = isNamed ? '' : ` The closest is ${nearest?.name}, ${nearest?.toGo} away.`;
  if (reached.length === named.length) return `Both are among the closest.${closest}`;
  if (reached.length === 0) return `Neither is among the closest.${closest}`;
  return `${sentenceList(reached)} is among the closest, the other is not.${closest}`;
}
