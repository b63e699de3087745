// What the front page says.

export const FRONT = {
  promise: 'Practise the Charleston. Then read, in private, what each pass kept and what it gave away.',
  nameless: 'Guest',
  nameQuestion: 'Your name at the table',
  nameMissing: 'Your friends need a name to call you by; type one here.',
  alone: {
    title: 'Practise alone',
    about: 'Three bots are waiting. The tiles are on your rack at once.',
    button: 'Deal me in',
  },
  friends: {
    title: 'With friends',
    about: 'Open a table and send the link. Bots take the seats nobody wants.',
    button: 'Open a table',
  },
  group: {
    title: 'Lead a group',
    about: 'The same tiles for everyone, the choices side by side, time to talk.',
    button: 'Prepare a class',
  },
  lesson: 'New to it? The exchange in two minutes, on an example you play',
  codeQuestion: 'Somebody gave you a code?',
  codeButton: 'Go to that table',
  codeMissing: 'Type the eight letters of the code first.',
  settings: 'How the tables you open are set up',
  style: 'The bots when you practise alone',
  deadline: 'Time for each step',
  deadlineOff: 'As long as you like',
  layOpen: 'Lay all four racks open after the close',
  layOpenAbout: 'Everybody at the table is told before the deal.',
  card: 'A card file of your own',
  cardHouse: 'The house card is used.',
  cardUnreadable: 'That file is not a card: it could not be read as JSON.',
} as const;

export function seconds(count: number): string {
  return count < 120 ? `${count} seconds` : `${count / 60} minutes`;
}

export function cardChosen(name: string): string {
  return `${name} will be used for the next table you open.`;
}
