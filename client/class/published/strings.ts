// What the page says about a published drill: to its players, and to its teacher.
import { PUBLISHED_LIMITS, type PublishedDrill, type PublishedTerms } from '../../../shared-engine/index.ts';
import type { PlayedRound } from '../../storage/published.ts';
import { dayText } from '../model/strings.ts';

export const DRILL = {
  opening: 'Opening the drill…',
  gone: 'There is no drill at this link.',
  goneAbout: 'Check the link with your teacher.',
  about:
    'Play each deal alone with three bots, whenever you like. Everybody gets the same tiles. The first time you play a deal counts; after that it is practice.',
  until: (time: number) => `Open until ${dayText(time - 1)}.`,
  over: 'The last day of this drill is over. What you played stays on this device.',
  withdrawn: 'Your teacher has taken this drill back.',
  offline: 'No connection. You can play; your rounds are sent when you’re back.',
  tryAgain: 'Try again',
  notStored:
    'This browser lets the page keep nothing. Stay on this page with a connection until your round is sent.',
  told: {
    counts:
      'Nobody learns what you chose. When ten players have played a deal, and with each five more, your teacher and the others see numbers, each of three players or more.',
    attack: 'This does not hold against a teacher who plays as several players.',
    names:
      'Your teacher sees your name and which deals you have played. Your teacher and whoever has the link see each choice and question, without a name, as soon as it comes: in a small group that may give away whose it is.',
    device:
      'The whole deal is on this device so that you can play without a connection; whoever looks for hidden tiles there can find them.',
    twice: 'Two people who share a device count as one, and one with two devices as two.',
    kept: (days: number) => `What you send is stored for ${days} days after the last event of this drill.`,
  },
  deals: 'Deals',
  play: 'Play',
  goOn: 'Go on',
  send: 'Send it',
  again: 'Play again for practice',
  deal: (number: number, title: string | null) => (title ? `Deal ${number}: ${title}` : `Deal ${number}`),
  practice: 'For practice: this round does not count.',
  all: 'All deals',
  compare: 'How others chose',
  compareAndTeacher: 'What your teacher says, and how others chose',
  teacher: 'Your teacher',
  notVisible: 'Something in this question cannot be seen. Type it anew.',
  emptied: 'A question that you empty is not sent.',
  notAsked: 'Your questions could not be stored; ask your teacher.',
  youFirst: 'After your choice you see how others chose here.',
  noneYet: 'No choices of others have come yet.',
  notYet: 'You will see how others chose when at least ten players have played this deal.',
  nothing: 'Too few chose alike here to show anything.',
  nothingAnywhere: 'Too few chose alike in this deal to show anything.',
  tooFewPlayed: 'Too few players have played this deal to show how they chose.',
  through: (count: number) =>
    count === 1 ? '1 player has played this deal.' : `${count} players have played this deal.`,
  ask: 'Leave a question',
  askAbout: 'Your teacher gets it without your name.',
  question: (step: string) => `Your question at ${step}`,
  leave: 'Leave this question',
  fits: (letters: number) => `${letters} of ${PUBLISHED_LIMITS.letters} characters.`,
  full: 'No more fits.',
  left: (count: number) => (count === 1 ? 'You left 1 question.' : `You left ${count} questions.`),
  most: `Three questions of at most ${PUBLISHED_LIMITS.letters} characters go with a round.`,
} as const;

const STATES: Readonly<Record<PlayedRound['state'], string>> = {
  playing: 'Begun',
  waiting: 'Played, waits to be sent',
  counted: 'Played and counted',
  practice: 'Played; another round of yours counts',
  rejected: 'Not counted',
};

/** Of a round that was not sent while the drill was open. */
const LATE: Readonly<Record<'over' | 'withdrawn', string>> = {
  over: 'Played too late to be counted; it is sent when you open this page after your teacher has opened the drill again',
  withdrawn: 'Played, but not sent before your teacher took the drill back',
};

export function roundWords(
  round: PlayedRound | undefined,
  { counted, state }: { readonly counted: boolean; readonly state: PublishedDrill['state'] },
): string {
  if (round === undefined) {
    return counted ? STATES.counted : state === 'withdrawn' ? 'Not played' : 'Not played yet';
  }
  if (round.state === 'waiting' && state !== 'open') return LATE[state];
  if (round.message === null) return STATES[round.state];
  const isJudged = round.state === 'counted' || round.state === 'practice';
  return isJudged ? `${STATES[round.state]}. ${round.message}` : round.message;
}

