// What the review says besides its verdicts and the deep analysis.
import type { ChoiceReview, Face, PassReview, Review, RiskGrade, Table } from '../../shared-engine/index.ts';
import type { Route } from '../app/routes/route.ts';
import type { RoomState } from '../room/room.ts';
import { STEP_NAMES } from '../room/step-names.ts';
import { capitalize, sentenceList, tileList } from '../tiles/tile-names.ts';
import { passWith } from './pass-with.ts';

export const REVIEW = {
  title: 'What this deal can teach you',
  private: 'Only you see this page.',
  working: 'Your review is being worked out…',
  strip: 'Your choices, step by step',
  legend: 'What the verdicts mean',
  newAnswer: 'new answer',
  you: 'You',
  best: 'Best',
  both: 'You, and the best',
  passed: 'You passed',
  better: 'Better',
  received: 'Then you got',
  rack: 'Your rack before the pass',
  scale: 'All the passes we compared, on one scale',
  farther: 'farther from a hand',
  closer: 'closer to a hand',
  aim: 'Your aim',
  sections: 'Sections that were close',
  kept: 'Still as close',
  lost: 'Farther away now',
  couldKeep: 'The better pass would have kept',
  none: 'none',
  numbers: 'The numbers',
  choice: 'Choice',
  pass: 'Pass',
  nearness: 'Closeness',
  toGo: 'Tiles away',
  risk: 'Risky to pass',
  method: 'How this was worked out',
  ledger: 'Luck and choices',
  ledgerAbout: 'Our steady player passes what the hands within reach need least and looks at nothing else.',
  ledgerTable:
    'Wins in 100 games before each choice, what your choice brought compared with our steady player’s, and what luck brought after it.',
  ledgerBeside:
    'The verdicts above compare your choice with the best we found, and suppose others a little stronger than club players. So it may cost something there and nothing here, or the other way round.',
  ledgerWins: 'Wins',
  ledgerChoice: 'You, compared with our steady player',
  ledgerAfter: 'Luck',
  blind: (step: string) => `How many blind, ${step.toLowerCase()}`,
  byClass: (change: string) => `${change} (the class went on)`,
  next: 'Next deal',
  nextInClass: 'Ready for the next deal',
  toDeals: 'Back to the list of deals',
  toRounds: 'Back to My rounds',
  finishedHere: 'My rounds has this round once: as you finished it without the server.',
  standIn: 'A bot chose for you while you were away.',
  check: 'Was the deal fixed before the first pass?',
} as const;

/** Above what the numbers of a review rest on, and over its parts. */
export const METHOD_WORDS = {
  compared: 'We compared each choice with others that you could have made.',
  playedOn:
    'We compared each choice with the others that you could have made, and played the round on from there many times.',
  headings: {
    quick: 'The first answer',
    deep: 'Playing the round on',
    ledger: 'Luck and choices',
  },
} as const;

export const HAND_LINE = {
  start: 'At the beginning',
  end: 'At the end',
  /** More than three have nothing to say. */
  toward: (names: readonly string[]) =>
    names.length > 3 ? 'no hand stands out' : `closest: ${names.join(' or ')}`,
} as const;

export const TOOLS = {
  read: 'Read it to me',
  stop: 'Stop reading',
  print: 'Print',
  save: 'Save as text',
  share: 'Share',
} as const;

export const ROUND_WALK = {
  title: 'All four racks, step by step',
  earlier: 'Earlier',
  later: 'Later',
  end: 'At the end',
  place: (at: number, of: number) => `${at} of ${of}`,
  /** `count` tiles in all, `blind` of them from those that arrive. */
  passes: (you: boolean, count: number, blind: number, name: string) => {
    const verb = you ? 'pass' : 'passes';
    if (count === 0) return `${verb} nothing`;
    return blind > 0 ? `${verb} to ${name}, ${blind} of them blind` : `${verb} to ${name}`;
  },
} as const;

