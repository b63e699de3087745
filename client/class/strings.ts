// What the desk, the wall, the report and a player's way in say.
import type { ClassTerms, DashboardPlayer, Step, StepSpread } from '../../shared-engine/index.ts';
import { STEP_NAMES } from '../room/step-names.ts';

export const PREPARE = {
  title: 'Prepare a class',
  about:
    'Everybody in the class is dealt the same tiles. You hold the tables, show what was chosen, and talk.',
  drillTitle: 'What is this drill called?',
  untitled: 'A drill',
  deals: 'The deals',
  deal: 'Deal',
  random: 'By chance',
  composed: 'Set by hand',
  described: 'Described',
  addRandom: 'Add a deal by chance',
  addComposed: 'Add a deal set by hand',
  addDescribed: 'Add a described deal',
  remove: 'Take this deal out',
  dealTitle: 'Title of the deal, for the wall',
  texts: 'Words that go with this deal',
  task: 'What the players read above their tiles',
  note: 'A note for yourself, shown on your desk alone',
  dealer: 'The players are East and begin with 14 tiles',
  form: 'How the class sits',
  forms: {
    alone: {
      name: 'Everybody alone, with the same three bots.',
      about: 'Equal choices have equal consequences.',
    },
    tables: {
      name: 'Four players at each table.',
      about: 'The same deal at every table; bots take the places nobody has.',
    },
    guided: {
      name: 'Everybody alone, in one line of play.',
      about:
        'After each step all go on from the choice you pick, with the same tiles again; each player’s own choice is kept and judged.',
    },
  },
  bots: 'How the bots play',
  deadline: 'Time for each step',
  noDeadline: 'As long as they like',
  racks: 'You see the players’ racks while they choose',
  names: 'Your report has a line for each player by name, and shows what one player alone chose',
  cardChosen: (name: string) => `${name} will be used for this class.`,
  cardClosed: 'Nobody has the card beside the rack while choosing',
  told: 'All of this is told to every player before the first deal.',
  open: 'Open the class',
  save: 'Save the drill as a file',
  load: 'Use a drill file',
  unreadable: 'That file could not be read as JSON; nothing was changed.',
  problems: 'This has to be put right first:',
  otherCard: 'That card cannot be used; the house card is.',
  otherFile: 'Nothing was changed: that file cannot be used as it is.',
  pick: 'Tap tiles to set them; the rest of the rack is dealt by chance.',
  rack: 'Set so far',
  nothing: 'Nothing is set yet.',
  takeOut: (tile: string) => `Take ${tile} out`,
  wish: 'What the rack should be like; what you leave open may be anything.',
  any: 'any',
  atLeast: 'at least',
  exactly: 'exactly',
  atMost: 'at most',
  family: 'Nearest family',
} as const;

export const WISHES = {
  jokers: 'Jokers',
  flowers: 'Flowers',
  pairs: 'Pairs or more',
  inARow: 'In a row in one suit',
  likeNumbers: 'Like numbers',
  toGo: 'Tiles to go',
} as const;

export const JOIN = {
  title: (drill: string) => `Come in: ${drill}`,
  about: {
    alone:
      'Your teacher leads the deals. You play at a table of your own; your review is for your eyes only.',
    tables:
      'Your teacher leads the deals. Up to four of you share a table; your review is for your eyes only.',
    guided:
      'Your teacher leads the deals. You choose at a table of your own, and after each step all go on from one choice that your teacher picks. Your review judges your own choices and is for your eyes only.',
  },
  button: 'Join the class',
  racks: {
    true: 'Your teacher can see your rack while you choose.',
    false: 'Your teacher cannot see your rack.',
  },
  names: {
    true: 'Your teacher’s report has a line with your name: tiles to go, and what your choices cost in all.',
    false: 'Your teacher’s report names nobody, and leaves out what one player alone chose.',
  },
  cardClosed: 'You play without the card: it is not shown while you choose.',
  gone: 'There is no class with that code.',
  goneAbout: 'Check the eight letters with your teacher.',
  over: 'This class has ended. What you played is still here to read.',
} as const;

export function termsWords({ racks, names, cardClosed }: ClassTerms): readonly string[] {
  const told = [JOIN.racks[racks ? 'true' : 'false'], JOIN.names[names ? 'true' : 'false']];
  return cardClosed ? [...told, JOIN.cardClosed] : told;
}

export const PLAYER = {
  deal: 'This deal',
  held: 'Your teacher holds the tables here. Look up and talk; it goes on in a moment.',
  standIn: 'Your teacher let a bot play on for you. Say so if you are back.',
} as const;

