// What the page says once racks are done: of all of them together, and of each in a line.
import { inTenths } from '../../../shared-engine/index.ts';
import { VERDICTS } from '../../room/verdicts.ts';
import type { AnsweredRack } from './model.ts';
import { costOf, type PassSum, type SectionsMet, sectionsMet, verdictOf } from './summary.ts';

export function doneTitle(racks: number): string {
  return racks === 1 ? 'One rack done' : `${racks} racks done`;
}

/** `Rack 7: Costly, 1.2 tiles`. */
export function rackSummary({ nth, answer }: AnsweredRack): string {
  if (answer.kind === 'sections') return `Rack ${nth}: ${SECTIONS_MET[sectionsMet(answer)].toLowerCase()}`;
  const { name } = VERDICTS[verdictOf(answer)];
  const cost = inTenths(costOf(answer));
  return `Rack ${nth}: ${name}${cost === '0.0' ? '' : `, ${tiles(cost)}`}`;
}

/** What the passes cost together, in the unit that each was judged in. */
export function costSentences({ cost, racks, most }: PassSum): readonly string[] {
  const all = inTenths(cost);
  if (all === '0.0') return ['Together, your passes come as close to a hand as the best we found.'];
  if (racks === 1) return [`The best pass comes ${tiles(all)} closer to a hand than yours, on average.`];
  const each = inTenths(cost / racks);
  return [
    `All ${racks} racks together, the best passes come ${tiles(all)} closer to a hand than yours.`,
    each === '0.0' ? 'That is hardly anything a rack.' : `That is ${tiles(each)} a rack, on average.`,
    ...(most === null ? [] : [`Rack ${most.nth} alone makes ${inTenths(most.cost)} of it.`]),
  ];
}

/** `1.0 tile`, `1.2 tiles`. */
function tiles(shown: string): string {
  return `${shown} ${shown === '1.0' ? 'tile' : 'tiles'}`;
}

export const SECTIONS_MET: Readonly<Record<SectionsMet, string>> = {
  both: 'Both among the closest',
  one: 'One among the closest',
  neither: 'Neither among the closest',
};
