// The sentences about a pass: what it kept and gave, what the first answer says, and what speaks for another one.
import { riskGrade } from '../../../policy/index.ts';
import { type Face, MOVES } from '../../../rules/index.ts';
import { choiceVerdict, namedAlternative } from '../choice-verdict.ts';
import { touchedBy } from '../groups.ts';
import type { PassReview, RackGroup, Review } from '../review.ts';
import { insteadPhrase } from './instead.ts';
import { capitalized, closerBy, listed, shareOf, VOICES } from './phrases.ts';
import { isSafer, RISK_NAMES, riskSentence } from './risk.ts';
import { groupName, theTile, tileList } from './tiles.ts';
import { leadSentences, whySentences } from './why.ts';

const TOWARD = { right: 'to the right', across: 'across', left: 'to the left' };

/** What was passed. */
export function passedSentence({ by, blind, played, step }: PassReview): string {
  const more = blind > 0 ? ` and ${blind} more blind` : '';
  const passed = `${VOICES[by].subject} passed ${tileList(played.tiles)}`;
  return `${capitalized(passed)} ${TOWARD[MOVES[step].toward]}${more}.`;
}

/** What became of groups and sections, and how risky it was to pass. */
export function passFacts(pass: PassReview, sections: Review['sections']): readonly string[] {
  return [...groupFacts(pass), ...sectionFacts(pass, sections), ...riskFacts(pass)];
}

function groupFacts({ by, played, parts }: PassReview): readonly string[] {
  const { subject, whose } = VOICES[by];
  const { broken, groups, groupCount } = parts;
  if (groupCount === 0) return [];
  if (broken.length > 0) {
    // What was given whole has been named with the pass.
    const taken = broken.filter((group) => !isWhole(group, played.tiles));
    return phraseOf(`${capitalized(subject)} broke up ${whose}`, taken).map((phrase) => `${phrase}.`);
  }
  const kept =
    groupCount === 1
      ? `${whose} ${groupName(groups[0]!)}`
      : `${shareOf(groupCount, groupCount)} of ${whose} multiples`;
  return [`${capitalized(subject)} kept ${kept} together.`];
}

function isWhole({ face, count }: RackGroup, tiles: readonly Face[]): boolean {
  return tiles.filter((tile) => tile === face).length === count;
}

/** Tiles that go a second time, after such ones came back; how many went and came is not told. */
export function returnedSentence({ by, parts: { returned } }: PassReview): readonly string[] {
  if (returned.length === 0) return [];
  const { subject } = VOICES[by];
  const tiles = listed([...new Set(returned)].map(theTile));
  return [`${capitalized(subject)} had passed ${tiles} before, and such tiles came back.`];
}

function phraseOf(start: string, groups: readonly RackGroup[]): readonly string[] {
  return groups.length === 0 ? [] : [`${start} ${listed(groups.map(groupName))}`];
}

/** Where a section is farther away after the pass, its closest hands all used one of the tiles passed. */
function sectionFacts(pass: PassReview, names: Review['sections']): readonly string[] {
  const lost = sectionsLost(pass);
  if (lost.length === 0) return [];
  const { whose } = VOICES[pass.by];
  const all = pass.sectionsInReach.length;
  const where =
    lost.length > 2
      ? `hands in ${lost.length === all ? 'all' : `${lost.length} of the`} ${all} sections closest to ${whose} rack`
      : `${whose} closest hands in ${listed(lost.map((id) => names[id]!))}`;
  return [`This pass gave something that ${where} use.`];
}

function sectionsLost({ sectionsInReach, sectionsInReachAfter }: PassReview): readonly string[] {
  return sectionsInReach.filter((id) => !sectionsInReachAfter.includes(id));
}

/** Where the numbers and a rule of thumb disagree, that is said. */
function riskFacts(pass: PassReview): readonly string[] {
  const { by, played, analysis } = pass;
  const verdict = choiceVerdict(pass);
  if (
    played.risk !== 'none' &&
    analysis.depth === 'deep' &&
    (verdict === 'best' || verdict === 'just-as-good')
  ) {
    return [`The rule of thumb warns of giving ${RISK_NAMES[played.risk]}; here that cost nothing clear.`];
  }
  const sentence = riskSentence(played, VOICES[by].subject);
  return sentence === null ? [] : [sentence];
}

/** What the quick look says. */
export function firstPassAnswer(pass: PassReview): readonly string[] {
  const { legal, loss } = pass;
  if (legal === 1) return ['No other pass was possible.'];
  switch (choiceVerdict(pass)) {
    case 'best':
      return [`At first look, none of ${legal} possible passes came out closer.`];
    case 'just-as-good':
      return ['At first look, it was about as good as the best.'];
    default:
      return [`At first look, better: ${insteadPhrase(pass)}.`, `That is ${closerBy(loss)}.`];
  }
}

