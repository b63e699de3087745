// What the teacher's dashboard says: joining, controls, players, and the big screen.
import type { DashboardPlayer, Step } from '../../../shared-engine/index.ts';
import { playerCount, stepInSentence } from '../model/strings.ts';

export const DASHBOARD = {
  code: 'Code of this class',
  codeAbout: 'Players type it on the front page, open the link, or scan the square code.',
  controls: 'Controls',
  start: (number: number) => `Start deal ${number}`,
  startSure: (number: number) => `Yes, start deal ${number}`,
  startNot: 'No, wait',
  stillPlaying: (count: number) =>
    `${playerCount(count)} ${count === 1 ? 'has' : 'have'} not finished this deal. Who has not gets the next one after it.`,
  noMore: 'This is the last deal.',
  notStarted: (of: number) => `Not started. The drill has ${of === 1 ? '1 deal' : `${of} deals`}.`,
  hold: 'Stop before a step',
  noHold: 'Do not stop',
  advance: 'Continue without stopping',
  advanceTo: (step: Step) => `Continue; stop before ${stepInSentence(step)}`,
  waiting: (count: number, step: Step) =>
    `${playerCount(count)} ${count === 1 ? 'is' : 'are'} waiting before ${stepInSentence(step)}.`,
  time: '30 more seconds for all',
  timeFor: (name: string) => `30 more seconds for ${name}`,
  players: 'Players',
  nobody: 'Nobody has joined yet.',
  name: 'Name',
  place: 'Where and what',
  more: 'More',
  moreFor: (name: string) => `More for ${name}`,
  clock: 'Time in this step',
  rack: 'Rack',
  help: 'Help',
  bot: 'Let a bot play',
  back: 'Give the seat back',
  botFor: (name: string) => `Let a bot play for ${name}`,
  backTo: (name: string) => `Give the seat back to ${name}`,
  left: 'left',
  remove: (name: string) => `Remove ${name}`,
  removeSure: 'Yes, remove',
  removeNot: 'No',
  removeAbout:
    'A bot plays on at the seat, and this player cannot come back. Close joining if somebody keeps returning.',
  joiningClosed: 'Nobody new can join.',
  closeJoining: 'Let nobody new in',
  openJoining: 'Let players join',
  takeHome: 'Players may play the deals again at home',
  takeHomeAbout:
    'Each deal when everybody has finished it, or when the class has ended. A deal that has reached a player’s device stays there.',
  report: 'Class report',
  saveDrill: 'Save the drill as a file',
  end: 'End the class',
  endSure: 'Yes, end it for everybody',
  endNot: 'No, keep the class open',
} as const;

export const PLACES = {
  nameOf: (name: string) => `Name of ${name}`,
  rename: 'Rename',
  placeOf: (name: string) => `Table and seat of ${name}`,
  seat: 'Seat there',
  at: (table: number, seat: number) => `table ${table}, seat ${seat + 1}`,
  option: (table: number, seat: number, isNew: boolean, who: string | null) =>
    `${isNew ? 'A new table' : `Table ${table}`}, seat ${seat + 1}${who === null ? '' : ` (${who})`}`,
} as const;

export const PRESENTATION = {
  title: 'Discuss a step',
  about: 'The big screen shows the rack first, then the choices when you reveal them. It never shows a name.',
  open: 'Open the big screen',
  step: 'Step',
  show: 'Show on the big screen',
  reveal: 'Reveal the choices',
  hide: 'Hide the choices',
  clear: 'Clear the big screen',
  nothing: 'The big screen shows how to join.',
  mirror: 'On the big screen now',
} as const;

export function placeText({ at, deal }: DashboardPlayer): string {
  switch (at) {
    case 'waiting':
      return 'before the first deal';
    case 'after-vote':
      return `deal ${deal}, after the vote`;
    case 'closed':
      return `deal ${deal}, finished`;
    default:
      return `deal ${deal}, ${stepInSentence(at)}`;
  }
}

/** What a player does at a place that is no step; nothing that would tell the vote. */
const USUAL: Partial<Record<DashboardPlayer['at'], string>> = {
  waiting: 'waiting',
  'after-vote': 'playing',
  closed: 'reading the review',
};

export function statusText({ at, submitted, held, present, standIn, ready }: DashboardPlayer): string {
  const usual = USUAL[at] ?? 'choosing';
  const now = ready ? 'ready for the next deal' : submitted ? 'has chosen' : held ? 'stopped' : usual;
  return [now, standIn ? 'a bot plays' : null, present ? null : 'away'].filter(Boolean).join(', ');
}

/** Milliseconds as `1:05`. */
export function clockText(ms: number): string {
  const seconds = Math.max(0, Math.floor(ms / 1000));
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;
}
