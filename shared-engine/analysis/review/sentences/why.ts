// Why the pass that is named is better, in words: the one tile that makes most of it, and how the two differ at the end.
import type { Verdict } from '../../comparison/verdict.ts';
import type { ChoiceWhy, SideBySide, TileUse } from '../../why/choice-why.ts';
import { inTenths } from '../basis.ts';
import type { Review } from '../review.ts';
import { endsFarther, isOfThisChoice, leadSentence, moreHands, onAverage } from './leads.ts';
import { capitalized, tenths, tenthsOf } from './phrases.ts';
import { groupName, theTile, tileName } from './tiles.ts';

/** So many of them are told, the most valued first. */
const MOST_REASONS = 3;
/** Differences from here on are told: shares, mean tiles to go, mean tiles lacking. */
const CLEAR_SHARE = 0.2;
/** What fewer of the games end in explains nothing, nor a tile that fewer of the hands use. */
const SOME_SHARE = 0.3;
const CLEAR_TILES = 0.3;
const CLEAR_LACK = 0.5;
const CLEAR_HANDS = 1;
/**
 * A hand that is a tile farther away counts a quarter: where a rack ends farther away, so many more must be near. Where it
 * ends more than a tile farther away, hands near it are no reason.
 */
const MORE_HANDS = 1.25;
const HANDS_A_TILE = 3;

/** Whose rack it is, and how much worse the choice made was. */
interface WhyTerms {
  readonly whose: string;
  readonly verdict: Verdict;
}

/**
 * Only the tile that alone makes at least half of the difference is called the reason: "keep" and "one tile makes" stand
 * for it. All else is told as what differs, which may be the reason or go with it. Of a costly choice it is always told
 * which section each of the two leads to, and of every choice where the better one ends clearly farther away.
 */
export function whySentences(
  why: ChoiceWhy,
  sections: Review['sections'],
  { whose, verdict }: WhyTerms,
): readonly string[] {
  const farther = fartherSentence(why, whose);
  const end = endSentence(why, whose) ?? farther;
  const ends = end === null ? `${capitalized(whose)} rack then ends` : 'It is then';
  const section = sectionSentence(why, sections, ends);
  const others = [
    end,
    section,
    lackSentence(why),
    jokerSentence(why),
    goneSentence(why, whose),
    concealedSentence(why, whose),
    handsSentence(why, whose),
  ].flatMap((sentence) => (sentence === null ? [] : [sentence]));
  const use = useSentences(why, whose);
  const reason = reasonSentence(why, whose);
  // Which tile it is tells what, not why: it comes first only where its use is told.
  const told =
    use.length > 0
      ? [...use, ...[...reason, ...others].slice(0, MOST_REASONS - 1)]
      : [...others.slice(0, MOST_REASONS - reason.length), ...reason];
  if (told.length === 0) return [];
  const lead = verdict === 'costly' ? (section ?? leadSentence(why, sections, whose)) : null;
  const against = farther === null ? yetSentence(why, whose) : null;
  return [...new Set([...told, lead, against])].filter((sentence) => sentence !== null);
}

/** The tile that makes the difference, or the one kept that most hands use. */
function mattersMost({ keep, reason }: ChoiceWhy): TileUse | undefined {
  return keep.find(({ face }) => face === reason?.keep) ?? keep.toSorted((a, b) => b.share - a.share)[0];
}

/** The tile given for it, or the one that fewest hands use. */
function mattersLeast({ pass, reason }: ChoiceWhy): TileUse | undefined {
  return pass.find(({ face }) => face === reason?.pass) ?? pass.toSorted((a, b) => a.share - b.share)[0];
}

/** Two sentences where both are pairs or more, or of a bot: in one they are too long to be read at once. */
function useSentences(why: ChoiceWhy, whose: string): readonly string[] {
  const kept = mattersMost(why);
  const given = mattersLeast(why);
  if (!kept || !given || tenths(kept.share) < 10 * SOME_SHARE) return [];
  if (tenths(kept.share) - tenths(given.share) < 10 * CLEAR_SHARE || tenths(given.share) > 5) return [];
  const many = kept.share === 1 ? 'all' : tenthsOf(kept.share);
  const hands = `${many} of ${whose} closest hands at the close use`;
  const other = named(given, 'a');
  const least = given.share === 0 ? `none uses ${other}` : `${tenthsOf(given.share)} use ${other}`;
  const most =
    kept.face === why.reason?.keep
      ? `${keepWords(named(kept, whose), whose)}: ${hands} it`
      : capitalized(`${hands} ${named(kept, whose)}`);
  return (kept.copies > 1 && given.copies > 1) || whose !== 'your'
    ? [`${most}.`, `${capitalized(least)}.`]
    : [`${most}; ${least}.`];
}

/** A reader is told what to keep; of a bot it is said what it had better kept. */
function keepWords(tiles: string, whose: string): string {
  return whose === 'your' ? `Keep ${tiles}` : `${capitalized(tiles)} is worth keeping`;
}

