// What is said of what is kept of a person, and of having it forgotten.
import type { PersonalDataEntry } from '../../shared-engine/index.ts';

export const PRIVACY = {
  title: 'What is kept of you',
  browser:
    'This browser keeps the name you typed, these settings, and how your rack was laid. It keeps them from everybody else.',
  clear: 'Clear this browser’s notes',
  elsewhere:
    'The server keeps what happens at a table. Open a table or a class to see what is kept of you there.',
  room: 'The server keeps your name at this table, when you came and went, and what you chose. It goes by itself when the table has not been used for some weeks.',
  class:
    'The server keeps your name in this class, when you came and went, the aims you named and what you chose. It goes by itself when the class has not been used for some weeks.',
  show: 'Show what is kept',
  things: (count: number) => (count === 1 ? '1 thing is kept:' : `${count} things are kept:`),
  save: 'Save it as a file',
  keep: 'No, keep it',
  forget: {
    name: 'Have it forgotten',
    yes: 'Yes, give up my seat and forget my name',
    about:
      'You give up your seat. Your name goes at once; the choices you made stay without it, because the others’ round rests on them.',
  },
  forgetClass: {
    name: 'Have this class forgotten',
    yes: 'Yes, forget the class and all its tables',
    about:
      'The drill, every table, every review and the report go at once, for everybody. Save the report and the drill before, if you want them.',
  },
} as const;

/** Only who opened a class has this among what is kept. */
export function isTeachers(kept: readonly PersonalDataEntry[]): boolean {
  return kept.some(({ what }) => what === 'opened the class');
}

/** `14:05: passed, step first-right, tiles bam-1 bam-3 bam-7, blind 0, by owner`. */
export function entryText({ at, what, ...more }: PersonalDataEntry): string {
  const said = Object.entries(more).flatMap(([name, value]) => {
    if (Array.isArray(value)) return [`${name} ${value.join(' ')}`];
    return typeof value === 'object' ? [] : [`${name} ${value}`];
  });
  return `${new Date(at).toLocaleString()}: ${[what, ...said].join(', ')}`;
}
