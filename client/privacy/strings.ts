// What the page says about a person’s data and about deleting it.
import { isFace, type PersonalDataEntry, STEPS } from '../../shared-engine/index.ts';
import { STEP_NAMES } from '../room/step-names.ts';
import { tileList } from '../tiles/tile-names.ts';
import { choicesText, questionsText } from './counted-round.ts';

export const PRIVACY = {
  title: 'Your data',
  browser:
    'This browser stores your name, these settings, the order of your rack, the rounds you played with their reviews, and your cards. It also stores the deals you took home from a class, the drills you played or published, and the clubs’ pages you opened or put a table on. Each tab stores what you have chosen in a lesson or a deal taken home. Nobody else sees any of it. A card that you want to keep, save as a file first. Before you delete it all, close the other tabs of Quadrille: each clears its own when it closes.',
  clear: 'Delete what this browser stores',
  elsewhere:
    'The server stores what happens at a table. Open a table, a class or a drill to see your data there.',
  room: 'The server stores your name at this table, when you came and left, and what you chose. It deletes a table 30 days after its last use, unless whoever runs this server has set another time.',
  class:
    'The server stores your name in this class, when you came and left, and your aims and choices. It deletes a class 400 days after its last use, unless whoever runs this server has set another time; the page on which you joined says how long.',
  drill:
    'The server stores which deals of this drill you have played on this device, what you chose, your questions and, where your teacher asks for it, your name. The page of the drill says for how long.',
  show: 'Show my data',
  count: (entries: number) => (entries === 1 ? '1 entry:' : `${entries} entries:`),
  save: 'Save as a file',
  keep: 'No, keep it',
  delete: {
    name: 'Delete my data',
    yes: 'Yes, give up my seat and delete my name',
    about:
      'You give up your seat, and your name is deleted at once. Your choices stay without a name, because the others’ deals depend on them.',
  },
  deletePlayed: {
    name: 'Delete my data',
    yes: 'Yes, delete my name and what ties my rounds to this device',
    about:
      'Your name is deleted at once, and so is what ties your rounds to this device. Your choices and questions stay without a name, because they are among the numbers of all.',
  },
  deleteDrill: {
    name: 'Delete this drill',
    yes: 'Yes, delete the drill and all that was played',
    about:
      'The deals, every round, every question and the report are deleted at once, for everybody. Save the report first, if you want it.',
  },
  deleteClass: {
    name: 'Delete this class',
    yes: 'Yes, delete the class and all its tables',
    about:
      'The deals, every table, every review and the report are deleted at once, for everybody. Save the report and the deals first, if you want them. Another teacher’s device keeps its copy of both.',
  },
} as const;

/** What one button deletes. */
export interface Deleted {
  readonly words: Readonly<Record<'name' | 'yes' | 'about', string>>;
  /** The path behind that of the data where they are not all that goes. */
  readonly only?: '/device' | '/player';
}

/** One button for each of these entries that is there. */
const BY_ENTRY: readonly (readonly [entry: string, deleted: Deleted])[] = [
  ['a round was counted', { words: PRIVACY.deletePlayed, only: '/device' }],
  ['joined the class', { words: PRIVACY.delete, only: '/player' }],
  ['opened the class', { words: PRIVACY.deleteClass }],
  ['published the drill', { words: PRIVACY.deleteDrill }],
];

/** What can be deleted of these data, own data first; who sits at a table has none of the entries above. */
export function deletedTogether(entries: readonly PersonalDataEntry[]): readonly Deleted[] {
  const found = BY_ENTRY.filter(([entry]) => entries.some(({ what }) => what === entry));
  return found.length > 0 ? found.map(([, deleted]) => deleted) : [{ words: PRIVACY.delete }];
}

/** `14:05: passed, First right, 1 bam, 3 bam and 7 bam`. */
export function entryText({ at, what, ...more }: PersonalDataEntry): string {
  const details = Object.entries(more).flatMap(([name, value]) => detail(name, value) ?? []);
  return `${new Date(at).toLocaleString()}: ${[what, ...details].join(', ')}`;
}

/** Null for what says nothing: no tiles passed blind, and that a person chose. */
function detail(name: string, value: unknown): string | null {
  if (name === 'choices') return choicesText(value);
  if (name === 'questions') return questionsText(value);
  if (Array.isArray(value)) {
    const texts = value.map(String);
    return texts.every(isFace) ? tileList(texts) : `${name} ${texts.join(' ')}`;
  }
  if (value === null || typeof value === 'object' || value === 'player' || (name === 'blind' && value === 0))
    return null;
  if (name === 'seat' && typeof value === 'number') return `seat ${value + 1}`;
  const step = STEPS.find((known) => known === value);
  return step ? STEP_NAMES[step] : `${name} ${value}`;
}
