// The sentences about a number chosen: tiles passed blind, the vote, tiles asked for by courtesy.
import { choiceVerdict, hadBetter } from '../choice-verdict.ts';
import type { NumberReview, Review } from '../review.ts';
import { insteadPhrase, numberPhrase } from './instead.ts';
import { capitalized, closerBy, VOICES } from './phrases.ts';
import { NO_ONE_REASON, whySentences } from './why.ts';

/** What was chosen. */
export function chosenSentence(choice: NumberReview): string {
  return choice.kind === 'ask'
    ? `Courtesy: ${chosenPhrase(choice)}.`
    : `${capitalized(chosenPhrase(choice))}.`;
}

/** Where the number that is named leads, next to the one chosen. */
export function numberReasons(
  { by, analysis }: NumberReview,
  sections: Review['sections'],
): readonly string[] {
  if (analysis.depth === 'quick' || analysis.why === null) return [];
  const reasons = whySentences(analysis.why, sections, VOICES[by].whose);
  const { others } = analysis;
  // That a vote costs the others is told apart.
  const isTold = others !== null && others.value < -others.halfWidth;
  return reasons.length > 0 || isTold ? reasons : [NO_ONE_REASON];
}

/** On what rack, and what the rule of thumb says. */
export function numberFacts(choice: NumberReview): readonly string[] {
  const { whose } = VOICES[choice.by];
  const rack = `${capitalized(whose)} rack was ${choice.toGo} away`;
  return [`${rack}, with ${passers(choice.spare, `${whose} closest hand`)}.`, ...ruleOfThumb(choice)];
}

function passers(count: number, closest: string): string {
  if (count === 0) return `no passers: ${closest} needs every tile`;
  return `${count === 1 ? '1 passer: a tile' : `${count} passers: tiles`} ${closest} doesn’t need`;
}

/** "the bot asked for 3". */
export function chosenPhrase({ kind, by, played }: NumberReview): string {
  const { subject } = VOICES[by];
  switch (kind) {
    case 'blind': {
      const tiles = played === 1 ? '1 tile' : `${played} tiles`;
      return `${subject} passed ${played === 0 ? 'nothing' : tiles} blind`;
    }
    case 'vote':
      return `${subject} voted to ${played === 1 ? 'continue' : 'stop'}`;
    case 'ask':
      return `${subject} asked for ${played}`;
  }
}

/** What the quick look says. */
export function firstNumberAnswer(choice: NumberReview): readonly string[] {
  switch (choiceVerdict(choice)) {
    case 'best':
      return [`At first look, nothing better was found than to ${numberPhrase(choice.kind, choice.played)}.`];
    case 'just-as-good':
      return ['At first look, it was about as good as the best.'];
    default:
      return [`At first look, better: ${insteadPhrase(choice)}.`, `That is ${closerBy(choice.loss)}.`];
  }
}

interface Rule {
  readonly words: string;
  follows(number: number, spare: number): boolean;
  /** What one who goes by it would have done. */
  done(spare: number): string;
}

/** Rules of thumb about numbers: common practice, no source; there is none about the vote. */
const RULES: Readonly<Partial<Record<NumberReview['kind'], Rule>>> = {
  blind: {
    words: 'with fewer than 3 passers pass blind, otherwise don’t',
    follows: (blind, spare) => blind > 0 === spare < 3,
    done: (spare) => (spare < 3 ? 'passed blind' : 'passed nothing blind'),
  },
  ask: {
    words: 'ask for as many as you have passers, at most 3',
    follows: (asked, spare) => asked === Math.min(3, spare),
    done: (spare) => `asked for ${Math.min(3, spare)}`,
  },
};

/** What the rule would have done beside what was chosen; nothing where nothing was found. */
function ruleOfThumb(choice: NumberReview): readonly string[] {
  const rule = RULES[choice.kind];
  if (rule === undefined || choiceVerdict(choice) === 'cant-say') return [];
  const { by, played, spare } = choice;
  const gain = hadBetter(choice) ? '' : ', with no clear gain';
  const done = rule.follows(played, spare)
    ? `done as ${VOICES[by].subject} did`
    : `${rule.done(spare)}${gain}`;
  return [`The rule of thumb would have ${done}: ${rule.words}.`];
}
