// The sentences about a pass: what it kept and gave, what the first answer says, and what speaks for another one.
import { riskGrade } from '../../../policy/index.ts';
import { FACES, type Face, MOVES } from '../../../rules/index.ts';
import type { Verdict } from '../../comparison/verdict.ts';
import { inTenths } from '../basis.ts';
import { choiceVerdict, hadBetter, namedAlternative } from '../choice-verdict.ts';
import { touchedBy, without } from '../groups.ts';
import type { ChoiceReview, PassReview, RackGroup, Review } from '../review.ts';
import { namesPerhaps } from './deep-verdict.ts';
import { insteadPhrase } from './instead.ts';
import { leadSentences, NO_ONE_REASON, NO_OTHER_REASON, slightSentences } from './leads.ts';
import { neighborReason, partToNeighbor } from './neighbors.ts';
import { capitalized, closerBy, listed, shareOf, VOICES } from './phrases.ts';
import { isSafer, riskName, riskSentence, riskWithTiles, riskyTiles } from './risk.ts';
import { groupName, groupsName, theTile, tileList, tileName } from './tiles.ts';
import { whySentences } from './why.ts';

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

/** Which groups it broke up, or that it kept all of them. */
export function groupFacts({ by, played, parts }: PassReview): readonly string[] {
  const { subject, whose } = VOICES[by];
  const { broken, groups, groupCount } = parts;
  if (groupCount === 0) return [];
  if (broken.length > 0) {
    // What was given whole has been named with the pass.
    const taken = broken.filter((group) => !isWhole(group, played.tiles));
    return phraseOf(`${capitalized(subject)} broke up ${whose}`, taken).map((phrase) => `${phrase}.`);
  }
  const [first, second] = groups.toSorted((a, b) => a.count - b.count);
  const kept =
    groupCount === 1
      ? `${whose} ${groupName(first!)}`
      : groupCount === 2 && first!.count !== second!.count
        ? `${whose} ${groupName(first!)} and ${whose} ${groupName(second!)}`
        : `${shareOf(groupCount, groupCount)} of ${whose} ${groupsName(groups)}`;
  return [`${capitalized(subject)} kept ${kept} together.`];
}

function isWhole({ face, count }: RackGroup, tiles: readonly Face[]): boolean {
  return tiles.filter((tile) => tile === face).length === count;
}

/** Tiles that go a second time, after such ones came in. */
export function returnedSentence({ by, parts: { returned } }: PassReview): readonly string[] {
  const faces = [...new Set(returned)];
  if (faces.length === 0) return [];
  const { subject } = VOICES[by];
  return [
    `${capitalized(subject)} had passed ${listed(faces.map(theTile))} before, and ${thatKind(faces)} came in.`,
  ];
}

/** Of tiles that came once such ones had been passed: nobody is told whether they are the same (rule V3). */
export function thatKind(faces: readonly Face[]): string {
  return `more of ${faces.length === 1 ? 'that kind' : 'those kinds'}`;
}

function phraseOf(start: string, groups: readonly RackGroup[]): readonly string[] {
  return groups.length === 0 ? [] : [`${start} ${listed(groups.map(groupName))}`];
}

