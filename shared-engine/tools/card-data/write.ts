// npm run card-data: writes the generated files of shared-engine/card: the house card's points and the JSON Schema.
import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { cardJsonSchema } from '../../card/format.ts';
import { houseCard } from '../../card/house/card.ts';
import { meanMissing, POINTS_DEALS, POINTS_SEED, pointsFor } from '../../survey/difficulty.ts';

const folder = new URL('../../card/', import.meta.url);
const pointsFile = new URL('house/points.ts', folder);
const schemaFile = new URL('card.schema.json', folder);

const card = houseCard();
const points = meanMissing(card, POINTS_SEED, POINTS_DEALS).map(pointsFor);
const entries = card.patterns.map(({ id }, pattern) => `  '${id}': ${points[pattern]},\n`);

writeFileSync(
  pointsFile,
  `// Points of the house card's patterns: ten for each tile missing on average after twelve turns of aiming at the pattern.
// Made by \`npm run card-data\` (shared-engine/survey/difficulty.ts; seed "${POINTS_SEED}", ${POINTS_DEALS} deals); not edited by hand.

export const POINTS: Readonly<Record<string, number>> = {
${entries.join('')}};
`,
);
writeFileSync(schemaFile, `${JSON.stringify(cardJsonSchema(), null, 2)}\n`);
const biome = new URL('../../../node_modules/.bin/biome', import.meta.url).pathname;
execFileSync(biome, ['check', '--write', pointsFile.pathname, schemaFile.pathname]);
