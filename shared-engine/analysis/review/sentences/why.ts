// Why the pass that is named is better, in words: the tile that matters, the hands that use it, where the two lead.
import type { PassWhy, SideBySide, TileUse } from '../../why/pass-why.ts';
import { inTenths } from '../basis.ts';
import type { Review } from '../review.ts';
import { groupName, theTile } from './tiles.ts';

/** So many of them are told, the most valued first. */
const MOST_REASONS = 3;
/** Differences from here on are told: shares, mean tiles to go, mean tiles lacking. */
const CLEAR_SHARE = 0.2;
const CLEAR_TILES = 0.3;
const CLEAR_LACK = 0.5;

export function whySentences(why: PassWhy, sections: Review['sections'], whose: string): readonly string[] {
  const all = [
    useSentence(why, whose),
    reasonSentence(why),
    endSentence(why),
    sectionSentence(why, sections, whose),
    lackSentence(why),
    jokerSentence(why),
    goneSentence(why, whose),
    concealedSentence(why, whose),
  ];
  return all.filter((sentence) => sentence !== null).slice(0, MOST_REASONS);
}

/** The tile to keep: the one that makes the difference, or the one that most hands use. */
function mattersMost({ keep, reason }: PassWhy): TileUse | undefined {
  return keep.find(({ face }) => face === reason?.keep) ?? keep.toSorted((a, b) => b.share - a.share)[0];
}

function useSentence(why: PassWhy, whose: string): string | null {
  const kept = mattersMost(why);
  const [given] = why.pass.toSorted((a, b) => a.share - b.share);
  if (!kept || !given || tenths(kept.share) - tenths(given.share) < 10 * CLEAR_SHARE) return null;
  const many = tenths(kept.share) === 10 ? 'all' : `${tenths(kept.share)} in 10`;
  const most = `${many} of ${whose} closest hands at the end use it`;
  const other = named(given, 'the');
  const least =
    tenths(given.share) === 0 ? `none uses ${other}` : `${tenths(given.share)} in 10 use ${other}`;
  return `Keep ${named(kept, whose)}: ${most}; ${least}.`;
}

function reasonSentence({ keep, reason }: PassWhy): string | null {
  if (reason === null || keep.length < 2) return null;
  const instead = `instead of ${theTile(reason.keep)}`;
  return `Passing ${theTile(reason.pass)} ${instead} makes at least half of the difference.`;
}

function endSentence({ toGo: { played, named: instead } }: PassWhy): string | null {
  if (played - instead < CLEAR_TILES || inTenths(played) === inTenths(instead)) return null;
  return `That ends ${inTenths(instead)} away on average, not ${inTenths(played)}.`;
}

function sectionSentence({ sections }: PassWhy, names: Review['sections'], whose: string): string | null {
  const [most] = Object.entries(sections)
    .map(([id, shares]) => ({ id, shares, gain: tenths(shares.named) - tenths(shares.played) }))
    .sort((a, b) => b.gain - a.gain);
  if (!most || most.gain < 10 * CLEAR_SHARE) return null;
  return `${names[most.id] ?? most.id} is then ${whose} closest section ${inTen(most.shares, 'times in')}.`;
}

function lackSentence({ lacking: { played, named: instead } }: PassWhy): string | null {
  if (played - instead < CLEAR_LACK) return null;
  return `Less is then left to find without jokers: ${inTenths(instead)} tiles instead of ${inTenths(played)}.`;
}

function jokerSentence({ idleJokers: { played, named: instead } }: PassWhy): string | null {
  if (played - instead < CLEAR_TILES || inTenths(played) === inTenths(instead)) return null;
  return `Fewer jokers are then left over, because pairs take none: ${inTenths(instead)} instead of ${inTenths(played)}.`;
}

function goneSentence({ gone: { played, named: instead } }: PassWhy, whose: string): string | null {
  if (played - instead < CLEAR_TILES || inTenths(played) === inTenths(instead)) return null;
  return `Fewer of the tiles ${whose} closest hands lack are then gone: ${inTenths(instead)} instead of ${inTenths(played)}.`;
}

function concealedSentence({ concealed }: PassWhy, whose: string): string | null {
  if (tenths(concealed.played) - tenths(concealed.named) < 10 * CLEAR_SHARE) return null;
  return `Fewer of ${whose} closest hands must then stay concealed: ${inTen(concealed, 'in')}.`;
}

/** "5 times in 10 instead of 2". */
function inTen({ played, named: instead }: SideBySide, unit: 'in' | 'times in'): string {
  return `${tenths(instead)} ${unit} 10 instead of ${tenths(played)}`;
}

function tenths(share: number): number {
  return Math.round(10 * share);
}

/** "the soap", "3 bam", "your pair of 3 bam". */
function named({ face, copies }: TileUse, whose: string): string {
  return copies > 1 ? `${whose} ${groupName({ face, count: copies })}` : theTile(face);
}
