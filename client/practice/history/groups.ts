// The rounds in groups: by day, by table or by card, the latest first.
import type { RoundSummary } from '../../../shared-engine/index.ts';
import { dayName, type ROUNDS } from './strings.ts';

export type GroupBy = keyof typeof ROUNDS.sorts;

export interface RoundGroup {
  readonly name: string;
  readonly rounds: readonly RoundSummary[];
}

/** Of rounds that come latest first; a group stands where its latest round does. */
export function groupsOf(rounds: readonly RoundSummary[], by: GroupBy): readonly RoundGroup[] {
  const groups = new Map<string, RoundSummary[]>();
  for (const round of rounds) {
    const name = groupName(round, by);
    const known = groups.get(name);
    if (known) known.push(round);
    else groups.set(name, [round]);
  }
  return [...groups].map(([name, members]) => ({ name, rounds: members }));
}

/** The first `count` rounds of these groups. */
export function firstOf(groups: readonly RoundGroup[], count: number): readonly RoundGroup[] {
  let left = count;
  const shown: RoundGroup[] = [];
  for (const { name, rounds } of groups) {
    if (left <= 0) break;
    shown.push({ name, rounds: rounds.slice(0, left) });
    left -= rounds.length;
  }
  return shown;
}

function groupName({ playedAt, place, table, card }: RoundSummary, by: GroupBy): string {
  switch (by) {
    case 'day':
      return dayName(new Date(playedAt));
    case 'card':
      return card.name;
    case 'table':
      return place === 'alone' || place === 'friends' ? `Table ${table}` : GROUP_PLACES[place];
  }
}

const GROUP_PLACES = {
  class: 'In a class',
  page: 'Alone, without the server',
  day: 'Deals of the day',
  tiles: 'With real tiles',
} as const;
