// Reads a pattern typed in the shorthand, or says group by group what is wrong and what to type instead.
import { canonicalPattern, type PatternBody } from '../canonical.ts';
import type { CardDomain, CardGroup } from '../format.ts';
import { readGroup } from './group.ts';
import { readLimit } from './limit.ts';
import { openSuits, type SuitsInUse } from './suits.ts';

export interface ShorthandProblem {
  /** Number of the group, from 1; null for what is no group. */
  readonly group: number | null;
  /** What is wrong and what to do. */
  readonly message: string;
}

export type ReadShorthand =
  | { readonly ok: true; readonly pattern: PatternBody }
  | { readonly ok: false; readonly problems: readonly ShorthandProblem[] };

/** Points of a hand whose shorthand names none. */
export const USUAL_POINTS = 25;

/** Longer texts are no pattern: fourteen groups with everything written out take less. */
const MAX_LENGTH = 400;

interface Reading {
  readonly suits: SuitsInUse;
  readonly groups: CardGroup[];
  readonly limits: Map<string, CardDomain>;
  points: number | null;
  concealed: boolean;
}

/** Never throws; an empty text is a pattern without groups. Says nothing of whether the set can make the pattern. */
export function readShorthand(text: string): ReadShorthand {
  if (text.length > MAX_LENGTH) {
    return {
      ok: false,
      problems: [
        { group: null, message: `That is too long for one hand; use at most ${MAX_LENGTH} characters.` },
      ],
    };
  }
  const reading: Reading = {
    suits: openSuits(),
    groups: [],
    limits: new Map(),
    points: null,
    concealed: false,
  };
  const problems: ShorthandProblem[] = [];
  let group = 0;
  for (const token of tokensOf(text)) {
    const isGroup = /^\d\D/.test(token);
    if (isGroup) group++;
    const message = take(reading, token);
    if (message !== null) problems.push({ group: isGroup ? group : null, message });
  }
  if (reading.groups.length > 14) {
    problems.push({ group: 15, message: 'A hand has at most 14 groups; join some or take them out.' });
  }
  if (problems.length > 0) return { ok: false, problems };
  const { groups, limits, points, concealed } = reading;
  const body = { points: points ?? USUAL_POINTS, concealed, groups };
  const where = limits.size === 0 ? {} : { where: Object.fromEntries(limits) };
  return { ok: true, pattern: canonicalPattern({ ...body, ...where }) };
}

/** Words apart; a slash begins a word of its own and takes a suit with it. */
function tokensOf(text: string): string[] {
  const apart = text
    .toLowerCase()
    .replaceAll('×', 'x')
    .replaceAll('−', '-')
    .replace(/\s*([=,])\s*/g, '$1')
    .replace(/\//g, ' /')
    // A group that follows its slash at once: `/3a`.
    .replace(/\/(?=\d\S)/g, '/ ');
  return apart.split(/\s+/).filter((token) => token !== '');
}

/** Takes one word into the reading; returns what is wrong with it, or null. */
function take(reading: Reading, token: string): string | null {
  if (token.startsWith('/')) return reading.suits.turn(token.slice(1));
  if (token.includes('=')) return readLimit(token, reading.limits);
  if (/^\d\D/.test(token)) {
    const read = readGroup(token, reading.suits);
    if (typeof read === 'string') return read;
    reading.groups.push(read);
    return null;
  }
  if (/^\d+$/.test(token)) return takePoints(reading, token);
  if ('concealed'.startsWith(token)) {
    reading.concealed = true;
    return null;
  }
  return `"${token}" is nothing that I know here; a group is a number of tiles and a tile without a blank, like 3a or 2flower.`;
}

function takePoints(reading: Reading, token: string): string | null {
  if (reading.points !== null) {
    return `The points are ${reading.points} already; type "${token}" together with its tile if it is a group.`;
  }
  if (Number(token) > 1000) return `A hand has 0 to 1000 points, not ${token}.`;
  reading.points = Number(token);
  return null;
}