/** Where a section is farther away after the pass, its closest hands all used one of the tiles passed. */
function sectionFacts(pass: PassReview, names: Review['sections']): readonly string[] {
  const lost = sectionsLost(pass);
  if (lost.length === 0) return [];
  const { whose, owner } = VOICES[pass.by];
  const all = pass.sectionsInReach.length;
  if (lost.length > 2) {
    // Under a good pass so many that go say only that a choice had to be made.
    if (!hadBetter(pass)) return [];
    const where = lost.length === all ? 'all' : lost.length;
    return [
      `Hands in ${all} sections of the card were within reach; in ${where} of those the closest hands use a tile passed here.`,
    ];
  }
  // Beside praise it would read as blame.
  const isGood = isBest(choiceVerdict(pass));
  const tilesOf = (id: string): readonly Face[] => pass.parts.sectionTiles[id] ?? [];
  const sectionsOf = (face: Face) => lost.filter((id) => tilesOf(id).includes(face));
  const named = (ids: readonly string[]) => listed(ids.map((id) => names[id]!));
  const given = (face: Face): string => {
    const count = pass.played.tiles.filter((tile) => tile === face).length;
    return count > 1 ? `a ${groupName({ face, count })}` : theTile(face);
  };
  const tiles = FACES.filter((face) => sectionsOf(face).length > 0);
  const isOneList = tiles.every((face) => sectionsOf(face).length === lost.length);
  if (isOneList) {
    const gave = listed(tiles.map(given));
    return [
      `${capitalized(owner)} pass ${isGood ? 'did give' : 'gave'} ${gave}, which ${whose} closest hands in ${named(lost)} use.`,
    ];
  }
  const each = [...new Set(tiles.map((face) => named(sectionsOf(face))))].map((where) => {
    const together = tiles.filter((face) => named(sectionsOf(face)) === where);
    return `${listed(together.map(given))} (${where})`;
  });
  return [
    `${capitalized(whose)} closest hands ${isGood ? 'do use' : 'use'} tiles given here: ${each.join('; ')}.`,
  ];
}

function isBest(verdict: Verdict): boolean {
  return verdict === 'best' || verdict === 'just-as-good';
}

function sectionsLost({ sectionsInReach, sectionsInReachAfter }: PassReview): readonly string[] {
  return sectionsInReach.filter((id) => !sectionsInReachAfter.includes(id));
}

/**
 * Where the numbers and a rule of thumb disagree, that is said. It says nothing where the pass that is named breaks the
 * rule as well.
 */
