// The JSON Schema of a card: the stored file is current, and a JSON Schema validator agrees with the parser.
import { readFileSync } from 'node:fs';
import Fastify from 'fastify';
import { afterAll, describe, expect, test } from 'vitest';
import { cardJsonSchema } from '../../shared-engine/card/format.ts';
import { HOUSE_CARD } from '../../shared-engine/card/house/card.ts';
import { parseCard } from '../../shared-engine/card/parse.ts';
import { cardOf, GOOD_PATTERN } from '../kit/card-files.ts';

const stored: unknown = JSON.parse(
  readFileSync(new URL('../../shared-engine/card/card.schema.json', import.meta.url), 'utf8'),
);

test('card.schema.json is what `npm run card-data` would write', () => {
  expect(stored).toEqual(cardJsonSchema());
});

test('the example of FORMAT.md is a valid card', () => {
  const text = readFileSync(new URL('../../shared-engine/card/FORMAT.md', import.meta.url), 'utf8');
  const example: unknown = JSON.parse(/```json\n(.*?)```/s.exec(text)![1]!);
  expect(parseCard(example)).toEqual({ ok: true, card: example });
});

// Fastify brings Ajv, a JSON Schema validator that knows nothing of zod.
const server = Fastify({ ajv: { customOptions: { coerceTypes: false, removeAdditional: false } } });
server.post('/card', { schema: { body: stored } }, () => 'fits');
afterAll(() => server.close());

async function fits(json: unknown): Promise<boolean> {
  const answer = await server.inject({
    method: 'POST',
    url: '/card',
    headers: { 'content-type': 'application/json' },
    payload: JSON.stringify(json),
  });
  return answer.statusCode === 200;
}

const good = cardOf(GOOD_PATTERN);
const withTile = (tile: unknown) => cardOf({ ...GOOD_PATTERN, groups: [{ size: 4, tile }] });

describe('the schema file and the parser agree on the structure', () => {
  test.each<[string, unknown]>([
    ['the house card', HOUSE_CARD],
    ['a small card', good],
    ['another format', { ...good, format: 'other/1' }],
    ['no sections', { ...good, sections: [] }],
    ['an unknown entry', { ...good, colour: 'blue' }],
    ['an id in capitals', cardOf({ ...GOOD_PATTERN, id: 'RUN' })],
    ['points below zero', cardOf({ ...GOOD_PATTERN, points: -1 })],
    ['a group of seven', cardOf({ ...GOOD_PATTERN, groups: [{ size: 7, tile: { flower: true } }] })],
    ['a tile of two kinds', withTile({ flower: true, zero: true })],
    ['a number without a suit', withTile({ number: 3 })],
    ['a tenth number', withTile({ number: 10, suit: 'bam' })],
    ['a fifth year digit', withTile({ yearDigit: 4, suit: 'bam' })],
    ['a variable with a long name', withTile({ wind: { var: 'abcdefghi' } })],
    ['a list that is none', cardOf({ ...GOOD_PATTERN, where: { n: { numbers: 3 } } })],
    ['a year in words', { ...good, parameters: { year: 'now' } }],
  ])('the schema file and the parser agree on %s', async (_title, json) => {
    const parsed = parseCard(json);
    const structured = parsed.ok || parsed.problems.every(({ code }) => code !== 'not-in-format');
    expect(await fits(json)).toBe(structured);
  });

  test('the schema file accepts a good card and rejects a bad one', async () => {
    expect(await Promise.all([HOUSE_CARD, good, { ...good, format: 'other/1' }, {}].map(fits))).toEqual([
      true,
      true,
      false,
      false,
    ]);
  });
});
