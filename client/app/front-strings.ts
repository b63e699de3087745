// What the front page says, and what stands in for a part of the page that is still on its way.

export const FRONT = {
  promise: 'Practice the Charleston. Then read, in private, what each pass kept and what it gave away.',
  guest: 'Guest',
  alone: {
    title: 'Practice alone',
    about: 'Three bots are waiting. The tiles are on your rack at once.',
    button: 'Deal me in',
  },
  friends: {
    title: 'With friends',
    about: 'Open a table and send the link. Or let each play the same tiles with three bots, and compare.',
    button: 'Open a table',
    same: 'The same deal for each',
  },
  group: {
    title: 'Lead a group',
    about: 'The same tiles for everyone, the choices side by side, time to talk.',
    button: 'Prepare a class',
  },
  lesson: 'New to it? Learn it in two minutes',
  offline: 'Play alone, without the server',
  settings: 'How your tables are set up',
  cardChosen: (name: string) => `${name} will be used for the next table you open.`,
} as const;

/** Quiet ways on, under the three doors. */
export const PRACTICE_LINKS = {
  title: 'Practice',
  day: 'Deal of the day',
  racks: 'Ten racks',
  exercises: 'Ten minutes today',
  rounds: 'My rounds',
  ownTiles: 'Practice with real tiles',
  myCards: 'My cards',
  teaching: 'My classes and drills',
  playsWith: (name: string) => `Your new tables play with ${name}.`,
} as const;

export const WERE = {
  title: 'Where you were',
  left: 'You have left the table for now. Your seat is kept.',
  back: (place: string) => `Back to ${place}`,
  recent: 'Before that:',
  table: (code: string) => `table ${code}`,
  deal: 'your deal in this page',
  day: 'the deal of the day',
} as const;

export const MISSING = {
  title: 'Nothing here',
  about: 'This address leads nowhere. Check the link, or type the code that came with it.',
  dealTitle: 'This deal link is not whole',
  dealAbout: 'Part of it is missing. Copy it again from where it came, from its first letter to its last.',
} as const;

export const TERMS = {
  style: 'The bots when you practice alone',
  ways: { alone: 'How you play alone', friends: 'How you play with friends' },
} as const;

export const LAZY = {
  loading: 'Opening…',
  failed: 'This part of the page cannot be fetched just now. Check your connection.',
  again: 'Try again',
} as const;
