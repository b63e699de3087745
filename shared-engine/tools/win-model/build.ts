// npm run build:win-model [-- --seed TEXT --date YYYY-MM-DD --rounds N --plays N --games FILE]: makes games, or reads
// those that an earlier run stored in the file, and writes the win model fitted to them.
import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import type { WinModel } from '../../analysis/win-probability/model-format.ts';
import { loadSimd } from '../../kernels/simd/module.ts';
import { bestSteps, fitModel } from './fit.ts';
import { samplesFor } from './samples.ts';

const root = new URL('../../../', import.meta.url);

const { values } = parseArgs({
  options: {
    seed: { type: 'string', default: 'win-model' },
    date: { type: 'string', default: new Date().toISOString().slice(0, 10) },
    rounds: { type: 'string', default: '5000' },
    plays: { type: 'string', default: '4' },
    games: { type: 'string' },
  },
});
const { seed, date } = values;
const rounds = wholeNumber('rounds', values.rounds);
const plays = wholeNumber('plays', values.plays);

const games = samplesFor({ seed, rounds, plays }, await loadSimd(), values.games ?? null);
const steps = bestSteps(games, ({ tile, pair, pairs, concealed }) =>
  process.stderr.write(`trying steps ${tile} ${pair} ${pairs} ${concealed}\n`),
);
const model: WinModel = {
  made: {
    command: `npm run build:win-model -- --seed ${seed} --date ${date} --rounds ${rounds} --plays ${plays}`,
    seed,
    date,
    plays: games.reduce((sum, { samples }) => sum + (samples.length / 2) * plays, 0),
    cards: games.length,
  },
  ...fitModel(games, steps),
};
const path = new URL('shared-engine/analysis/win-probability/model.ts', root);
writeFileSync(
  path,
  `// The fitted win model; written by the command it names, never by hand.
import type { WinModel } from './model-format.ts';

export const WIN_MODEL: WinModel = ${JSON.stringify(model)};
`,
);
execFileSync(new URL('node_modules/.bin/biome', root).pathname, ['check', '--write', path.pathname]);
process.stdout.write(`${JSON.stringify({ ...model.made, steps })}\n`);

function wholeNumber(name: string, text: string): number {
  const value = Number(text);
  if (Number.isInteger(value) && value > 0) return value;
  process.stderr.write(`--${name} takes a whole number above 0, not "${text}".\n`);
  process.exit(2);
}
