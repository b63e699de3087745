// The two sentences about a pass: what it kept and gave, and what a better one would have done.
import { MOVES } from '../../../rules/index.ts';
import { BASIS, inTenths } from '../basis.ts';
import type { PassFindings, RackGroup, RankedPass } from '../review.ts';
import { capitalized, closerBy, listed, sectionsLeft, shareOf, VOICES } from './phrases.ts';
import { isSafer, RISK_NAMES, riskPhrase } from './risk.ts';
import { groupName, tileList } from './tiles.ts';

type SectionNames = Readonly<Record<string, string>>;

const TOWARD = { right: 'to the right', across: 'across', left: 'to the left' };

export function passSentences(pass: PassFindings, sections: SectionNames): readonly [string, string] {
  return [keptSentence(pass, sections), betterSentence(pass)];
}

function keptSentence(pass: PassFindings, sections: SectionNames): string {
  const { subject } = VOICES[pass.by];
  const blind = pass.blind > 0 ? ` and ${pass.blind} more blind` : '';
  const passed = `${subject} passed ${tileList(pass.played.tiles)} ${TOWARD[MOVES[pass.step].toward]}${blind}`;
  const kept = listed([...groupPhrases(pass), sectionPhrase(pass, sections)]);
  return `${capitalized(passed)}; that ${kept}, and ${riskPhrase(pass.played)}.`;
}

function groupPhrases({ by, played, parts }: PassFindings): readonly string[] {
  const { whose } = VOICES[by];
  const { broken, groups, groupCount, groupsKept: kept } = parts;
  const whole = ({ face, count }: RackGroup) => played.tiles.filter((tile) => tile === face).length === count;
  const lost = [
    ...phraseOf(`gave up ${whose}`, broken.filter(whole)),
    ...phraseOf(
      `broke up ${whose}`,
      broken.filter((group) => !whole(group)),
    ),
  ];
  if (kept === 0) return lost;
  if (groupCount === 1) return [`kept ${whose} ${groupName(groups[0]!)} whole`];
  if (kept === groupCount) return [`kept ${shareOf(kept, groupCount)} of ${whose} groups whole`];
  return [...lost, `kept ${kept} of ${whose} ${groupCount} groups whole`];
}

function phraseOf(start: string, groups: readonly RackGroup[]): readonly string[] {
  return groups.length === 0 ? [] : [`${start} ${listed(groups.map(groupName))}`];
}

function sectionPhrase(pass: PassFindings, sections: SectionNames): string {
  const { sectionsInReach, sectionsInReachAfter, parts } = pass;
  const { sectionCount, sectionsKept: kept } = parts;
  const left = sectionsLeft(kept, sectionCount);
  if (sectionCount === 1) return `${left} (${sections[sectionsInReach[0]!]})`;
  const lost = sectionsInReach.filter((id) => !sectionsInReachAfter.includes(id)).map((id) => sections[id]!);
  return lost.length === 1 || lost.length === 2 ? `${left} (out of reach: ${lost.join('; ')})` : left;
}

function betterSentence(pass: PassFindings): string {
  const { by, legal, loss, played, best, parts } = pass;
  if (legal === 1) return 'No other pass was possible.';
  if (loss === 0) {
    const stayed = parts.formed.length > 0 && parts.broken.length === 0;
    const formed = stayed ? `, and the new ${listed(parts.formed.map(groupName))} stayed whole` : '';
    return `No better pass was found: of ${legal} possible ones none came out closer${formed}${despiteRisk(played)}.`;
  }
  const safer = isSafer(played.risk, best.risk);
  if (loss < BASIS.smallLoss) {
    const by = inTenths(loss) === '0.0' ? 'by too little to notice' : closerBy(loss);
    const but = safer ? ', and by the rules of thumb the pass played was the safer one' : '';
    return `Hardly better: ${swapPhrase(pass)}, ${by}${but}.`;
  }
  // The largest of the new groups stands for them all.
  const [formed] = [...parts.formed].sort((a, b) => b.count - a.count);
  const made = formed
    ? `${capitalized(VOICES[by].subject)} had just made a ${groupName(formed)}: look again. `
    : '';
  return `${made}Better: ${swapPhrase(pass)}, ${reasonFor(pass)}, ${closerBy(loss)}${safer ? despiteRisk(best) : ''}.`;
}

/** "pass Y, keep X". */
export function swapPhrase({ parts }: PassFindings): string {
  return `pass ${tileList(parts.betterToGive)}, keep ${tileList(parts.betterToKeep)}`;
}

/** Where the numbers and a rule of thumb disagree, the review says so. */
function despiteRisk({ risk }: RankedPass): string {
  return risk === 'none' ? '' : `, though, against the rule of thumb, it gives ${RISK_NAMES[risk]}`;
}

/** What the better pass kept that the pass played did not; the plainest difference first. */
export function reasonFor({ by, played, best, parts }: PassFindings): string {
  const { whose } = VOICES[by];
  const saved = parts.broken.filter(({ face }) => !hasFace(parts.brokenByBest, face));
  const spent = parts.brokenByBest.filter(({ face }) => !hasFace(parts.broken, face));
  if (saved.length > spent.length) {
    return `so that ${whose} ${listed(saved.map(groupName))} ${saved.length === 1 ? 'stays' : 'stay'} whole`;
  }
  if (parts.sectionsKeptByBest > parts.sectionsKept) {
    return `which leaves ${shareOf(parts.sectionsKeptByBest, parts.sectionCount)} sections within reach`;
  }
  if (best.toGo < played.toGo) return `which leaves the tiles kept ${best.toGo} away, not ${played.toGo}`;
  return 'which keeps tiles that fit better with what may arrive';
}

function hasFace(groups: readonly RackGroup[], face: RackGroup['face']): boolean {
  return groups.some((group) => group.face === face);
}