/** What the button of a deal does; a round that was rejected is not gone on with. */
export function playWords(round: PlayedRound | undefined, isOver: boolean): string {
  if (isOver) return DRILL.again;
  return round?.state === 'playing' ? DRILL.goOn : DRILL.play;
}

/** What players are told before they play; of a drill that nobody can play any more, only how long it is stored. */
export function promises(
  { names }: PublishedTerms,
  { keptDays, state }: Pick<PublishedDrill, 'keptDays' | 'state'>,
): readonly string[] {
  const { counts, attack, device, twice, kept } = DRILL.told;
  if (state === 'withdrawn') return [kept(keptDays)];
  const shown = names ? [DRILL.told.names] : [counts, attack];
  return [...shown, device, twice, kept(keptDays)];
}

/** How many are through, where fewer than ten are. */
const UNTOLD = {
  open: 'told when ten players have played it',
  withdrawn: 'fewer than ten players have played it',
} as const;

export const TEACHER = {
  link: 'Link for your players',
  linkCopied: 'Copied.',
  open: (time: number) => `Open until ${dayText(time - 1)}.`,
  states: {
    over: 'The last day is over. Choose another day to open it again.',
    withdrawn: 'You have taken this drill back; nobody can play it any more.',
  },
  howLong: 'How long it is open',
  lastDay: 'Last day',
  setDay: 'Set this last day',
  withdraw: 'Take the drill back',
  withdrawYes: 'Yes, take it back',
  withdrawNot: 'No',
  withdrawAbout: 'Nobody can play it any more, and it cannot be opened again. The report stays.',
  message: 'Text for a message',
  messageText: (title: string, time: number, link: string) =>
    `Please play “${title}” by ${dayText(time - 1)}, alone, whenever you like. You need no account: ${link}`,
  who: 'Who is through',
  through: (count: number | null, isWithdrawn: boolean) =>
    count === null ? UNTOLD[isWithdrawn ? 'withdrawn' : 'open'] : `${count} players have played it`,
  nobodyYet: 'nobody yet',
  nobody: 'nobody',
  divided: 'Talk about these',
  dividedAbout: 'The steps at which your players are most divided.',
  dividedNone: { yet: 'Nothing to show yet.', withdrawn: 'Nothing to show.' },
  split: (players: number, often: number) =>
    `${players} players; two of them chose differently ${often} times in 10`,
  make: 'Make a class of these deals for the big screen',
  notStored: 'This browser does not let the page keep drills. Nothing was made.',
  questions: 'Questions',
  noQuestions: {
    names: 'None yet.',
    counts: 'None yet. Questions come out together with the numbers of their deal.',
    withdrawn: 'None.',
  },
  report: 'Report',
  keys: 'Other computers',
  keysAbout: 'A key opens this page at another computer. Whoever has it can do all that you can.',
  kept: (days: number) => `Stored for ${days} days after the last event.`,
  again: 'Look again',
} as const;

export const PUBLISH = {
  title: 'Or publish it',
  about:
    'Your players get a link and play alone, whenever they like, until the last day. You need no evening for it. Time limits and the teacher’s view of racks do not apply.',
  lastDay: 'Last day',
  compare: 'Players see how others chose',
  times: { 'at-once': 'after each choice', 'at-end': 'when the deal is over' },
  names: 'Players give their name',
  namesAbout: {
    on: 'You see who has played. You and your players see every choice, without names, as soon as it comes.',
    off: 'You see numbers when ten players have played a deal, and with each five more.',
  },
  mayPublish: (name: string) =>
    `Whoever opens the link gets all of ${name}. If you typed it from a printed card, that card is somebody’s work: publish it only if its owner lets you. A card of your own making is yours to publish.`,
  may: 'I may publish this card',
  sayMay: (name: string) =>
    `Tick that you may publish ${name}, or choose the house card above for this drill.`,
  publish: 'Publish the drill',
  mine: 'Published drills',
} as const;