function riskFacts(pass: PassReview): readonly string[] {
  const { by, played, analysis } = pass;
  const { tiles, risk } = played;
  const verdict = choiceVerdict(pass);
  if (risk !== 'none' && analysis.depth === 'deep') {
    if (isBest(verdict)) {
      return [
        `The rule of thumb warns of giving ${riskName(tiles, risk)}; here it cost no wins that we could see.`,
      ];
    }
    const isTold = hadBetter(pass) || namesPerhaps(analysis);
    if (isTold && riskyTiles(namedAlternative(pass)?.tiles ?? [], risk).length > 0) return [];
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

/** The best pass of the quick look beside one that is about as good: of that the quick look itself names no other. */
export interface BestBeside {
  readonly tiles: readonly Face[];
  /** Which tiles are exchanged, and how little that brings. */
  readonly sentences: readonly string[];
}

/** Null of a number, where the pass played is the best, and where the better one is told anyway. */
export function bestAtFirstLook(choice: ChoiceReview): BestBeside | null {
  const { kind, loss, analysis } = choice;
  if (kind !== 'pass' || analysis.depth === 'deep' || choiceVerdict(choice) !== 'just-as-good') return null;
  const closer = inTenths(loss) === '0.0' ? 'hardly closer' : `${inTenths(loss)} tiles closer`;
  return {
    tiles: choice.best.tiles,
    sentences: [
      `The best at first look: ${insteadPhrase(choice)}.`,
      `It comes ${closer} to a hand on average, too little to matter.`,
    ],
  };
}

/** What speaks for the pass that is named, or else where the two lead, and what speaks against it. */
export function passReasons(pass: PassReview, sections: Review['sections']): readonly string[] {
  const { analysis } = pass;
  const why = analysis.depth === 'deep' ? analysis.why : null;
  const told = speaksFor(pass, sections);
  if (why === null || reasonsFor(pass, sections).length > 0) return [...told, ...rulesBeside(pass)];
  const changed = without(pass.played.tiles, namedAlternative(pass)?.tiles ?? []).length;
  const reasons = told.length > 0 ? told : [changed < 2 ? NO_OTHER_REASON : NO_ONE_REASON];
  return [...reasons, ...leadSentences(why, sections, VOICES[pass.by].whose), ...rulesBeside(pass)];
}

/** What speaks for the pass that is named, the plainest first; where nothing stands out, what differs a little. */
export function speaksFor(pass: PassReview, sections: Review['sections']): readonly string[] {
  const { by, analysis } = pass;
  const found = [...reasonsFor(pass, sections), ...neighborReason(pass)];
  if (found.length > 0 || analysis.depth === 'quick' || analysis.why === null) return found;
  return [...partToNeighbor(pass), ...slightSentences(analysis.why, sections, VOICES[by].whose)];
}

/** Whether a rule of thumb is told to warn of a pass of which nothing is sure. */
export function isWarnedOf(pass: PassReview): boolean {
  return choiceVerdict(pass) === 'cant-say' && riskFacts(pass).length > 0;
}

/** The rule of thumb that the pass broke and the one named does not, unless `reason` has spoken of the tiles it is about. */
export function brokenRule(pass: PassReview, reason = ''): readonly string[] {
  const { tiles, risk } = pass.played;
  const isTold = riskyTiles(tiles, risk).some((face) => reason.includes(tileName(face)));
  // Like numbers are told to be nearly as risky as a pair, which may be what is named instead.
  const isMilder = risk === 'like-numbers' && riskGrade(namedAlternative(pass)?.tiles ?? []) === 'pair';
  return isTold || isMilder ? [] : riskFacts(pass);
}

/** The rule of thumb that the pass broke and the one named does not; what that one gives up, and the rule it breaks. */
function rulesBeside(pass: PassReview): readonly string[] {
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
  // First what was done, so that its rule is not taken to be about the better pass.
  const own = riskFacts(pass);
  // A pair given up is what the rule of thumb warns of.
  if (against && risk === 'pair' && whole.length > 0) {
    return [...own, `The better pass does ${listed(does)}, against the rule of thumb.`];
  }
  const broken = does.length === 0 ? [] : [`The better pass does ${listed(does)}.`];
  if (risk === 'none' || !against) return [...own, ...broken];
  const gives = `the better pass gives ${riskWithTiles(tiles, risk)}`;
  // Two rules in a row: the second is another one.
  const start = own.length > 0 ? 'Against another rule of thumb' : 'Against the rule of thumb';
  return [...own, ...broken, `${start}, ${gives}.`];
}

/** What differs clearly, the plainest first. */
function reasonsFor(pass: PassReview, sections: Review['sections']): readonly string[] {
  const { by, parts, analysis } = pass;
  const { whose } = VOICES[by];
  const { saved, spent } = groupsBeside(pass);
  // The largest of the new groups stands for them all.
  const isNew = ({ face }: RackGroup): boolean => hasFace(parts.formed, face);
  // Where the better pass breaks up a new group too, that it was new is no lesson.
  const [formed] = spent.some(isNew) ? [] : saved.filter(isNew).toSorted((a, b) => b.count - a.count);
  const why = analysis.depth === 'deep' ? analysis.why : null;
  const reasons =
    why === null ? [] : [...whySentences(why, sections, { whose, verdict: choiceVerdict(pass) })];
  const isSaid = (group: RackGroup): boolean =>
    reasons.some((reason) => reason.toLowerCase().includes(`${whose} ${groupName(group)}`));
  const unsaid = saved.filter((group) => group !== formed && !isSaid(group));
  if (formed) {
    const gave = isWhole(formed, pass.played.tiles) ? 'gave away' : 'broke up';
    const was = isSaid(formed)
      ? `The ${groupName(formed)} was new`
      : `${capitalized(VOICES[by].subject)} ${gave} a new ${groupName(formed)}`;
    reasons.push(`${was}: look at the whole rack again before each pass.`);
  }
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

/** What the quick look counts for its pass, where no group speaks for it. */
function firstReasons({ analysis, parts, best, played }: PassReview, plain: boolean): readonly string[] {
  if (analysis.depth === 'deep' || plain) return [];
  const { sectionsKept, sectionsKeptByBest, sectionCount } = parts;
  if (sectionsKeptByBest > sectionsKept) {
    const kept = `It keeps ${shareOf(sectionsKeptByBest, sectionCount)} sections within a tile of the closest hand`;
    return [`${kept}; the pass made keeps ${sectionsKept === 0 ? 'none' : sectionsKept}.`];
  }
  if (best.toGo < played.toGo) return [`The tiles kept are then ${best.toGo} away, not ${played.toGo}.`];
  return ['It fits better with what may arrive.'];
}

function hasFace(groups: readonly RackGroup[], face: RackGroup['face']): boolean {
  return groups.some((group) => group.face === face);
}
