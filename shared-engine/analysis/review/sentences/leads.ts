// Where two choices lead when no difference between them stands out: how they end, and what differs a little.
import type { ChoiceWhy, FartherUse, SideBySide } from '../../why/choice-why.ts';
import { inTenths } from '../basis.ts';
import type { Review } from '../review.ts';
import { capitalized, tenths, tenthsOf } from './phrases.ts';
import { theTile } from './tiles.ts';

/** Mean differences from here on are told where none stands out: tiles missing in pairs and singles, other tiles. */
const SLIGHT_LACK = 0.3;
const SLIGHT_TILES = 0.2;
const SLIGHT_HANDS = 0.3;
const SLIGHTLY_MORE = 1.1;
/** A tenth of a tile, as it is shown, is told as no difference, for the better choice or against it. */
const TOLD_FARTHER = 0.15;

/**
 * Whether this choice makes how far away the two racks end. Where a rack ends farther away than what was kept of it, it
 * lost tiles that it needed in passes still to come, which are played simply.
 */
export function isOfThisChoice({ toGo, toGoKept }: ChoiceWhy): boolean {
  return (['played', 'named'] as const).every((of) => Number(inTenths(toGo[of])) <= toGoKept[of]);
}

/** Whether the better choice is seen to end farther away, by more than a tenth or by so many tiles. */
export function endsFarther(why: ChoiceWhy, by = TOLD_FARTHER): boolean {
  const { played, named } = why.toGo;
  return isOfThisChoice(why) && Number(inTenths(named)) - Number(inTenths(played)) >= by;
}

/** Of passes that differ in several tiles, where no difference is told though one was found. */
export const NO_ONE_REASON = 'We found no one reason for that.';
/** Of two that differ in one tile. */
export const NO_OTHER_REASON = 'The two differ in one tile; how the racks end does not show why it matters.';

/** How near both come, and to which section. */
export function leadSentences(
  why: ChoiceWhy,
  sections: Review['sections'],
  whose: string,
): readonly string[] {
  const { toGo } = why;
  const [played, instead] = mostOften(why, sections);
  if (!isOfThisChoice(why)) {
    const lead = leadSentence(why, sections, whose);
    return lead === null ? [] : [lead];
  }
  const away = inTenths(toGo.played);
  if (away === inTenths(toGo.named)) {
    if (played === undefined || played !== instead) {
      const apart = leadSentence(why, sections, whose, 'With the better choice it is most often');
      const ends = `Either way ${whose} rack ends about ${away} away on average.`;
      return apart === null ? [ends] : [ends, apart];
    }
    return [`Either way ${whose} rack ends about ${away} away on average, most often closest to ${played}.`];
  }
  const lead = leadSentence(why, sections, whose, FOLLOWING);
  return [nearlySentence(why, whose), ...(lead === null ? [] : [lead])];
}

/** The distances at the end, where they differ less than is told as a reason or speak against the better choice. */
function nearlySentence(why: ChoiceWhy, whose: string): string {
  const { toGo } = why;
  const [played, instead] = [inTenths(toGo.played), inTenths(toGo.named)];
  const rack = `${capitalized(whose)} rack`;
  if (Number(played) - Number(instead) >= TOLD_FARTHER) {
    return `${rack} then ends only a little closer: ${instead} away on average, not ${played}.`;
  }
  return endsFarther(why)
    ? `${rack} then ends farther away, ${instead} on average, not ${played}, and still wins more often.`
    : `${rack} then ends about as far away: ${instead} on average, against ${played}.`;
}

/** After a sentence about the rack. */
const FOLLOWING = 'It is then most often';

/** The section that each of the two most often ends closest to. */
export function leadSentence(
  why: ChoiceWhy,
  names: Review['sections'],
  whose: string,
  start = `${capitalized(whose)} rack then most often ends`,
): string | null {
  const [played, instead] = mostOften(why, names);
  if (played === undefined || instead === undefined) return null;
  return played === instead
    ? `Either way ${whose} rack most often ends closest to ${played}.`
    : `${start} closest to ${instead}, not to ${played}.`;
}

function mostOften({ sections }: ChoiceWhy, names: Review['sections']): readonly (string | undefined)[] {
  return (['played', 'named'] as const).map((of) => {
    const [most] = Object.entries(sections).toSorted(([, a], [, b]) => b[of] - a[of]);
    return most && (names[most[0]] ?? most[0]);
  });
}

/** The first thing that differs a little, if any: how the hands are built, what is gone, what stays open. */
export function slightSentences(
  why: ChoiceWhy,
  sections: Review['sections'],
  whose: string,
): readonly string[] {
  const { lacking, gone, idleJokers, handsNear, sectionsKept, farther } = why;
  if (isLess(lacking, SLIGHT_LACK)) {
    return [
      `Slightly fewer tiles are then missing in pairs and singles, where no joker helps: ${onAverage(lacking)}.`,
    ];
  }
  if (isLess(gone, SLIGHT_TILES)) {
    return [
      `The others then hold slightly fewer of the tiles that ${whose} closest hands need: ${onAverage(gone)}.`,
    ];
  }
  if (isLess(idleJokers, SLIGHT_TILES)) {
    return [
      `Slightly fewer jokers are then left over, as pairs and singles take none: ${onAverage(idleJokers)}.`,
    ];
  }
  if (hasSlightlyMore(handsNear) && !endsFarther(why)) {
    const { played, named } = handsNear;
    return [`Slightly ${moreHands(whose)}: ${inTenths(named)} hands on average, not ${inTenths(played)}.`];
  }
  const { played, named } = sectionsKept;
  if (named > played) {
    const keeping = named === 1 ? '1 section of the card keeps' : `${named} sections of the card keep`;
    const other = played === 0 ? 'none' : `only ${played}`;
    return [
      `With the better pass, ${keeping} a hand within a tile of the closest; with the pass made, ${other}.`,
    ];
  }
  if (farther !== null && tenths(farther.shares.named) > 1 + tenths(farther.shares.played)) {
    return fartherSentences(farther, sections, whose);
  }
  return [];
}

/** Hands that are nearly as close as the closest: how the start of a sentence about their number goes on. */
export function moreHands(whose: string): string {
  return `more hands are then among ${whose} closest, or only one tile farther away`;
}

/** Two sentences: in one they are too long to be read at once. */
function fartherSentences(
  { keep, pass, shares, section }: FartherUse,
  sections: Review['sections'],
  whose: string,
): readonly string[] {
  const uses = `${tenthsOf(shares.named)} use ${theTile(keep)}, most of them in ${sections[section] ?? section}`;
  return [
    `Among hands one tile farther away than ${whose} closest, ${uses}.`,
    `${capitalized(tenthsOf(shares.played))} use ${theTile(pass)}.`,
  ];
}

function hasSlightlyMore({ played, named }: SideBySide): boolean {
  return named - played >= SLIGHT_HANDS && named >= played * SLIGHTLY_MORE;
}

function isLess({ played, named }: SideBySide, by: number): boolean {
  return played - named >= by;
}

/** "0.8 on average, not 1.5". */
export function onAverage({ played, named }: SideBySide): string {
  return inTenths(named) === '0.0'
    ? `hardly any, not ${inTenths(played)} on average`
    : `${inTenths(named)} on average, not ${inTenths(played)}`;
}
