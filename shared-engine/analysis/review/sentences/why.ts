// Why the pass that is named is better, in words: the one tile that makes most of it, and how the two differ at the end.
import type { Verdict } from '../../comparison/verdict.ts';
import type { ChoiceWhy, SideBySide, TileUse } from '../../why/choice-why.ts';
import { inTenths } from '../basis.ts';
import type { Review } from '../review.ts';
import { capitalized } from './phrases.ts';
import { groupName, theTile } from './tiles.ts';

/** So many of them are told, the most valued first. */
const MOST_REASONS = 3;
/** Differences from here on are told: shares, mean tiles to go, mean tiles lacking. */
const CLEAR_SHARE = 0.2;
const CLEAR_TILES = 0.3;
const CLEAR_LACK = 0.5;

/** Whose rack it is, and how much worse the choice made was. */
interface WhyTerms {
  readonly whose: string;
  readonly verdict: Verdict;
}

/**
 * Only the tile that alone makes at least half of the difference is called the reason: "keep" and "because" stand for
 * it. All else is told as what differs, which may be the reason or go with it. Of a costly choice it is always told
 * which section each of the two leads to.
 */
export function whySentences(
  why: ChoiceWhy,
  sections: Review['sections'],
  { whose, verdict }: WhyTerms,
): readonly string[] {
  const section = sectionSentence(why, sections, whose);
  const all = [
    useSentence(why, whose),
    reasonSentence(why, whose),
    endSentence(why, whose),
    section,
    lackSentence(why),
    jokerSentence(why),
    goneSentence(why, whose),
    concealedSentence(why, whose),
  ];
  const told = all.filter((sentence) => sentence !== null).slice(0, MOST_REASONS);
  if (verdict !== 'costly' || told.length === 0 || (section !== null && told.includes(section))) return told;
  const leads = section ?? leadSentence(why, sections, whose);
  return leads === null ? told : [...told, leads];
}

/** Where the two choices lead, when nothing that was looked at differs enough to speak for the better one. */
export function leadSentences(
  why: ChoiceWhy,
  sections: Review['sections'],
  whose: string,
): readonly string[] {
  const leads = leadSentence(why, sections, whose);
  return [nearlySentence(why, whose), ...(leads === null ? [] : [leads])];
}

/** The distances at the end, where they differ less than `endSentence` tells or speak against the better choice. */
function nearlySentence({ toGo }: ChoiceWhy, whose: string): string {
  const [played, instead] = [inTenths(toGo.played), inTenths(toGo.named)];
  const rack = `${capitalized(whose)} rack`;
  if (played === instead) return `${rack} ends about as far away with both: ${played} on average.`;
  return Number(instead) < Number(played)
    ? `${rack} then ends only a little closer: ${instead} away on average, not ${played}.`
    : `${rack} then ends farther away, ${instead} on average, not ${played}, and still wins more often.`;
}

/** The section that each of the two most often ends closest to. */
function leadSentence({ sections }: ChoiceWhy, names: Review['sections'], whose: string): string | null {
  const mostOften = (of: keyof SideBySide): string | undefined => {
    const [most] = Object.entries(sections).toSorted(([, a], [, b]) => b[of] - a[of]);
    return most && (names[most[0]] ?? most[0]);
  };
  const [played, instead] = [mostOften('played'), mostOften('named')];
  if (played === undefined || instead === undefined) return null;
  return played === instead
    ? `Either way ${whose} rack most often ends closest to ${played}.`
    : `${capitalized(whose)} rack then most often ends closest to ${instead}, not to ${played}.`;
}

/** The tile that makes the difference, or the one kept that most hands use. */
function mattersMost({ keep, reason }: ChoiceWhy): TileUse | undefined {
  return keep.find(({ face }) => face === reason?.keep) ?? keep.toSorted((a, b) => b.share - a.share)[0];
}

/** The tile given for it, or the one that fewest hands use. */
function mattersLeast({ pass, reason }: ChoiceWhy): TileUse | undefined {
  return pass.find(({ face }) => face === reason?.pass) ?? pass.toSorted((a, b) => a.share - b.share)[0];
}