export const DESK = {
  code: 'The code of this class',
  codeAbout: 'Players type it on the front page, open the link or scan the squares.',
  copy: 'Copy the link',
  first: 'Deal the first deal',
  next: 'Deal the next one',
  noMore: 'That was the last deal.',
  dealNumber: (number: number, of: number) => `Deal ${number} of ${of}`,
  notDealt: (of: number) => `Nothing is dealt yet; the drill has ${of === 1 ? '1 deal' : `${of} deals`}.`,
  lead: 'Lead the class',
  hold: 'Hold before a step',
  noHold: 'No hold',
  goOn: 'Let them go on',
  goOnTo: (step: string) => `Let them go on, to ${step}`,
  waitThere: (count: number, step: string) =>
    count === 1 ? `1 player waits before ${step}.` : `${count} players wait before ${step}.`,
  time: '30 seconds more for all',
  timeFor: (name: string) => `30 seconds more for ${name}`,
  players: 'The players',
  nobody: 'Nobody has joined yet.',
  name: 'Name',
  step: 'Where',
  state: 'Doing',
  clock: 'In this step',
  rack: 'Rack',
  help: 'Help',
  bot: 'Let a bot play on',
  back: 'Give the seat back',
  botFor: (name: string) => `Let a bot play on for ${name}`,
  backTo: (name: string) => `Give the seat back to ${name}`,
  talk: 'Talk about a step',
  talkAbout: 'The wall shows the rack first, and the choices once you reveal them. No name is ever on it.',
  wall: 'Open the wall page',
  which: 'Step',
  put: 'Put it on the wall',
  reveal: 'Reveal the choices',
  hide: 'Hide the choices again',
  clear: 'Clear the wall',
  report: 'Report of this class',
  end: 'End the class',
  endSure: 'Yes, end it for everybody',
  endNot: 'No, go on with the class',
  ended: 'The class has ended.',
  notYours: 'This desk belongs to the browser that opened the class.',
  left: 'left',
} as const;

export function whereIs({ at, deal }: DashboardPlayer): string {
  switch (at) {
    case 'waiting':
      return 'before the first deal';
    case 'closed':
      return `deal ${deal}, closed`;
    default:
      return `deal ${deal}, ${STEP_NAMES[at].toLowerCase()}`;
  }
}

export function isDoing({ at, submitted, held, present, standIn, ready }: DashboardPlayer): string {
  const doing = at === 'waiting' ? 'waits' : at === 'closed' ? 'reads the review' : 'chooses';
  const now = ready ? 'wants the next deal' : submitted ? 'has chosen' : held ? 'held' : doing;
  return [now, standIn ? 'a bot plays on' : null, present ? null : 'away'].filter(Boolean).join(', ');
}

/** `1:05`. */
export function clockOf(ms: number): string {
  const seconds = Math.max(0, Math.floor(ms / 1000));
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;
}

export const WALL = {
  waiting: 'Nothing is on the wall yet.',
  join: 'Join with the code',
  at: (host: string) => `on the front page of ${host}`,
  rack: 'The rack',
  racksDiffer: 'Not everybody had the same rack here.',
  choices: 'What the class chose',
  chosen: (answered: number, players: number) => `${answered} of ${players} have chosen.`,
  think: 'What would you pass?',
  thinkNumber: 'What would you say?',
  aims: 'Aims that were named',
  nobody: 'Nobody has chosen here yet.',
  stoodIn: (count: number) =>
    count === 1
      ? 'A bot chose for 1 player; that is not counted.'
      : `A bot chose for ${count} players; that is not counted.`,
  cost: 'Behind the best found',
  none: 'nothing better was found',
  unknown: 'not judged yet',
  unseen: 'three tiles unseen',
  unshown: (players: number) =>
    `What ${players === 1 ? '1 player' : `${players} players`} chose is not shown, so that nobody is told from the others.`,
  others: (choices: number, players: number) =>
    `${choices} more choices, by ${players === 1 ? '1 player' : `${players} players`}.`,
} as const;

export function stepName({ kind, step }: Pick<StepSpread, 'kind' | 'step'>): string {
  const name = kind === 'vote' ? 'Go on or stop' : kind === 'ask' ? 'Courtesy number' : stepTitle(step);
  return kind === 'blind' ? `${name}, how many unseen` : name;
}

export function stepTitle(step: Step): string {
  return STEP_NAMES[step];
}

export function percent(share: number): string {
  return `${Math.round(share * 100)} %`;
}

export const REPORT = {
  title: (drill: string) => `Report: ${drill}`,
  private:
    'No choice says whose it was. What each player held and passed is in that player’s own review alone.',
  working: 'The report is being worked out…',
  nothing: 'Nothing has been dealt yet.',
  deal: 'Deal',
  players: (count: number) => (count === 1 ? '1 player' : `${count} players`),
  journey: 'Tiles to go, as dealt and after the last step played',
  steps: 'Step by step',
  themes: 'What cost most',
  theme: 'Theme',
  choices: 'Choices',
  ofPlayers: 'Players',
  total: 'Tiles lost in all',
  noThemes: 'No choice was clearly behind another.',
  choice: 'Choice',
  share: 'Share',
  loss: 'Tiles behind the best',
  byName: 'Player by player',
  byNameAbout: 'Told to every player before the first deal.',
  print: 'Print',
  csv: 'Save as tables (CSV)',
  json: 'Save as JSON',
  drill: 'Back to the desk',
} as const;
