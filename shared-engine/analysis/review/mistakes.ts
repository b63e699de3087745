// The kinds of mistake that a costly choice was: facts of the choice, the one source for review and class report.
import { type RiskGrade, riskGrade } from '../../policy/index.ts';
import { DRAGONS, type Face, WINDS } from '../../rules/index.ts';
import { SMALL_LOSS } from '../comparison/verdict.ts';
import type { ChoiceWhy } from '../why/choice-why.ts';
import type { DeepAnalysis } from './analysis.ts';
import { feedsNeighbor, isCostly, namedAlternative } from './choice-verdict.ts';
import { touchedBy } from './groups.ts';
import { MISTAKE_CATEGORY_NAMES, type MistakeCategory } from './mistake-categories.ts';
import type { ChoiceReview, NumberReview, PassReview, RackGroup } from './review.ts';

/** From here on the hands that two passes lead to differ in kind: tiles or jokers, and a share. */
const CLEAR_LACK = 0.5;
const CLEAR_TILES = 0.3;
const CLEAR_SHARE = 0.3;
/**
 * The categories that apply to one choice, several perhaps; none where nothing clearly better is known. `aims` are the ids
 * of the sections said before a pass.
 */
export function mistakesOf(choice: ChoiceReview, aims: readonly string[] = []): readonly MistakeCategory[] {
  if (!isCostly(choice)) return [];
  return choice.kind === 'pass' ? passMistakes(choice, aims) : numberMistakes(choice);
}

/** A loss from here on points to a mistake, whether or not it is sure; a tenth of the smallest that is told. */
const LEANING = SMALL_LOSS / 10;

/**
 * What a number would be a mistake of if its likely loss were sure; null where it is, or where no other number seems
 * better. Of one round nothing is told from it; many rounds that lean the same way say something.
 */
export function leaningOf(choice: ChoiceReview): MistakeCategory | null {
  const { analysis } = choice;
  if (choice.kind === 'pass' || analysis.depth === 'quick' || isCostly(choice)) return null;
  const leans = analysis.loss !== null && analysis.loss.value >= LEANING;
  return leans ? (numberMistakes(choice)[0] ?? null) : null;
}

function passMistakes(pass: PassReview, aims: readonly string[]): readonly MistakeCategory[] {
  const { analysis } = pass;
  const tests: readonly Test[] = [
    ['aim-left', aims.some((aim) => leaves(pass, aim))],
    ...ownTests(pass),
    ...(analysis.depth === 'quick'
      ? firstTests(pass)
      : [...giftTests(pass, analysis), ...whyTests(pass, analysis.why)]),
  ];
  const found = tests.filter(([, applies]) => applies).map(([category]) => category);
  const inOrder = MISTAKE_CATEGORY_NAMES.filter((category) => found.includes(category));
  return inOrder.length > 0 ? inOrder : ['poorer-fit'];
}

type Test = readonly [MistakeCategory, boolean];

/** Groups broken that the better pass leaves whole; after a deep analysis only where their tile made most of the loss. */
function ownTests(pass: PassReview): readonly Test[] {
  const { parts, analysis } = pass;
  const named = namedTiles(pass);
  const kept = touchedBy(parts.groups, named);
  const blamed = (face: Face): boolean => analysis.depth === 'quick' || analysis.why?.reason?.keep === face;
  const broken = parts.broken.filter((group) => !holds(kept, group) && blamed(group.face));
  return [
    ['new-multiple', broken.some((group) => holds(parts.formed, group))],
    ['broken-multiple', broken.some((group) => !holds(parts.formed, group))],
  ];
}

/** The sections whose aim a costly pass left: saying one before the pass makes leaving it a mistake of its own. */
export function sectionsLeft(choice: ChoiceReview): readonly string[] {
  if (choice.kind !== 'pass' || !isCostly(choice)) return [];
  return choice.sectionsInReach.filter((section) => leaves(choice, section));
}