/** Empty where the two differ in one tile only. */
function reasonSentence(why: ChoiceWhy, whose: string): readonly string[] {
  const { keep, pass, reason } = why;
  if (reason === null || keep.length < 2) return [];
  if (useSentences(why, whose).length > 0) return ['Keeping it makes at least half of the difference.'];
  const kept = keep.find(({ face }) => face === reason.keep);
  const given = pass.find(({ face }) => face === reason.pass);
  const whole = kept === undefined ? theTile(reason.keep) : named(kept, whose);
  const one = (given?.copies ?? 1) > 1 ? `one ${tileName(reason.pass)}` : theTile(reason.pass);
  return [`One tile makes at least half of the difference: keeping ${whole} instead of ${one}.`];
}

function endSentence(why: ChoiceWhy, whose: string): string | null {
  const { played, named: instead } = why.toGo;
  if (!isOfThisChoice(why) || played - instead < CLEAR_TILES || inTenths(played) === inTenths(instead))
    return null;
  return `${capitalized(whose)} rack then ends ${inTenths(instead)} away on average, not ${inTenths(played)}.`;
}

/** A section in which few games end explains little, and may read as the opposite of what was passed. */
function sectionSentence({ sections }: ChoiceWhy, names: Review['sections'], ends: string): string | null {
  const [most] = Object.entries(sections)
    .map(([id, shares]) => ({ id, shares, gain: tenths(shares.named) - tenths(shares.played) }))
    .sort((a, b) => b.gain - a.gain);
  if (!most || most.gain < 10 * CLEAR_SHARE || tenths(most.shares.named) < 10 * SOME_SHARE) return null;
  const section = names[most.id] ?? most.id;
  return `${ends} closest to ${section} more often: ${gamesInTen(most.shares)}.`;
}

/** Where the rack ends farther away, but near to more hands. */
function fartherSentence(why: ChoiceWhy, whose: string): string | null {
  const { handsNear, toGo } = why;
  if (!hasMoreHands(why) || !endsFarther(why)) return null;
  const away = `${inTenths(toGo.named)} on average, not ${inTenths(toGo.played)}`;
  const hands = `more hands are closest or one tile farther away: ${Math.round(handsNear.named)}, not ${Math.round(handsNear.played)}`;
  return `${capitalized(whose)} rack then ends farther away, ${away}, but ${hands}.`;
}

/** What speaks against the better choice for a reader who looks at the tiles to go alone. */
function yetSentence(why: ChoiceWhy, whose: string): string | null {
  if (!endsFarther(why, CLEAR_TILES)) return null;
  const { played, named: instead } = why.toGo;
  return `Yet ${whose} rack then ends farther away, ${inTenths(instead)} on average, not ${inTenths(played)}.`;
}

function handsSentence(why: ChoiceWhy, whose: string): string | null {
  if (!hasMoreHands(why) || endsFarther(why)) return null;
  const { played, named: instead } = why.handsNear;
  return `${capitalized(moreHands(whose))}: about ${Math.round(instead)} hands, not ${Math.round(played)}.`;
}

function hasMoreHands(why: ChoiceWhy): boolean {
  const { handsNear, toGo } = why;
  const { played, named: instead } = handsNear;
  const farther = endsFarther(why) ? toGo.named - toGo.played : 0;
  if (farther > 1) return false;
  return instead - played >= CLEAR_HANDS && instead >= played * (MORE_HANDS + HANDS_A_TILE * farther);
}

function lackSentence({ lacking }: ChoiceWhy): string | null {
  if (lacking.played - lacking.named < CLEAR_LACK) return null;
  return `Fewer tiles are then missing in pairs and singles, where no joker helps: ${onAverage(lacking)}.`;
}

function jokerSentence({ idleJokers }: ChoiceWhy): string | null {
  if (idleJokers.played - idleJokers.named < CLEAR_TILES) return null;
  return `Fewer jokers are then left over, as pairs and singles take none: ${onAverage(idleJokers)}.`;
}

function goneSentence({ gone }: ChoiceWhy, whose: string): string | null {
  if (gone.played - gone.named < CLEAR_TILES) return null;
  return `The others then hold fewer of the tiles that ${whose} closest hands need: ${onAverage(gone)}.`;
}

function concealedSentence({ concealed }: ChoiceWhy, whose: string): string | null {
  if (tenths(concealed.played) - tenths(concealed.named) < 10 * CLEAR_SHARE) return null;
  return `Fewer of ${whose} closest hands must then stay concealed: ${inTen(concealed)}.`;
}

/** "5 in 10 games instead of 2", "in nearly all games instead of 6 in 10". */
function gamesInTen({ played, named: instead }: SideBySide): string {
  const share = tenths(instead);
  const games = `${share > 0 && share < 10 ? '' : 'in '}${tenthsOf(instead)} games`;
  return `${games} instead of ${bothPlain(played, instead) ? tenths(played) : tenthsOf(played)}`;
}

/** "1 in 10 instead of 9", "hardly any instead of 6 in 10". */
function inTen({ played, named: instead }: SideBySide): string {
  return `${tenthsOf(instead)} instead of ${bothPlain(played, instead) ? tenths(played) : tenthsOf(played)}`;
}

function bothPlain(...shares: readonly number[]): boolean {
  return shares.every((share) => tenths(share) > 0 && tenths(share) < 10);
}

/** "the soap", "3 bam", "your pair of 3 bam". */
function named({ face, copies }: TileUse, whose: string): string {
  return copies > 1 ? `${whose} ${groupName({ face, count: copies })}` : theTile(face);
}
