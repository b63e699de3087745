// What the page says to somebody who practices with real tiles.
import type { PendingDecision, Seat } from '../../../shared-engine/index.ts';

/** Whoever lays in the tiles is seat 0. */
export const OWN_SEAT: Seat = 0;

const PLACES: Readonly<Record<Seat, string>> = { 0: 'You', 1: 'Right', 2: 'Across', 3: 'Left' };

export function placeName(seat: Seat): string {
  return PLACES[seat];
}

export const OWN_TILES = {
  title: 'Practice with real tiles',
  about:
    'Deal real tiles on your table and tap them in here. Choose what to pass, say what came, and see how good each choice was. Nothing leaves this device.',
  east: 'Who is East?',
  eastIsMe: 'I am',
  rack: 'Your rack',
  begin: 'This is my rack',
  ways: 'How your table plays',
  second: 'A second Charleston',
  secondWays: { 'by-vote': 'if all four want it', always: 'always', none: 'never' },
  blind: 'Tiles may be passed on blind',
  courtesy: 'There is a courtesy pass',
  arrived: (from: string) => `What came from the ${from}?`,
  arrivedDone: 'That is what came',
  othersBlind: 'Did somebody else pass blind?',
  stopped: 'Who else voted to stop?',
  nobodyStopped: 'Tick nobody where all three want to go on.',
  asked: (across: string) => `How many did the seat ${across} ask for?`,
  askedOthers: 'How many did the two others ask for?',
  goOn: 'Go on',
  back: 'Take the last step back',
  again: 'Lay in another rack',
  /** What the table is called among the rounds of the past. */
  table: 'Real tiles',
  kept: 'This exchange is in your rounds now.',
  review: 'Open its review',
  rounds: 'My rounds',
  drill: 'Save as a drill for a class',
  drillAbout: 'Everybody then holds your rack and gets what you got, whatever they pass.',
  drillTitle: 'A rack from the table',
  lesson: 'Write a lesson about it',
  lessonAbout: 'Your choices stand in it already; add your words at each step.',
  judged: 'How good it was',
  judgedBefore: 'How good it would be',
  over: 'The exchange is over',
  steps: 'Your choices',
  final: 'Your rack now',
} as const;

/** What the open step asks. */
export function asks({ kind }: PendingDecision): string {
  switch (kind) {
    case 'pass':
      return 'Tap the tiles that you pass.';
    case 'vote':
      return 'How do you vote?';
    case 'ask':
      return 'How many tiles do you ask of the seat across?';
  }
}