export const PLAY_AGAIN = {
  title: 'The same deal again',
  private:
    'Racks stay private at this table, so the deal stays closed: it cannot be played again or sent as a link.',
  about: 'Play the same tiles once more, choose differently, and see both reviews side by side.',
  button: 'Play it again',
  shareButton: 'Copy the deal link',
  shareText: 'What would you have passed? The same tiles, to play against three bots.',
  shareAbout: 'Send it to a friend: they sit where you sat, with the same tiles and three bots.',
  ownCard:
    'You played with a card of your own, which is not in the link: your friend plays the deal with the house card.',
  copied: 'Copied.',
  copyByHand: 'The link cannot be copied here. Play the deal again; then the link is in the address bar.',
  sideBySide: 'Both times side by side',
  first: 'First time',
  now: 'This time',
  step: 'Step',
  end: 'At the end',
} as const;

/**
 * In a class the next deal waits for all; a published drill is a list of deals, played in any order; a deal of a class
 * that was taken home was opened from its round.
 */
export function nextWords(
  home: RoomState['home'],
  { controls }: Pick<Table, 'controls'>,
  route: Route,
): string {
  if (!controls) return REVIEW.next;
  if (home !== 'page') return REVIEW.nextInClass;
  return route.kind === 'home-deal' ? REVIEW.toRounds : REVIEW.toDeals;
}

/** What a choice that has not been played on cost, in tiles. */
export function lossSentence(loss: number): string {
  if (loss < 0.05) return 'No better choice was found.';
  if (loss < 0.2) return 'Almost the same as the best.';
  if (loss < 0.4) return 'About a third of a tile worse, compared with the best.';
  if (loss < 0.65) return 'About half a tile worse, compared with the best.';
  if (loss < 1.5) return 'About one tile worse, compared with the best.';
  return `About ${Math.round(loss)} tiles worse, compared with the best.`;
}

export function riskName(grade: RiskGrade): string {
  return grade === 'none' ? 'no' : grade.replace('-', ' ');
}

export function choiceName(choice: ChoiceReview): string {
  switch (choice.kind) {
    case 'pass':
      return STEP_NAMES[choice.step];
    case 'blind':
      return REVIEW.blind(STEP_NAMES[choice.step]);
    case 'vote':
      return 'Second Charleston';
    case 'ask':
      return STEP_NAMES['courtesy-ask'];
  }
}

/** `+1.2`, `−0.3`, `0.0`. */
export function signed(value: number): string {
  const shown = Math.abs(value).toFixed(1);
  if (shown === '0.0') return shown;
  return value > 0 ? `+${shown}` : `−${shown}`;
}

export function startToEnd({ toGoStart, toGoEnd }: Pick<Review, 'toGoStart' | 'toGoEnd'>): string {
  return `You began ${toGoStart} away from the closest hand on the card and ended ${toGoEnd} away.`;
}

export function scaleDescription(review: PassReview): string {
  return `${review.alternatives.length} of ${review.legal} possible passes on one scale. Yours is number ${review.rank}. ${lossSentence(
    review.loss,
  )}`;
}

/** `3 away`. */
export function away(toGo: number): string {
  return `${toGo} away`;
}

/** One sentence for each section aimed at before this pass, or nothing. */
export function aimSentences(
  aims: readonly string[],
  { sectionsInReach, sectionsInReachAfter }: Pick<PassReview, 'sectionsInReach' | 'sectionsInReachAfter'>,
  sections: Review['sections'],
): readonly string[] {
  // A section that was never near has no name in the review; its id is the same words with dashes.
  const names = (id: string) => sections[id] ?? id.replaceAll('-', ' ');
  return aims.map((id) => {
    const name = capitalize(names(id));
    if (!sectionsInReach.includes(id)) {
      const near =
        sectionsInReach.length > 0 ? ` Within reach: ${sentenceList(sectionsInReach.map(names))}.` : '';
      return `${name} was not within reach.${near}`;
    }
    return sectionsInReachAfter.includes(id)
      ? `${name} was within reach, and your pass kept it there.`
      : `${name} was within reach, and your pass gave it up.`;
  });
}

/** What the coach named, where the chart below has no row for it. */
export function coachedWords({ analysis }: PassReview, named: readonly Face[]): string | null {
  if (analysis.depth === 'quick' || passWith(analysis.finalists, named) !== null) return null;
  return `It named ${tileList(named)}, which we did not compare with your choice.`;
}

/** The button to the choice that the top of the page speaks of. */
export function showStep(step: string): string {
  return `Show what the top speaks of: ${step}`;
}
