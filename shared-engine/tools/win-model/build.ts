// npm run build:win-model [-- --seed TEXT --date YYYY-MM-DD --rounds N --plays N]: makes games and writes the win model.
import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { preparePlayCard } from '../../analysis/play/play-card.ts';
import type { WinModel } from '../../analysis/win-probability/model-format.ts';
import type { CompiledCard } from '../../card/compiled.ts';
import { houseCard } from '../../card/house/card.ts';
import { loadSimd } from '../../kernels/simd/module.ts';
import { bestSteps, type CardGames, fitModel } from './fit.ts';
import { gamesOn, type Sample } from './games.ts';
import { progressBar } from './progress-bar.ts';
import { variantCard } from './variant-card.ts';

const root = new URL('../../../', import.meta.url);

/** Cards beside the house card. */
const VARIANTS = 16;
/** Of a hundred rounds, those on the house card. */
const HOUSE_PERCENT = 60;

const { values } = parseArgs({
  options: {
    seed: { type: 'string', default: 'win-model' },
    date: { type: 'string', default: new Date().toISOString().slice(0, 10) },
    rounds: { type: 'string', default: '6000' },
    plays: { type: 'string', default: '4' },
  },
});
const { seed, date } = values;
const rounds = wholeNumber('rounds', values.rounds);
const plays = wholeNumber('plays', values.plays);

const cards: CompiledCard[] = [
  houseCard(),
  ...Array.from({ length: VARIANTS }, (_, n) => variantCard(`${seed} ${n}`)),
];
const simd = await loadSimd();
const showGames = progressBar('rounds', rounds);
let done = 0;
const games = cards.map((card, index): CardGames => {
  const play = gamesOn(card, simd);
  const share = index === 0 ? HOUSE_PERCENT : (100 - HOUSE_PERCENT) / VARIANTS;
  const samples: Sample[] = [];
  for (let n = Math.round((rounds * share) / 100); n > 0; n--) {
    samples.push(...play(`${seed} ${index} ${n}`, plays));
    showGames(++done);
  }
  return { card: preparePlayCard(card), samples };
});
const steps = bestSteps(games, ({ tile, pair, pairs, concealed }) =>
  process.stderr.write(`trying steps ${tile} ${pair} ${pairs} ${concealed}\n`),
);
const model: WinModel = {
  made: {
    command: `npm run build:win-model -- --seed ${seed} --date ${date} --rounds ${rounds} --plays ${plays}`,
    seed,
    date,
    plays: done * plays,
    cards: cards.length,
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
process.stdout.write(`${JSON.stringify({ ...model.made, steps, knots: model.scores.length })}\n`);

function wholeNumber(name: string, text: string): number {
  const value = Number(text);
  if (Number.isInteger(value) && value > 0) return value;
  process.stderr.write(`--${name} takes a whole number above 0, not "${text}".\n`);
  process.exit(2);
}