/** What speaks for the pass that is named, or else where the two lead, and what speaks against it. */
export function passReasons(pass: PassReview, sections: Review['sections']): readonly string[] {
  const { by, analysis } = pass;
  const reasons = reasonsFor(pass, sections);
  const why = analysis.depth === 'deep' ? analysis.why : null;
  const leads = reasons.length > 0 || why === null ? [] : leadSentences(why, sections, VOICES[by].whose);
  return [...reasons, ...leads, ...costsOfNamed(pass)];
}

/** The groups that only the pass named gives up or breaks up, and the rule of thumb that it breaks. */
function costsOfNamed(pass: PassReview): readonly string[] {
  const { whose } = VOICES[pass.by];
  const { tiles, spent } = groupsBeside(pass);
  const whole = spent.filter((group) => isWhole(group, tiles));
  const does = [
    ...phraseOf(`give up ${whose}`, whole),
    ...phraseOf(
      `break up ${whose}`,
      spent.filter((group) => !isWhole(group, tiles)),
    ),
  ];
  const risk = riskGrade(tiles);
  const against = isSafer(pass.played.risk, risk);
  // A pair given up is what the rule of thumb warns of.
  if (against && risk === 'pair' && whole.length > 0) {
    return [`That pass does ${listed(does)}, against the rule of thumb.`];
  }
  const broken = does.length === 0 ? [] : [`That pass does ${listed(does)}.`];
  return [...broken, ...riskReasons(pass, risk)];
}

/** What speaks for the pass that is named, the plainest first. */
export function reasonsFor(pass: PassReview, sections: Review['sections']): readonly string[] {
  const { by, parts, analysis } = pass;
  const { subject, whose } = VOICES[by];
  const { saved, spent } = groupsBeside(pass);
  // The largest of the new groups stands for them all.
  const [formed] = saved
    .filter(({ face }) => hasFace(parts.formed, face))
    .toSorted((a, b) => b.count - a.count);
  const why = analysis.depth === 'deep' ? analysis.why : null;
  const reasons =
    why === null ? [] : [...whySentences(why, sections, { whose, verdict: choiceVerdict(pass) })];
  if (formed) reasons.push(`${capitalized(subject)} had just made a ${groupName(formed)}: look again.`);
  const unsaid = saved.filter(
    (group) => group !== formed && !reasons.some((reason) => reason.includes(`${whose} ${groupName(group)}`)),
  );
  if (unsaid.length > 0) {
    const stay = unsaid.length === 1 ? 'stays' : 'stay';
    const groups = listed(unsaid.map((group) => `${whose} ${groupName(group)}`));
    reasons.push(`${capitalized(groups)} then ${stay} together.`);
  }
  return [...reasons, ...firstReasons(pass, saved.length > spent.length)];
}

/** The pass that is named, the groups that it alone leaves whole, and those that it alone breaks up. */
function groupsBeside(pass: PassReview) {
  const { parts, played } = pass;
  const tiles = namedAlternative(pass)?.tiles ?? played.tiles;
  const brokenByNamed = touchedBy(parts.groups, tiles);
  return {
    tiles,
    saved: parts.broken.filter(({ face }) => !hasFace(brokenByNamed, face)),
    spent: brokenByNamed.filter(({ face }) => !hasFace(parts.broken, face)),
  };
}

/** Where the numbers and a rule of thumb disagree, that is said. */
function riskReasons(pass: PassReview, named: PassReview['played']['risk']): readonly string[] {
  const { risk } = pass.played;
  if (isSafer(named, risk)) return riskFacts(pass);
  if (named === 'none' || !isSafer(risk, named)) return [];
  return [`Against the rule of thumb, that pass gives ${RISK_NAMES[named]}.`];
}

/** What the quick look counts for its pass, where no group speaks for it. */
function firstReasons({ by, analysis, parts, best, played }: PassReview, plain: boolean): readonly string[] {
  if (analysis.depth === 'deep' || plain) return [];
  if (parts.sectionsKeptByBest > parts.sectionsKept) {
    return [
      `It keeps ${shareOf(parts.sectionsKeptByBest, parts.sectionCount)} sections within a tile of ${VOICES[by].whose} closest hand.`,
    ];
  }
  if (best.toGo < played.toGo) return [`The tiles kept are then ${best.toGo} away, not ${played.toGo}.`];
  return ['It fits better with what may arrive.'];
}

function hasFace(groups: readonly RackGroup[], face: RackGroup['face']): boolean {
  return groups.some((group) => group.face === face);
}
