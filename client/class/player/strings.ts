// What a player of a class reads before the first deal and above the own table.
import { type ClassTerms, privacyOf } from '../../../shared-engine/index.ts';

export const FRIENDS = {
  title: 'The same deal for each of you',
  about:
    'Each of you gets the same tiles and plays them with three bots. Nobody leads; play whenever you like.',
  told: [
    'Once you have chosen, you see what the others chose at that step, and they see your choice once they have chosen.',
    'Nobody sees your rack or your review.',
  ],
  button: 'Deal me in',
  compare: 'What the others chose',
  alone: 'Nobody else plays this deal yet. Send your friends the link.',
  notYet: (names: string) => `Here with you: ${names}. After your pass you see what they chose.`,
  waiting: 'Nobody else has come this far yet.',
  otherTiles: 'held other tiles by then',
  blind: (count: number) => `and ${count} blind`,
  go: { true: 'Continue', false: 'Stop' },
  asked: (count: number) => `asked for ${count}`,
  you: 'You',
  /** By the code of the rejection: nobody among friends has heard of a class. */
  lost: {
    'no-such-class':
      'This deal was deleted, or its time was over. Nothing of it is stored on the server any more.',
    'not-seated': 'You do not play this deal any more, so this page shows nothing of what the others choose.',
  },
} as const;

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
  place: {
    open: 'Your teacher sees your name, whether you are connected, and how far you have come.',
    counts:
      'Your teacher sees your name, whether you are connected, and how far you have come, up to the vote; after it only when everybody has finished the deal.',
  },
  racks: {
    seen: 'Your teacher can see your rack while you choose.',
    hidden: 'Your teacher cannot see your rack.',
  },
  report: {
    named:
      'Your teacher’s report names you, with your tiles to go and what your choices cost in total, and shows every choice, even one that only you made.',
    'every-choice':
      'Your teacher’s report names nobody, but shows every choice, even one that only you made.',
    counts:
      'Your teacher cannot find out what you chose. Choices are shown only as numbers of three or more players, and only if six or more were dealt the same rack in the same seat. This holds as long as your teacher has not joined as a player too.',
  },
  cardClosed: 'You choose without seeing the card.',
  coach: {
    true: 'You may ask the coach before you choose.',
    false: 'There is no coach at the table in this class.',
  },
  takeHome:
    'You may play the deals again at home: your device keeps each one when everybody has finished it.',
  kept: (days: number) =>
    `The server deletes this ${days === 1 ? 'one day' : `${days} days`} after its last use. You can delete your name at any time, under “Your data”.`,
  over: 'This class has ended; nobody can join it now.',
  closed: 'Your teacher lets nobody new in just now. Reload this page when they do.',
} as const;

/** What the teacher will see of a player, one sentence each; it is what the server sends, neither more nor less. */
export function termsSentences(terms: ClassTerms): readonly string[] {
  if (terms.amongFriends) return FRIENDS.told;
  const { racks, report } = privacyOf(terms);
  const place = JOIN.place[report === 'counts' ? 'counts' : 'open'];
  const told = [place, JOIN.racks[racks], JOIN.report[report]];
  const coach = JOIN.coach[`${terms.coach === true}`];
  return terms.cardClosed ? [...told, JOIN.cardClosed, coach] : [...told, coach];
}

/** Of a deal of a class that is played again by oneself. */
export const HOME = {
  kept: 'Your device keeps this deal; you can play it again from “My rounds”, whenever you like.',
  again: 'Play this deal again',
  about:
    'A deal of your class, played again by yourself with the same tiles and the same bots. Nobody else learns of it.',
  rounds: 'All my rounds',
  missing: 'This deal is not on this device. Open it from the round that you played in the class.',
} as const;

export const PLAYER = {
  deal: 'This deal',
  held: 'Your teacher has stopped the tables here. Look up and discuss; play continues soon.',
  scripted: 'What comes to you in this deal is set, by your teacher or as it came at a real table.',
  over: 'Your teacher has ended this class. You can finish this deal and read your review.',
  removed: 'Your teacher has taken you out of this class. Ask your teacher if that was a mistake.',
  renamed: (name: string) => `Your teacher calls you ${name} now.`,
  moved: 'Your teacher has put you at another place. Here you sit now.',
  standIn:
    'Your teacher let a bot play for you. You have the seat back as soon as this page is loaded again.',
} as const;
