// What the page says where a lesson is played along, and on its handout.

export const LESSON = {
  opening: 'Opening the lesson…',
  title: 'A lesson to play along',
  none: 'Open the link that your teacher sent, or the lesson as a file.',
  cannot: 'This lesson cannot be opened:',
  cannotPlay: 'This lesson cannot be played. Tell whoever made it what is wrong:',
  file: 'Open a lesson file',
  foreign: 'This is no lesson link of Quadrille. Ask for the link again, or for the lesson as a file.',
  torn: 'Part of this lesson link is missing. Copy it again from where it came, from its first letter to its last.',
  later:
    'This lesson link was made by a newer Quadrille. Reload this page to get it, and open the link again.',
  about: (card: string) =>
    `At each step choose first. Then you see what your teacher would choose, and the lesson goes on from there. Card: ${card}. Nothing that you choose leaves this device.`,
  /** Empty for the only deal of a lesson, where it has no title. */
  deal: (number: number, of: number, title: string | null) =>
    [of > 1 ? `Deal ${number} of ${of}` : null, title].filter((part) => part !== null).join(': '),
  moment: (number: number, of: number) => `Step ${number} of ${of}`,
  arrived: 'What came',
  scripted: 'set by your teacher',
  rack: 'Your rack',
  you: 'You chose',
  teacher: 'Your teacher',
  teachersPass: 'Your teacher’s pass',
  same: 'You chose as your teacher does.',
  judgeOfYou: 'The judge on your choice',
  judgeOfTeacher: 'The judge on your teacher’s choice',
  howGood: 'How good it was',
  asIfYours: 'The judge speaks of it as if the choice had been yours.',
  scale: 'All choices on one scale',
  differ:
    'Here your teacher and the judge differ. The judge plays a choice on many times with this card; your teacher may be looking at something else. Both stand.',
  goOn: 'Go on from your teacher’s choice',
  goOnWords: 'Go on',
  dealOver: 'This deal is over.',
  nextDeal: 'Next deal',
  again: 'Play the lesson again',
  /** The player before may have been somebody else at the same computer. */
  resumed: 'This lesson goes on where it was left in this tab.',
  over: 'The lesson is over.',
  card: 'Card',
  print: 'Print the handout',
  east: 'You are East.',
  yours: 'Your choice:',
} as const;

/** What is asked for above the rack, where no tiles are. */
export function asksFor(kind: 'vote' | 'ask'): string {
  return kind === 'vote'
    ? 'Would you go on to a second Charleston?'
    : 'How many tiles would you ask of the seat across?';
}

/** Null where the teacher has chosen nowhere. */
export function agreedWords({ same, of }: { readonly same: number; readonly of: number }): string | null {
  return of === 0 ? null : `You chose as your teacher does at ${same} of ${of} steps.`;
}
