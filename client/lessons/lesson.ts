// The Charleston explained on an example while it is played: its deal, and what to look at before each choice.
import {
  bagOf,
  countOf,
  FACES,
  type Face,
  neighbor,
  type SeatView,
  STANDARD_TERMS,
} from '../../shared-engine/index.ts';
import type { SharedDeal } from '../app/routes/deal-link.ts';
import type { Seated } from '../room/room.ts';
import type { Screen } from '../room/screen.ts';
import { nameOf } from '../room/seat-names.ts';
import { capitalize, sentenceList, tileList, tileName } from '../tiles/tile-names.ts';

export const LESSON = {
  title: 'An example',
  label: 'How to play',
  finish: 'Play a deal of your own',
} as const;

/** Two pairs, a joker and a flower, and a first pass that brings a partner for the west wind. */
export const LESSON_DEAL: SharedDeal = {
  deal: { seed: '73'.padStart(64, '0'), dealer: 0 },
  seat: 0,
  cardOf: null,
  ways: STANDARD_TERMS.alone,
};

/** Sentences for the screen that is due, or none. */
export function lessonSentences(screen: Screen): readonly string[] {
  if (screen.kind === 'closed') {
    return [
      'That was the whole Charleston. Below, you see every choice again: what it kept and what it gave away.',
      'Only you see your review, even at a table with friends.',
    ];
  }
  return screen.kind === 'playing' ? stepSentences(screen.seated) : [];
}

function stepSentences({ view, table, you }: Seated): readonly string[] {
  const { stage } = view;
  const left = nameOf(table, neighbor(you, 'left'));
  const across = nameOf(table, neighbor(you, 'across'));
  switch (stage.phase) {
    case 'passing':
      switch (stage.step) {
        case 'first-right':
          return [
            `You are East and hold ${view.rack.length} tiles, one more than the others. Keep what goes together: ${groupList(view.rack)}.`,
            'Tap three tiles that go with nothing. Then pass them to the right. A joker may not be passed.',
          ];
        case 'first-across':
          return [
            `The tiles with a tab at the bottom have just come from ${left}. ${formedSentence(view)}`,
            'Now three tiles across. Pairs and like numbers are risky to pass.',
          ];
        case 'first-left':
          return [
            'The third pass may be blind. Can you still spare three tiles? Then pass them as before.',
            'If not, choose below the tray how many arriving tiles you pass without looking. You keep as many of your own.',
          ];
        case 'second-left':
          return [
            'All four continue, so there is a second Charleston in the other direction: left, across, right.',
            `You now hold ${groupList(view.rack)}. Does one section of hands use most of your tiles? “Card” shows what your rack is near to.`,
          ];
        case 'second-across':
          return [
            'Across again. Pass tiles that do not go together: tiles of one suit help others more than single ones.',
          ];
        case 'second-right':
          return ['The last of the three. Again it may be blind.'];
      }
      return [];
    case 'voting':
      return [
        'Each player answers in secret. If one player stops, there is no second Charleston.',
        'Stop when nearly every tile you hold belongs to the hand you want. If not, three more passes usually help.',
      ];
    case 'asking':
      return [
        `Last comes the courtesy: you may swap with ${across}, who sits across from you. Ask for as many tiles as you can spare.`,
      ];
    case 'giving':
      return [`You both named a number, and the smaller one counts. These are the last tiles you pass.`];
    case 'closed':
      return [];
  }
}

/** `2 of 6 bam and 2 of 3 crak`, the joker and the flowers named apart. */
function groupList(rack: readonly Face[]): string {
  const bag = bagOf(rack);
  const groups = FACES.filter((face) => face !== 'joker' && face !== 'flower' && countOf(bag, face) > 1);
  const named = groups.map((face) => `${GROUP_NAMES[Math.min(countOf(bag, face), 4)]} of ${tileName(face)}`);
  const apart = (['flower', 'joker'] as const).filter((face) => countOf(bag, face) > 0);
  return sentenceList([...named, ...apart.map((face) => `the ${face}${countOf(bag, face) > 1 ? 's' : ''}`)]);
}

const GROUP_NAMES = ['', '', 'a pair', 'a pung', 'a kong'] as const;

/** What the tiles that came last have made larger. */
function formedSentence(view: SeatView): string {
  const last = view.record.steps.at(-1);
  if (last?.kind !== 'move') return '';
  const bag = bagOf(view.rack);
  const partners = [...new Set(last.received)].filter((face) => face !== 'joker' && countOf(bag, face) > 1);
  return partners.length > 0
    ? `${capitalize(tileList(partners))} found a partner. When you make a pair, look at your whole rack again.`
    : 'None of them found a partner on your rack.';
}
