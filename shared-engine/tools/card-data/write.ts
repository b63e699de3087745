// npm run card-data: writes the files of the card room that are made, not written: the points and the JSON Schema.
import { writeFileSync } from 'node:fs';
import { cardJsonSchema, houseCard } from '../../index.ts';
import { meanMissing, POINTS_DEALS, POINTS_SEED, pointsFor } from './difficulty.ts';

const room = new URL('../../card/', import.meta.url);

const card = houseCard();
const points = meanMissing(card, POINTS_SEED, POINTS_DEALS).map(pointsFor);
const entries = card.lines.map(({ id }, line) => `  '${id}': ${points[line]},\n`);

writeFileSync(
  new URL('house/points.ts', room),
  `// Points of the house card's lines: ten for each tile missing on average after twelve turns of aiming at the line.
// Made by \`npm run card-data\` (shared-engine/tools/card-data/difficulty.ts; seed "${POINTS_SEED}", ${POINTS_DEALS} deals); not edited by hand.

export const POINTS: Readonly<Record<string, number>> = {
${entries.join('')}};
`,
);
writeFileSync(new URL('card.schema.json', room), `${JSON.stringify(cardJsonSchema(), null, 2)}\n`);
