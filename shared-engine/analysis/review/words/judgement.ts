// What the playouts found, in one or two sentences.

import type { DeepJudgement, Finalist, Measured } from '../judgement.ts';
import { inTenths } from '../rounding.ts';
import { tileList } from './tiles.ts';

export type Judged = Omit<DeepJudgement, 'words'>;

/** What kind of choice it was, which says what a rival's number means. */
export type ChoiceKind = 'pass' | 'blind' | 'vote' | 'ask';

export function judgementWords(judged: Judged, kind: ChoiceKind): readonly string[] {
  const gift = giftSentence(judged.gift);
  return [verdictSentence(judged, kind), ...(gift === null ? [] : [gift])];
}

function verdictSentence(judged: Judged, kind: ChoiceKind): string {
  const { verdict, loss, rival, finalists, rivals, smallLoss, worlds } = judged;
  if (rival === null || loss === null) return 'Nothing else could have been chosen.';
  const other = rivalPhrase(finalists[rival]!, kind);
  switch (verdict) {
    case 'better-exists':
      return `Played on in ${worlds} worlds that fit what was known, something clearly better was there: ${other} would have added ${pointsOf(loss)}.`;
    case 'as-good':
      return `Played on in ${worlds} worlds that fit what was known, this was as good as the best: ${rivals === 1 ? 'the other choice is not' : `none of the ${rivals} others tried is`} ahead by more than ${smallLoss === 1 ? '1 point' : `${smallLoss} points`} of outlook.`;
    case 'too-close':
      return loss.value > 0
        ? `Too close to call after ${worlds} worlds that fit what was known: ${other} comes out ahead by ${pointsOf(loss)}.`
        : `Too close to call after ${worlds} worlds that fit what was known: ${other} does not come out ahead, give or take ${inTenths(loss.within)} points of outlook.`;
  }
}

/** "to give 3 bam and a flower", "to pass on 2 unseen". */
export function rivalPhrase({ tiles, number }: Finalist, kind: ChoiceKind): string {
  switch (kind) {
    case 'pass':
      return `to give ${tileList(tiles)}`;
    case 'blind':
      return number === 0 ? 'to pass nothing on unseen' : `to pass on ${number} unseen`;
    case 'vote':
      return number === 1 ? 'to go on' : 'to stop';
    case 'ask':
      return number === 0 ? 'to ask for none' : `to ask for ${number}`;
  }
}

export function pointsOf({ value, within }: Measured): string {
  return `${inTenths(value)} points of outlook, give or take ${inTenths(within)}`;
}

/** Only where the neighbour's gain or loss is beyond doubt. */
function giftSentence(gift: Measured | null): string | null {
  if (gift === null || Math.abs(gift.value) <= gift.within) return null;
  const than = gift.value > 0 ? 'more' : 'less';
  const { value, within } = gift;
  return `To the seat it went to it was worth ${inTenths(Math.abs(value))} points of outlook ${than} than a legal pass is on average, give or take ${inTenths(within)}.`;
}
