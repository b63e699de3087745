// npm run build:pass-selection [-- --seed TEXT --date YYYY-MM-DD --situations N --rounds N]: lets the comparison judge
// situations, fits what a seat passes by to what it prefers, plays on with that and judges again; writes what it came to.
import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { houseCard } from '../../card/house/card.ts';
import type { FittedSelection, Selection } from '../../kernels/pass-selection/selection.ts';
import { loadSimd } from '../../kernels/simd/module.ts';
import { progressBar } from '../win-model/progress-bar.ts';
import { fittedSpareShare, fittedSteps } from './fit.ts';
import { judgedSituations } from './situations.ts';

const root = new URL('../../../', import.meta.url);

/** The nearest hands and little else: where the first round begins, whatever was written before. */
const FIRST: Selection = { steps: { tile: 3, pair: 0, concealed: 0 }, spareShare: 0.5 };

const { values } = parseArgs({
  options: {
    seed: { type: 'string', default: 'pass-selection' },
    date: { type: 'string', default: new Date().toISOString().slice(0, 10) },
    situations: { type: 'string', default: '600' },
    rounds: { type: 'string', default: '2' },
  },
});
const { seed, date } = values;
const situations = wholeNumber('situations', values.situations);
const rounds = wholeNumber('rounds', values.rounds);

const card = houseCard();
const simd = await loadSimd();
let policy = FIRST;
for (let round = 1; round <= rounds; round++) {
  const tell = progressBar(`situations of round ${round}`, situations);
  const judged = judgedSituations(card, simd, { seed: `${seed} ${round}`, situations, policy, tell });
  const fits = fittedSteps(card, judged);
  const [best] = fits;
  policy = { steps: best!.steps, spareShare: fittedSpareShare(card, judged, best!.steps) };
  for (const { steps, logLikelihood } of fits.slice(0, 6)) {
    process.stderr.write(`${JSON.stringify(steps)} log-likelihood ${logLikelihood.toFixed(2)}\n`);
  }
}
const fitted: FittedSelection = {
  made: {
    command: `npm run build:pass-selection -- --seed ${seed} --date ${date} --situations ${situations} --rounds ${rounds}`,
    seed,
    date,
    situations,
    rounds,
  },
  ...policy,
};
const path = new URL('shared-engine/kernels/pass-selection/fitted.ts', root);
writeFileSync(
  path,
  `// How a simulated seat weighs the hands of its card; written by the command it names, never by hand.
import type { FittedSelection } from './selection.ts';

export const FITTED_SELECTION: FittedSelection = ${JSON.stringify(fitted)};
`,
);
execFileSync(new URL('node_modules/.bin/biome', root).pathname, ['check', '--write', path.pathname]);
process.stdout.write(`${JSON.stringify(fitted)}\n`);

function wholeNumber(name: string, text: string): number {
  const value = Number(text);
  if (Number.isInteger(value) && value > 0) return value;
  process.stderr.write(`--${name} takes a whole number above 0, not "${text}".\n`);
  process.exit(2);
}
