// The sentences about a number chosen: tiles passed blind, the vote, tiles asked for by courtesy.
import type { ChoiceWhy } from '../../why/choice-why.ts';
import { inTenths } from '../basis.ts';
import { choiceVerdict, hadBetter, madeNoDifference } from '../choice-verdict.ts';
import type { NumberReview, Review } from '../review.ts';
import { insteadPhrase, namedNumber } from './instead.ts';
import { leadSentences, NO_ONE_REASON, slightSentences } from './leads.ts';
import { othersReason } from './neighbors.ts';
import { capitalized, closerBy, playerAt, VOICES } from './phrases.ts';
import { whySentences } from './why.ts';

/** What was chosen. */
export function chosenSentence(choice: NumberReview): string {
  return `${capitalized(chosenPhrase(choice))}.`;
}

/** What speaks for the number that is named, the plainest first; where nothing stands out, what differs a little. */
export function numberReasons(choice: NumberReview, sections: Review['sections']): readonly string[] {
  const { by, analysis } = choice;
  if (analysis.depth === 'quick' || analysis.why === null) return [];
  const found = [...clearReasons(choice, sections), ...othersReason(choice)];
  if (found.length > 0) return found;
  const why = whyOf(choice, analysis.why);
  const { toGo } = why;
  // What a number does to the exchange is a reason only where the rack is the closer for it.
  const more = namedNumber(choice) - choice.played;
  if (Number(inTenths(toGo.named)) < Number(inTenths(toGo.played))) {
    if (choice.kind === 'blind') return [blindSentence(more, VOICES[by].whose)];
    // That more tiles come when more are asked for goes without saying.
    if (choice.kind === 'ask' && more < 0) return [`Fewer tiles can then go to ${playerAt('across')}.`];
  }
  return slightSentences(why, sections, VOICES[by].whose);
}

function clearReasons(choice: NumberReview, sections: Review['sections']): readonly string[] {
  const { by, analysis } = choice;
  if (analysis.depth === 'quick' || analysis.why === null) return [];
  const why = whyOf(choice, analysis.why);
  return whySentences(why, sections, { whose: VOICES[by].whose, verdict: choiceVerdict(choice) });
}

/** Where nothing is asked for the rack stays as it is: how it stands between sections is no share of games. */
function whyOf(choice: NumberReview, why: ChoiceWhy): ChoiceWhy {
  const isFixed = choice.kind === 'ask' && [choice.played, namedNumber(choice)].includes(0);
  return isFixed ? { ...why, sections: {} } : why;
}

/** The same, and where the two lead if nothing differs clearly. */
export function numberWhy(choice: NumberReview, sections: Review['sections']): readonly string[] {
  const { by, analysis } = choice;
  if (analysis.depth === 'quick' || analysis.why === null) return [];
  const reasons = numberReasons(choice, sections);
  if (clearReasons(choice, sections).length > 0) return reasons;
  const told = reasons.length > 0 || !hadBetter(choice) ? reasons : [NO_ONE_REASON];
  return [...told, ...leadSentences(whyOf(choice, analysis.why), sections, VOICES[by].whose)];
}

/** As many fewer go from the rack as go on blind. */
function blindSentence(more: number, whose: string): string {
  return more > 0
    ? `Fewer of ${whose} own tiles are then passed.`
    : 'Good tiles among those that arrive can then stay.';
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

/** Where the number made no difference, why, be it one who stopped or several; it is judged by what was known then. */
export function effectSentence(choice: NumberReview): readonly string[] {
  if (!madeNoDifference(choice)) return [];
  const why =
    choice.askedAcross === null
      ? 'not all the others voted to continue'
      : `${playerAt('across')} asked for ${choice.askedAcross}`;
  const effect = `It made no difference here: ${why}.`;
  return hadBetter(choice) ? [effect, 'Nobody could know that, so the verdict stands.'] : [effect];
}

/** What the quick look says. */
export function firstNumberAnswer(choice: NumberReview): readonly string[] {
  switch (choiceVerdict(choice)) {
    case 'best':
      return [`At first look, ${noneBetter(choice)}.`];
    case 'just-as-good':
      return ['At first look, it was about as good as the best.'];
    default:
      return [`At first look, better: ${insteadPhrase(choice)}.`, `That is ${closerBy(choice.loss)}.`];
  }
}

function noneBetter({ kind, played }: NumberReview): string {
  if (kind !== 'vote') return 'no other number came out better';
  return `${played === 1 ? 'stopping' : 'continuing'} did not come out better`;
}

interface Rule {
  follows(number: number, spare: number): boolean;
  /** What was better where the rule would have had another number than this too. */
  instead(number: number): string;
  /** After the sentence that says how many passers there were. */
  words(spare: number): string;
}

/** Rules of thumb about numbers: common practice, no source; there is none about the vote. */
const RULES: Readonly<Partial<Record<NumberReview['kind'], Rule>>> = {
  blind: {
    follows: (blind, spare) => blind > 0 === spare < 3,
    instead: (blind) => `passing ${blind > 0 ? blind : 'nothing'} blind`,
    words: (spare) =>
      spare < 3
        ? 'With fewer than 3 passers the rule of thumb is to pass blind'
        : 'With 3 passers or more the rule of thumb is to pass nothing blind',
  },
  ask: {
    follows: (asked, spare) => asked === Math.min(3, spare),
    instead: (asked) => `asking for ${asked}`,
    words: () => 'The rule of thumb is to ask for as many as that, 3 at most',
  },
};

/** The rule beside what was chosen and what the numbers say; the rule alone where they say nothing. */
function ruleOfThumb(choice: NumberReview): readonly string[] {
  const rule = RULES[choice.kind];
  if (rule === undefined) return [];
  const { by, played, spare } = choice;
  const verdict = choiceVerdict(choice);
  const isWorse = hadBetter(choice);
  const words = rule.words(spare);
  if (rule.follows(played, spare)) {
    return [`${words}, as ${VOICES[by].subject} did${isWorse ? '; here something else was better' : ''}.`];
  }
  if (verdict === 'cant-say') return [`${words}; we can’t say whether that was better here.`];
  if (!isWorse) return [`${words}; here that was ${verdict === 'best' ? 'no' : 'not clearly'} better.`];
  const named = namedNumber(choice);
  const better = rule.follows(named, spare) ? '' : `; here ${rule.instead(named)} was better than ${played}`;
  return [`${words}${better}.`];
}
