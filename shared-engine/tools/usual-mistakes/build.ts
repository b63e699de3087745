// npm run build:usual-mistakes [-- --seed TEXT --rounds N]: plays rounds of four typical bots, judges every choice of one
// of them as the page does, and writes down how often each kind of mistake was made.
import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import {
  analyzeDecision,
  createAnalyst,
  DEEP_BUDGET,
  reviewRound,
  WIN_MODEL,
  withDeepAnalysis,
} from '../../analysis/index.ts';
import { chooseFor, finishRound } from '../../bots/index.ts';
import { houseCard } from '../../card/house/card.ts';
import { createSwarKernel, loadSimd } from '../../kernels/index.ts';
import { countMistakes, countSureMistakes } from '../../practice/mistake-counts.ts';
import { type StoredChoice, storedChoices } from '../../practice/stored-round.ts';
import { begin, openRound, SEATS, STANDARD_TERMS, seatView, seedFrom, stream } from '../../rules/index.ts';

const root = new URL('../../../', import.meta.url);
const { values } = parseArgs({
  options: { seed: { type: 'string', default: 'usual' }, rounds: { type: 'string', default: '300' } },
});
const { seed } = values;
const rounds = Number(values.rounds);
if (!Number.isInteger(rounds) || rounds < 1) {
  process.stderr.write(`--rounds takes a whole number above 0, not "${values.rounds}".\n`);
  process.exit(2);
}

const card = houseCard();
const kernel = createSwarKernel(card);
const analyst = createAnalyst(card, await loadSimd());
const judged: (readonly StoredChoice[])[] = [];
for (let nth = 0; nth < rounds; nth++) {
  judged.push(judgedRound(nth));
  process.stderr.write(`\r${nth + 1} of ${rounds} rounds`);
}

const source = {
  command: `npm run build:usual-mistakes -- --seed ${seed} --rounds ${rounds}`,
  judge: WIN_MODEL.made.date,
  rounds,
};
const path = new URL('shared-engine/practice/usual-mistakes.ts', root);
writeFileSync(
  path,
  `// How often a typical bot makes each kind of mistake; written by the command it names, never by hand.

/** Rounds by part of the exchange, as in \`MistakeCounts\`, and what was sure choice by choice, as in \`SureMistakes\`. */
export const USUAL_MISTAKES = ${JSON.stringify({ source, ...countMistakes(judged), sure: countSureMistakes(judged) })} as const;
`,
);
execFileSync(new URL('node_modules/.bin/biome', root).pathname, ['check', '--write', path.pathname]);
process.stdout.write(`${JSON.stringify(source)}\n`);

function judgedRound(nth: number): readonly StoredChoice[] {
  const deal = { seed: seedFrom(stream(seed, `round ${nth}`)), dealer: SEATS[nth % 4]! };
  const { round } = finishRound(begin(openRound(deal, STANDARD_TERMS.alone)), (view, random) =>
    chooseFor('typical', view, kernel, random),
  );
  const { record } = seatView(round, 0);
  let review = reviewRound(record, kernel);
  for (const place of review.choices.keys()) {
    const analysis = analyzeDecision(analyst, record, place, { budget: DEEP_BUDGET });
    review = withDeepAnalysis(review, place, analysis);
  }
  return storedChoices(review);
}
