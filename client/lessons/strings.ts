// The exchange explained while it is played: what to look at before each choice of the example.
import { bagOf, countOf, FACES, type Face, neighbour, type SeatView } from '../../shared-engine/index.ts';
import type { Seated } from '../room/room.ts';
import type { Screen } from '../room/screen.ts';
import { capitalize, nameOf } from '../room/seat-names.ts';
import { sentenceList, tileList, tileName } from '../tiles/tile-names.ts';

export const LESSON = {
  title: 'An example',
  label: 'How it goes',
  finish: 'Play a deal of your own',
} as const;

/** Sentences for the screen that is due, or none. */
export function lessonSentences(screen: Screen): readonly string[] {
  if (screen.kind === 'closed') {
    return [
      'That was the whole exchange. Now comes what this page is for: below, every choice you made is looked at again, with what it kept and what it gave away.',
      'Only you see your review, at a table with friends too.',
    ];
  }
  return screen.kind === 'playing' ? stepWords(screen.seated) : [];
}

function stepWords({ view, table, you }: Seated): readonly string[] {
  const { stage } = view;
  const left = nameOf(table, neighbour(you, 'left'));
  const across = nameOf(table, neighbour(you, 'across'));
  switch (stage.phase) {
    case 'passing':
      switch (stage.step) {
        case 'first-right':
          return [
            `You are East and hold ${view.rack.length} tiles, one more than the others. Keep what belongs together: ${groupWords(view.rack)}.`,
            'Tap three tiles that belong to nothing, then pass them to the right. A joker may not be passed.',
          ];
        case 'first-across':
          return [
            `The tiles with a tab at the foot have just come from ${left}. ${formedWords(view)}`,
            'Now three tiles across. Give no pair, and no equal numbers: those are dear gifts.',
          ];
        case 'first-left':
          return [
            'The third pass may be made unseen. Are there three tiles left that you can spare? Then pass them as before.',
            'If not, choose below the tray how many of the arriving tiles go on without a look, and keep as many of your own.',
          ];
        case 'second-left':
          return [
            'All four said go on, so there is a second Charleston, the other way round: left, across, right.',
            `You now hold ${groupWords(view.rack)}. Does one family of hands use most of your tiles? “Card” shows what your rack is near to.`,
          ];
        case 'second-across':
          return [
            'Across again. Break up what you give: neighbours of one suit are worth more to others than single tiles.',
          ];
        case 'second-right':
          return ['The last of the three, and again it may be made unseen.'];
      }
      return [];
    case 'voting':
      return [
        'Each player says in secret whether to go on. One stop ends it.',
        'Say stop when nearly every tile you hold belongs to the hand you want; otherwise three more passes can only help.',
      ];
    case 'asking':
      return [
        `Last of all you may trade with ${across}, who sits opposite. Ask for as many tiles as you can do without.`,
      ];
    case 'giving':
      return [`You both asked; the smaller number holds. These are the last tiles you give.`];
    case 'closed':
      return [];
  }
}

/** `2 of 6 bam and 2 of 3 crak`, the joker and the flowers named apart. */
function groupWords(rack: readonly Face[]): string {
  const bag = bagOf(rack);
  const groups = FACES.filter((face) => face !== 'joker' && face !== 'flower' && countOf(bag, face) > 1);
  const named = groups.map((face) => `${GROUP_NAMES[Math.min(countOf(bag, face), 4)]} of ${tileName(face)}`);
  const apart = (['flower', 'joker'] as const).filter((face) => countOf(bag, face) > 0);
  return sentenceList([...named, ...apart.map((face) => `the ${face}${countOf(bag, face) > 1 ? 's' : ''}`)]);
}

const GROUP_NAMES = ['', '', 'a pair', 'a pung', 'a kong'] as const;

/** What the tiles that came last have made larger. */
function formedWords(view: SeatView): string {
  const last = view.record.steps.at(-1);
  if (last?.kind !== 'move') return '';
  const bag = bagOf(view.rack);
  const partners = [...new Set(last.received)].filter((face) => face !== 'joker' && countOf(bag, face) > 1);
  return partners.length > 0
    ? `${capitalize(tileList(partners))} found a partner: when a pair forms, read your whole rack anew.`
    : 'None of them found a partner on your rack.';
}
