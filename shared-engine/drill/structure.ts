// Messages for structural faults of a drill file: which entry of which deal is wrong, and what it must be.
import type { z } from 'zod';
import { type DealPlace, type DrillProblem, drillProblem } from './problem.ts';

type Issue = z.core.$ZodIssue;

const AMOUNT = 'a whole number from 0 to 14, or a range {"from", "to"} of such numbers';
const SEAT = 'a seat: 0, 1, 2 or 3';
const FACE = 'a tile such as "bam-3", "east", "red", "flower" or "joker"';

/** What each entry must be, by its name. */
const EXPECTED: ReadonlyMap<string, string> = new Map([
  ['format', '"quadrille-drill/1"'],
  ['title', 'a text of 1 to 80 characters that can all be seen'],
  ['task', 'a text of 1 to 600 characters that can all be seen'],
  ['note', 'a text of 1 to 600 characters that can all be seen'],
  ['form', '"alone", "tables" or "guided"'],
  ['ways', 'an object with the ways to play that this drill fixes'],
  ['secondCharleston', '"by-vote", "always" or "none"'],
  ['blindPasses', 'true or false'],
  ['courtesy', '"by-asking" or "none"'],
  ['cardHelp', '"printed", "nearest" or "none"'],
  ['passLog', 'true or false'],
  ['bots', 'an object with "styles" and "seed"'],
  ['styles', 'three bot styles: to the right, across and to the left'],
  ['seed', 'a text of 64 digits from 0 to 9 and a to f'],
  ['deals', 'a list of 1 to 60 deals'],
  ['id', 'a lowercase letter, then lowercase letters, digits and single hyphens, at most 40 characters'],
  ['seat', SEAT],
  ['dealer', SEAT],
  ['tiles', 'an object of the kind "random", "manual" or "sampled"'],
  ['kind', '"random", "manual" or "sampled"'],
  ['racks', `four lists of tiles, one for each seat; a tile is ${FACE.replace('a tile such as', 'written')}`],
  ['scripted', 'an object with "arrivals" and, where they are set, "stopped" and "asked"'],
  ['arrivals', 'an object with one to three tiles for each step, such as {"first-right": ["bam-3", …]}'],
  ['stopped', 'a list of at most three seats that stop before a second Charleston'],
  ['asked', 'a whole number from 0 to 3'],
  [
    'comments',
    'an object with a comment for each step, such as {"vote": {"chosen": 1, "words": "…"}}; "chosen" has tiles at a pass, no joker among them, 1 or 0 at the vote, 0 to 3 at the asking',
  ],
  ['chosen', 'one to three tiles that are passed, or a whole number from 0 to 3'],
  ['words', 'a text of 1 to 600 characters that can all be seen'],
  ['constraint', 'an object with the entries of a constraint'],
  ['from', 'a whole number from 0 to 14'],
  ['to', 'a whole number from 0 to 14'],
  ['section', 'the id of a section of the card'],
  ...['jokers', 'flowers', 'pairs', 'pungs', 'kongs', 'inARow', 'likeNumbers', 'toGo'].map(
    (name): [string, string] => [name, AMOUNT],
  ),
]);

/** The faults of a drill outside its deals, or of one deal. */
export function structureProblems(issues: readonly Issue[], deal: DealPlace | null): DrillProblem[] {
  return issues.map((issue) => drillProblem('not-in-format', deal, wordsOf(issue)));
}

function wordsOf(issue: Issue): string {
  const names = issue.path.filter((key) => typeof key === 'string');
  const place = names.join('.');
  if (issue.code === 'unrecognized_keys') {
    const inside = place === '' ? '' : ` in "${place}"`;
    return `unknown entry ${issue.keys.map(shown).join(', ')}${inside}; remove it.`;
  }
  if (place === '') return 'it must be an object with the entries of the format.';
  return `"${place}" must be ${EXPECTED.get(names.at(-1) ?? '') ?? 'as the format says'}.`;
}

function shown(key: string): string {
  return JSON.stringify(key.slice(0, 40));
}