function useSentence(why: ChoiceWhy, whose: string): string | null {
  const kept = mattersMost(why);
  const given = mattersLeast(why);
  if (!kept || !given || tenths(kept.share) - tenths(given.share) < 10 * CLEAR_SHARE) return null;
  const many = kept.share === 1 ? 'all' : tenthsOf(kept.share);
  const hands = `${many} of ${whose} closest hands at the close use`;
  const other = named(given, 'the');
  const least = given.share === 0 ? `none uses ${other}` : `${tenthsOf(given.share)} use ${other}`;
  const most =
    kept.face === why.reason?.keep
      ? `Keep ${named(kept, whose)}: ${hands} it`
      : capitalized(`${hands} ${named(kept, whose)}`);
  return `${most}; ${least}.`;
}

function reasonSentence(why: ChoiceWhy, whose: string): string | null {
  const { keep, reason } = why;
  if (reason === null || keep.length < 2) return null;
  if (useSentence(why, whose) !== null)
    return 'That one exchange alone makes at least half of the difference.';
  const alone = `keeping ${theTile(reason.keep)} instead of ${theTile(reason.pass)} makes at least half of the difference`;
  return `Mostly because of one tile: ${alone}.`;
}

function endSentence({ toGo: { played, named: instead } }: ChoiceWhy, whose: string): string | null {
  if (played - instead < CLEAR_TILES || inTenths(played) === inTenths(instead)) return null;
  return `${capitalized(whose)} rack then ends ${inTenths(instead)} away on average, not ${inTenths(played)}.`;
}

function sectionSentence({ sections }: ChoiceWhy, names: Review['sections'], whose: string): string | null {
  const [most] = Object.entries(sections)
    .map(([id, shares]) => ({ id, shares, gain: tenths(shares.named) - tenths(shares.played) }))
    .sort((a, b) => b.gain - a.gain);
  if (!most || most.gain < 10 * CLEAR_SHARE) return null;
  const section = names[most.id] ?? most.id;
  return `${capitalized(whose)} rack then ends closest to ${section} more often: ${gamesInTen(most.shares)}.`;
}

function lackSentence({ lacking: { played, named: instead } }: ChoiceWhy): string | null {
  if (played - instead < CLEAR_LACK) return null;
  return `Fewer tiles are then missing in pairs and singles, where no joker helps: ${onAverage(instead, played)}.`;
}

function jokerSentence({ idleJokers: { played, named: instead } }: ChoiceWhy): string | null {
  if (played - instead < CLEAR_TILES) return null;
  return `Fewer jokers are then left over, as pairs and singles take none: ${onAverage(instead, played)}.`;
}

function goneSentence({ gone: { played, named: instead } }: ChoiceWhy, whose: string): string | null {
  if (played - instead < CLEAR_TILES) return null;
  return `Fewer tiles that ${whose} closest hands lack are then with the others already: ${onAverage(instead, played)}.`;
}

/** "0.8 on average, not 1.5". */
function onAverage(instead: number, played: number): string {
  const few = inTenths(instead) === '0.0' ? 'hardly any' : inTenths(instead);
  return `${few} on average, not ${inTenths(played)}`;
}

function concealedSentence({ concealed }: ChoiceWhy, whose: string): string | null {
  if (tenths(concealed.played) - tenths(concealed.named) < 10 * CLEAR_SHARE) return null;
  return `Fewer of ${whose} closest hands must then stay concealed: ${inTen(concealed)}.`;
}

/** "5 in 10 games instead of 2", "nearly all games instead of 6 in 10". */
function gamesInTen({ played, named: instead }: SideBySide): string {
  return `${tenthsOf(instead)} games instead of ${bothPlain(played, instead) ? tenths(played) : tenthsOf(played)}`;
}

/** "1 in 10 instead of 9", "hardly any instead of 6 in 10". */
function inTen({ played, named: instead }: SideBySide): string {
  return `${tenthsOf(instead)} instead of ${bothPlain(played, instead) ? tenths(played) : tenthsOf(played)}`;
}

function bothPlain(...shares: readonly number[]): boolean {
  return shares.every((share) => tenths(share) > 0 && tenths(share) < 10);
}

/** "4 in 10", "hardly any", "nearly all". */
function tenthsOf(share: number): string {
  if (tenths(share) === 0) return 'hardly any';
  return tenths(share) === 10 ? 'nearly all' : `${tenths(share)} in 10`;
}

function tenths(share: number): number {
  return Math.round(10 * share);
}

/** "the soap", "3 bam", "your pair of 3 bam". */
function named({ face, copies }: TileUse, whose: string): string {
  return copies > 1 ? `${whose} ${groupName({ face, count: copies })}` : theTile(face);
}
