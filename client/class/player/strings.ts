// What a player of a class reads before the first deal and above the own table.
import type { ClassTerms } from '../../../shared-engine/index.ts';

export const JOIN = {
  title: (drill: string) => `Join “${drill}”`,
  about: {
    alone:
      'Your teacher starts each deal. You play at your own table with three bots. Only you see your review.',
    tables: 'Your teacher starts each deal. Up to four players share a table. Only you see your review.',
    guided:
      'Your teacher starts each deal. After each step your teacher picks one choice, and everybody continues from it. Your review covers your own choices, and only you see it.',
  },
  button: 'Join the class',
  racks: {
    true: 'Your teacher can see your rack while you choose.',
    false: 'Your teacher cannot see your rack.',
  },
  names: {
    true: 'Your teacher’s report names you, with your tiles to go and what your choices cost in total.',
    false: 'Your teacher’s report names nobody, and leaves out a choice that would show who made it.',
  },
  cardClosed: 'You choose without seeing the card.',
  over: 'This class has ended; nobody can join it now.',
  closed: 'Your teacher lets nobody new in just now. Reload this page when they do.',
} as const;

/** What the teacher will see of a player, one sentence each. */
export function termsSentences({ racks, names, cardClosed }: ClassTerms): readonly string[] {
  const told = [JOIN.racks[racks ? 'true' : 'false'], JOIN.names[names ? 'true' : 'false']];
  return cardClosed ? [...told, JOIN.cardClosed] : told;
}

export const PLAYER = {
  deal: 'This deal',
  held: 'Your teacher has stopped the tables here. Look up and discuss; play continues soon.',
  standIn: 'Your teacher let a bot play for you. Tell your teacher when you are back.',
} as const;
