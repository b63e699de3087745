// Drills and cards that cannot be used: rejected with messages that say what to do; no class is opened, nothing is lost.
import { expect, onTestFinished, test } from 'vitest';
import type { Drill, DrillDeal } from '../../shared-engine/drill/format.ts';
import { classOpenedSchema } from '../../shared-engine/protocol/class.ts';
import { CLASSES_PATH } from '../../shared-engine/protocol/paths.ts';
import { SEATS } from '../../shared-engine/rules/deal/seat.ts';
import type { Face } from '../../shared-engine/rules/tiles/face.ts';
import { cardOf, GOOD_PATTERN } from '../kit/card-files.ts';
import { TERMS } from '../kit/class-room.ts';
import { dealOf, drillOf } from '../kit/drills.ts';
import { post } from '../kit/http-client.ts';
import { seedNamed } from '../kit/rounds.ts';
import { startServer, type TestServer } from '../kit/server.ts';

async function server(): Promise<TestServer> {
  const started = await startServer({ seed: 'class bad input' });
  onTestFinished(() => started.stop());
  return started;
}

const seed = seedNamed('bad');
const GOOD = drillOf([dealOf({ kind: 'random', seed })]);
const five: Face[] = ['bam-3', 'bam-3', 'bam-3', 'bam-3', 'bam-3'];
const jokers = Array.from({ length: 9 }, (): Face => 'joker');
const winds = Array.from({ length: 40 }, (): Face => 'east');
const fourteen = SEATS.flatMap((): Face[] => ['bam-1', 'crak-1', 'dot-1']).concat('west', 'east');
const manual = (rack: Face[], others: Face[] = []): Drill =>
  drillOf([dealOf({ kind: 'manual', racks: [rack, others, others, others], seed })]);
const constrained = (constraint: Extract<DrillDeal['tiles'], { kind: 'sampled' }>['constraint']): Drill =>
  drillOf([dealOf({ kind: 'sampled', constraint, seed })]);

test.each<[string, unknown, RegExp]>([
  ['five of a kind', manual(five), /uses 3 bam 5 times, but there are only 4/],
  ['a joker too many', manual(jokers), /joker 9 times, but there are only 8/],
  ['more tiles than the set', manual(winds, winds), /hold 160 tiles, but there are only 152; remove 8/],
  [
    'a rack too large',
    manual(fourteen),
    /seat 0 has 14 tiles, but a seat that is not the dealer is dealt 13/,
  ],
  ['an impossible constraint', constrained({ jokers: 9 }), /no rack of 13 tiles can have 9 jokers/],
  [
    'parts that exclude each other',
    constrained({ pairs: 0, kongs: 1 }),
    /these together: no pair and 1 kong/,
  ],
  [
    'a constraint too rare to meet',
    constrained({ inARow: 9, pairs: 4, jokers: 1 }),
    /too rare to find|no rack/,
  ],
  [
    'a section that the card does not have',
    constrained({ section: 'none-such' }),
    /the card has no section "none-such"/,
  ],
  ['another version', { ...GOOD, format: 'quadrille-drill/9' }, /version 9 of the drill format/],
  ['an unknown entry', { ...GOOD, extra: 1 }, /unknown entry "extra"; remove it/],
  ['a broken file', '{"format":', /./],
])('a drill with %s is rejected with a message, and no class is opened', async (_, drill, message) => {
  const at = await server();
  const response = await post(`${at.url}${CLASSES_PATH}`, { drill, terms: TERMS, card: null });
  const { code, problems } = await response.json();
  expect([response.status, code]).toEqual([422, 'bad-drill']);
  expect(problems.join(' ')).toMatch(message);
  expect(await at.store.count()).toBe(0);
});

test('every fault of a drill is reported at once, with the deal it is in', async () => {
  const at = await server();
  const tiles = { kind: 'manual', racks: [five, [], [], []], seed } as const;
  const drill = drillOf([dealOf(tiles), dealOf({ ...tiles, racks: [jokers, [], [], []] }, { id: 'second' })]);
  const response = await post(`${at.url}${CLASSES_PATH}`, { drill, terms: TERMS, card: null });
  const { problems } = await response.json();
  expect(problems).toHaveLength(2);
  expect(problems[0]).toMatch(/^Deal 1: /);
  expect(problems[1]).toMatch(/^Deal 2: /);
});

test('a file that is no card is rejected as a card, and the drill can be sent again without it', async () => {
  const at = await server();
  const card = { format: 'quadrille-card/1', lines: 'none' };
  const refused = await post(`${at.url}${CLASSES_PATH}`, { drill: GOOD, terms: TERMS, card });
  expect([refused.status, (await refused.json()).code]).toEqual([422, 'bad-card']);
  const opened = await post(`${at.url}${CLASSES_PATH}`, { drill: GOOD, terms: TERMS, card: null });
  expect(classOpenedSchema.parse(await opened.json()).code).toHaveLength(8);
});

test('F2 a drill file that carries its card is taken as it is: judged by that card, and rejected for what is wrong with it', async () => {
  const at = await server();
  const file = { ...constrained({ section: 'first' }), class: TERMS };
  const opened = (drill: unknown) => post(`${at.url}${CLASSES_PATH}`, { drill, terms: TERMS, card: null });
  const responses = [cardOf(GOOD_PATTERN), cardOf(), 'house'].map((card) => opened({ ...file, card }));
  const codes = await Promise.all(responses.map(async (one) => (await (await one).json()).code));
  expect([codes[0].length, ...codes.slice(1)]).toEqual([8, 'bad-card', 'bad-drill']);
});
