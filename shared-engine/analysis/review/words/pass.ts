// The two sentences about a pass: what it kept and gave, and what the best one would have done.
import { MOVES } from '../../../rules/exchange/schedule.ts';
import { BASIS } from '../basis.ts';
import type { Group, PassReview } from '../review.ts';
import { inTenths } from '../rounding.ts';
import { GIFT_NAMES, giftPhrase, isSafer } from './gift.ts';
import { familiesLeft, listed, shareOf, startingBig, tilesOf, VOICES } from './phrases.ts';
import { groupName, tileList } from './tiles.ts';

type Judged = Omit<PassReview, 'words' | 'judgement'>;
type Names = Readonly<Record<string, string>>;

const TOWARD = { right: 'to the right', across: 'across', left: 'to the left' };

export function passWords(review: Judged, families: Names): readonly [string, string] {
  return [whatItKept(review, families), whatWasBest(review)];
}

function whatItKept(review: Judged, families: Names): string {
  const { subject } = VOICES[review.by];
  const unseen = review.blind > 0 ? ` with ${review.blind} more unseen` : '';
  const passed = `${subject} passed ${tileList(review.played.tiles)} ${TOWARD[MOVES[review.step].toward]}${unseen}`;
  const kept = listed([...groupsKept(review), familiesKept(review, families)]);
  return `${startingBig(passed)}; that ${kept}, and ${giftPhrase(review.played)}.`;
}

function groupsKept({ by, played, parts }: Judged): readonly string[] {
  const { whose } = VOICES[by];
  const { broken, groups, groupCount, groupsKept: kept } = parts;
  const whole = ({ face, count }: Group) => played.tiles.filter((tile) => tile === face).length === count;
  const taken = [
    ...phraseOf(`gave up ${whose}`, broken.filter(whole)),
    ...phraseOf(
      `took from ${whose}`,
      broken.filter((group) => !whole(group)),
    ),
  ];
  if (kept === 0) return taken;
  if (groupCount === 1) return [`kept ${whose} ${groupName(groups[0]!)} whole`];
  if (kept === groupCount) return [`kept ${shareOf(kept, groupCount)} of ${whose} groups whole`];
  return [...taken, `kept ${kept} of ${whose} ${groupCount} groups whole`];
}

function phraseOf(start: string, groups: readonly Group[]): readonly string[] {
  return groups.length === 0 ? [] : [`${start} ${listed(groups.map(groupName))}`];
}

function familiesKept({ open, openAfter, parts }: Judged, families: Names): string {
  const { familyCount, familiesKept: kept } = parts;
  const left = familiesLeft(kept, familyCount);
  if (familyCount === 1) return `${left} (${families[open[0]!]})`;
  const lost = open.filter((id) => !openAfter.includes(id)).map((id) => families[id]!);
  return lost.length === 1 || lost.length === 2 ? `${left} (out of reach: ${lost.join('; ')})` : left;
}

function whatWasBest(review: Judged): string {
  const { legal, loss, played, best, parts } = review;
  if (legal === 1) return 'No other pass was possible.';
  if (loss === 0) {
    const stayed = parts.formed.length > 0 && parts.broken.length === 0;
    const formed = stayed ? `, and the newly formed ${listed(parts.formed.map(groupName))} stayed whole` : '';
    return `This pass was best under these assumptions: of ${legal} possible ones none came out ahead${formed}${despite(played)}.`;
  }
  const swap = `best under these assumptions was to keep ${tileList(parts.betterToKeep)} and give ${tileList(parts.betterToGive)} instead`;
  if (loss < BASIS.smallLoss) {
    const gain = inTenths(loss);
    const small = gain === '0.0' ? 'by too little to notice' : `by only ${tilesOf(gain)} on average`;
    const safer = isSafer(played.gift, best.gift)
      ? ', and by the rules of thumb the pass played was the safer gift'
      : '';
    return startingBig(`${swap}, ${small}${safer}.`);
  }
  const but = isSafer(played.gift, best.gift) ? despite(best) : '';
  return startingBig(
    `${formedFirst(review)}${swap}, ${becauseOf(review)}, ${tilesOf(inTenths(loss))} nearer on average${but}.`,
  );
}

/** Where the numbers part from a rule of thumb, the review says so. */
function despite({ gift }: PassReview['best']): string {
  if (gift === 'nothing-special') return '';
  return `, though, against the rule of thumb, it gives ${GIFT_NAMES[gift]}`;
}

/** The largest of the new groups stands for them all. */
function formedFirst({ parts }: Judged): string {
  const [largest] = [...parts.formed].sort((a, b) => b.count - a.count);
  if (!largest) return '';
  return `a ${groupName(largest)} had just formed, by the rule of thumb a reason to read the rack anew: `;
}

/** What the best pass kept that the pass played did not; the plainest difference first. */
export function becauseOf({ by, played, best, parts }: Judged): string {
  const { whose } = VOICES[by];
  const saved = parts.broken.filter(({ face }) => !holds(parts.brokenByBest, face));
  const spent = parts.brokenByBest.filter(({ face }) => !holds(parts.broken, face));
  if (saved.length > spent.length) {
    return `so that ${whose} ${listed(saved.map(groupName))} ${saved.length === 1 ? 'stays' : 'stay'} whole`;
  }
  if (parts.familiesKeptByBest > parts.familiesKept) {
    return `which leaves ${shareOf(parts.familiesKeptByBest, parts.familyCount)} families within reach`;
  }
  if (best.toGo < played.toGo) return `which leaves the tiles kept at ${best.toGo} to go, not ${played.toGo}`;
  return 'which keeps tiles that fit better with what may arrive';
}

function holds(groups: readonly Group[], face: Group['face']): boolean {
  return groups.some((group) => group.face === face);
}
