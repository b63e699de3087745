// Why the pass that is named is better, in words: the one tile that makes most of it, and how the two differ at the end.
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

/** Where nothing that was looked at differs clearly. */
export const NO_ONE_REASON = 'No one reason stands out: it comes out ahead over all the games together.';

/**
 * Only the tile that alone makes at least half of the difference is called the reason: "keep" and "because" stand for
 * it. All else is told as what differs, which may be the reason or go with it.
 */
export function whySentences(why: ChoiceWhy, sections: Review['sections'], whose: string): readonly string[] {
  const all = [
    useSentence(why, whose),
    reasonSentence(why),
    endSentence(why, whose),
    sectionSentence(why, sections),
    lackSentence(why),
    jokerSentence(why),
    goneSentence(why, whose),
    concealedSentence(why, whose),
  ];
  return all.filter((sentence) => sentence !== null).slice(0, MOST_REASONS);
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
  const hands = `${many} of ${whose} closest hands at the end use`;
  const other = named(given, 'the');
  const least = given.share === 0 ? `none uses ${other}` : `${tenthsOf(given.share)} use ${other}`;
  const most =
    kept.face === why.reason?.keep
      ? `Keep ${named(kept, whose)}: ${hands} it`
      : capitalized(`${hands} ${named(kept, whose)}`);
  return `${most}; ${least}.`;
}

function reasonSentence({ keep, reason }: ChoiceWhy): string | null {
  if (reason === null || keep.length < 2) return null;
  const alone = `keeping ${theTile(reason.keep)} instead of ${theTile(reason.pass)} makes at least half of the difference`;
  return `Mostly because of one tile: ${alone}.`;
}

function endSentence({ toGo: { played, named: instead } }: ChoiceWhy, whose: string): string | null {
  if (played - instead < CLEAR_TILES || inTenths(played) === inTenths(instead)) return null;
  return `${capitalized(whose)} rack then ends ${inTenths(instead)} away on average, not ${inTenths(played)}.`;
}

function sectionSentence({ sections }: ChoiceWhy, names: Review['sections']): string | null {
  const [most] = Object.entries(sections)
    .map(([id, shares]) => ({ id, shares, gain: tenths(shares.named) - tenths(shares.played) }))
    .sort((a, b) => b.gain - a.gain);
  if (!most || most.gain < 10 * CLEAR_SHARE) return null;
  return `More games then end closest to ${names[most.id] ?? most.id}: ${inTen(most.shares)}.`;
}

function lackSentence({ lacking: { played, named: instead } }: ChoiceWhy): string | null {
  if (played - instead < CLEAR_LACK) return null;
  return `Fewer tiles are then missing that no joker can replace: ${inTenths(instead)} instead of ${inTenths(played)}.`;
}

function jokerSentence({ idleJokers: { played, named: instead } }: ChoiceWhy): string | null {
  if (played - instead < CLEAR_TILES || inTenths(played) === inTenths(instead)) return null;
  return `Fewer jokers are then left over, as pairs take none: ${inTenths(instead)} instead of ${inTenths(played)}.`;
}

function goneSentence({ gone: { played, named: instead } }: ChoiceWhy, whose: string): string | null {
  // Of ten games the tiles are whole.
  if (played - instead < CLEAR_TILES) return null;
  return `Fewer of the tiles ${whose} closest hands lack are then gone from the wall: ${tenths(instead)} in 10 games instead of ${tenths(played)}.`;
}

function concealedSentence({ concealed }: ChoiceWhy, whose: string): string | null {
  if (tenths(concealed.played) - tenths(concealed.named) < 10 * CLEAR_SHARE) return null;
  return `Fewer of ${whose} closest hands must then stay concealed: ${inTen(concealed)}.`;
}

/** "5 in 10 instead of 2", "nearly all instead of 6 in 10". */
function inTen({ played, named: instead }: SideBySide): string {
  const plain = [played, instead].every((share) => tenths(share) > 0 && tenths(share) < 10);
  return plain
    ? `${tenths(instead)} in 10 instead of ${tenths(played)}`
    : `${tenthsOf(instead)} instead of ${tenthsOf(played)}`;
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