/** Whether the pass puts a section out of reach that the better one would have kept or made likelier. */
function leaves({ analysis, ...pass }: PassReview, section: string): boolean {
  const isLost = pass.sectionsInReach.includes(section) && !pass.sectionsInReachAfter.includes(section);
  if (analysis.depth === 'quick') return isLost && pass.sectionsInReachAfterBest.includes(section);
  const ends = analysis.why?.sections[section];
  return isLost && ends !== undefined && ends.named > ends.played;
}

/** What the quick look counts: kinds of gifts, and sections. */
function firstTests({ parts, played, best, step }: PassReview): readonly Test[] {
  const given = (grade: RiskGrade): boolean => played.risk === grade && best.risk !== grade;
  const { sectionsKept, sectionsKeptByBest } = parts;
  return [
    ['pair-given', given('pair')],
    ['like-numbers-given', given('like-numbers')],
    ['same-suit-given', given('same-suit')],
    ['flower-given', given('flower')],
    ...sectionTests(step, { played: sectionsKept, named: sectionsKeptByBest }),
  ];
}

/** Sections let go in the first Charleston, or still open from the second pass across on. */
function sectionTests(step: PassReview['step'], kept: ChoiceWhy['sectionsKept']): readonly Test[] {
  const isEarly = step.startsWith('first');
  const isLate = !isEarly && step !== 'second-left';
  return [
    ['committed-too-soon', isEarly && kept.played < kept.named],
    ['committed-too-late', isLate && kept.played > kept.named],
  ];
}

/** A kind of gift is blamed where most of the loss went through the neighbor, a flower also where it was of own use. */
function giftTests(pass: PassReview, analysis: DeepAnalysis): readonly Test[] {
  const { why } = analysis;
  const fed = feedsNeighbor(analysis);
  const better = riskGrade(namedTiles(pass));
  const given = (grade: RiskGrade): boolean => fed && pass.played.risk === grade && better !== grade;
  return [
    ['pair-given', given('pair')],
    ['like-numbers-given', given('like-numbers')],
    ['same-suit-given', given('same-suit')],
    ['flower-given', given('flower') || why?.reason?.keep === 'flower'],
    ['neighbor-fed', fed],
  ];
}

/** Where the two passes lead. */
function whyTests({ rack, step }: PassReview, why: ChoiceWhy | null): readonly Test[] {
  if (why === null) return [];
  const { reason, sectionsKept, lacking, concealed, gone, idleJokers } = why;
  const lone =
    reason !== null && isHonor(reason.pass) && rack.filter((face) => face === reason.pass).length === 1;
  return [
    ['lone-honor-kept', lone],
    ...sectionTests(step, sectionsKept),
    ['pairs-chased', lacking.played - lacking.named >= CLEAR_LACK],
    ['concealed-chased', concealed.played - concealed.named >= CLEAR_SHARE],
    ['tiles-gone', gone.played - gone.named >= CLEAR_TILES],
    ['jokers-for-pairs', idleJokers.played - idleJokers.named >= CLEAR_TILES],
  ];
}

function isHonor(face: Face): boolean {
  return [...WINDS, ...DRAGONS].some((honor) => honor === face);
}

function numberMistakes(choice: NumberReview): readonly MistakeCategory[] {
  const more = choice.played > (namedAlternative(choice)?.number ?? choice.best);
  switch (choice.kind) {
    case 'blind':
      return [more ? 'too-many-blind' : 'too-few-blind'];
    case 'vote':
      return [more ? 'continued' : 'stopped'];
    case 'ask':
      return [more ? 'asked-too-many' : 'asked-too-few'];
  }
}

function namedTiles(pass: PassReview): readonly Face[] {
  return namedAlternative(pass)?.tiles ?? pass.best.tiles;
}

function holds(groups: readonly RackGroup[], { face }: RackGroup): boolean {
  return groups.some((group) => group.face === face);
}
