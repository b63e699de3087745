// Drill files: what is read, and what each fault of a file is answered with.
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { drillFileText, readDrillFile } from '../../shared-engine/drill/file.ts';
import { type DrillDeal, drillTerms } from '../../shared-engine/drill/format.ts';
import { parseDrill } from '../../shared-engine/drill/parse.ts';
import type { DrillProblem } from '../../shared-engine/drill/problem.ts';
import { STANDARD_TERMS } from '../../shared-engine/rules/exchange/terms.ts';
import type { Face } from '../../shared-engine/rules/tiles/face.ts';
import { cardOf, GOOD_PATTERN } from '../kit/card-files.ts';
import { dealOf, drillOf, sampledDeal } from '../kit/drills.ts';
import { houseKernel } from '../kit/reviews.ts';
import { seedNamed } from '../kit/rounds.ts';

const seed = seedNamed('drill file');
const composed = (racks: readonly (readonly Face[])[], extra: Partial<DrillDeal> = {}): DrillDeal =>
  dealOf(
    { kind: 'manual', racks: [racks[0] ?? [], racks[1] ?? [], racks[2] ?? [], racks[3] ?? []], seed },
    extra,
  );
const times = (count: number, face: Face): Face[] => new Array<Face>(count).fill(face);

function problemsOf(json: unknown): readonly DrillProblem[] {
  const parsed = parseDrill(json, houseKernel);
  if (parsed.ok) throw new Error('accepted');
  return parsed.problems;
}

function only(json: unknown): DrillProblem {
  const problems = problemsOf(json);
  expect(problems).toHaveLength(1);
  return problems[0]!;
}

describe('a drill file is read', () => {
  const deals: readonly DrillDeal[] = [
    dealOf({ kind: 'random', seed }, { id: 'by-chance', title: 'Warming up', note: 'No hints.' }),
    composed([['bam-3', 'bam-3', 'joker'], times(8, 'flower')], { id: 'by-hand', dealer: 0 }),
    {
      ...sampledDeal({ pairs: 0, inARow: { from: 4 }, jokers: { from: 1, to: 2 }, toGo: { to: 8 } }),
      id: 'by-constraint',
    },
  ];

  test('and written again it is the same drill', () => {
    const text = JSON.stringify(drillOf(deals));
    const read = readDrillFile(text, houseKernel);
    expect(read).toEqual({ ok: true, file: { drill: drillOf(deals) } });
    const again = read.ok ? readDrillFile(drillFileText(read.file), houseKernel) : null;
    expect(again).toEqual(read);
  });

  test('F2 with the card and the class that it carries, and judged by that card, whatever card its reader has', () => {
    const drill = drillOf([sampledDeal({ section: 'first' })]);
    expect(readDrillFile(JSON.stringify(drill), houseKernel).ok).toBe(false);
    const card = cardOf(GOOD_PATTERN);
    const asClass = { deadline: 60, racks: false, names: true, cardClosed: false };
    const read = readDrillFile(JSON.stringify({ ...drill, card, class: asClass }), houseKernel);
    expect(read).toEqual({ ok: true, file: { drill, card, class: asClass } });
    expect(read.ok && readDrillFile(drillFileText(read.file), houseKernel)).toEqual(read);
    const onHouse = readDrillFile(JSON.stringify({ ...drillOf(deals), card: 'house' }), houseKernel);
    expect(onHouse).toEqual({ ok: true, file: { drill: drillOf(deals), card: 'house' } });
  });

  test('and what is wrong with its card, its class and its deals is said together', () => {
    const drill = { ...drillOf(deals), title: '' };
    const broken = { ...drill, card: cardOf(), class: { deadline: 5 } };
    const read = readDrillFile(JSON.stringify(broken), houseKernel);
    expect(read.ok ? [] : read.problems.map(({ code }) => code)).toEqual([
      'bad-card',
      'not-in-format',
      'not-in-format',
    ]);
  });

  test.each(['alone', 'tables', 'guided'] as const)('of the form "%s"', (form) => {
    expect(parseDrill({ ...drillOf(deals), form }, houseKernel).ok).toBe(true);
  });

  test('W2 W3 W4 W6 with the ways to play that it fixes; what is left out is as usual', () => {
    const ways = { secondCharleston: 'always', courtesy: 'none', players: 4 } as const;
    const parsed = parseDrill({ ...drillOf(deals), ways }, houseKernel);
    if (!parsed.ok) throw new Error('rejected');
    const { secondCharleston, courtesy } = ways;
    expect(drillTerms(parsed.drill)).toEqual({ ...STANDARD_TERMS.class, secondCharleston, courtesy });
    expect(readDrillFile(JSON.stringify(parsed.drill), houseKernel)).toEqual({
      ok: true,
      file: { drill: parsed.drill },
    });
    expect(drillTerms(drillOf(deals))).toEqual(STANDARD_TERMS.class);
  });

  test.each<[string, unknown, RegExp]>([
    ['three players', { players: 3 }, /^Drill: Four seats play here/],
    ['blank tiles', { blankTiles: 2 }, /^Drill: The set here has 152 tiles/],
    ['a pot', { courtesy: 'pot' }, /^Drill: There is no pot here/],
    [
      'a vote by hand',
      { secondCharleston: 'by-hand' },
      /"ways.secondCharleston" must be "by-vote", "always" or "none"/,
    ],
    ['an East of its own', { whoIsEast: 'always' }, /unknown entry "whoIsEast" in "ways"; remove it\./],
  ])('but not with ways that are not played: %s', (_, ways, message) => {
    expect(only({ ...drillOf(deals), ways }).message).toMatch(message);
  });

  test('the example of FORMAT.md is one, its seeds written out', () => {
    const text = readFileSync(new URL('../../shared-engine/drill/FORMAT.md', import.meta.url), 'utf8');
    const example = /```json\n([\s\S]*?)```/
      .exec(text)![1]!
      .replaceAll(/"(00…64 digits…ff|…)"/g, `"${seed}"`);
    expect(readDrillFile(example, houseKernel)).toMatchObject({ ok: true });
  });

  test('a full rack of 14 for the dealer and a whole deal by hand', () => {
    const fourteen: Face[] = [...times(8, 'joker'), ...times(6, 'flower')];
    expect(parseDrill(drillOf([composed([fourteen], { dealer: 0 })]), houseKernel).ok).toBe(true);
  });
});

describe('a fault of the tiles', () => {
  test('five of a kind, over all racks together', () => {
    const racks: Face[][] = [['dot-7', 'dot-7', 'dot-7'], ['dot-7'], ['dot-7']];
    expect(only(drillOf([composed(racks)]))).toMatchObject({
      code: 'too-many-copies',
      deal: 'first',
      message: 'Deal 1: it uses 7 dot 5 times, but there are only 4; remove 1.',
    });
  });

  test('in a deal with a title is told by its place and title', () => {
    const five = dealOf(
      { kind: 'manual', racks: [times(5, 'dot-7'), [], [], []], seed },
      { id: 'five', title: 'Five dots' },
    );
    const impossible = dealOf({ kind: 'found', seed } as never, { id: 'found', title: 'Found' });
    const drill = drillOf([sampledDeal({}), five, impossible]);
    const parsed = parseDrill(drill, houseKernel);
    expect(parsed.ok ? [] : parsed.problems.map(({ message }) => message)).toEqual([
      'Deal 3 (Found): "tiles.kind" must be "random", "manual" or "sampled".',
      'Deal 2 (Five dots): it uses 7 dot 5 times, but there are only 4; remove 1.',
    ]);
  });

  test('a joker too many', () => {
    expect(only(drillOf([composed([times(5, 'joker'), times(4, 'joker')])]))).toMatchObject({
      code: 'too-many-jokers',
      deal: 'first',
      message: 'Deal 1: it uses joker 9 times, but there are only 8; remove 1.',
    });
  });

  test('15 tiles on a rack, and 14 where the seat is not the dealer', () => {
    const fourteen: Face[] = [...times(8, 'flower'), ...times(4, 'east'), 'red', 'green'];
    expect(only(drillOf([composed([[...fourteen, 'white']], { dealer: 0 })])).message).toBe(
      'Deal 1: seat 0 has 15 tiles, but the dealer is dealt 14; remove 1.',
    );
    expect(only(drillOf([composed([fourteen], { dealer: 2 })]))).toMatchObject({
      code: 'rack-too-large',
      deal: 'first',
      message: 'Deal 1: seat 0 has 14 tiles, but a seat that is not the dealer is dealt 13; remove 1.',
    });
  });

  test('more than 152 tiles', () => {
    const racks = [times(40, 'bam-1'), times(40, 'dot-1'), times(40, 'east'), times(33, 'red')];
    expect(only(drillOf([composed(racks)]))).toMatchObject({
      code: 'more-than-the-set',
      deal: 'first',
      message: 'Deal 1: its racks hold 153 tiles, but there are only 152; remove 1.',
    });
  });

  test('in one deal hides none in another', () => {
    const problems = problemsOf(
      drillOf([
        composed([times(5, 'east')], { id: 'one' }),
        composed([times(9, 'joker')], { id: 'two' }),
        { ...sampledDeal({ pairs: 0, kongs: 1 }), id: 'three' },
      ]),
    );
    expect(problems.map(({ code, deal }) => [code, deal])).toEqual([
      ['too-many-copies', 'one'],
      ['too-many-jokers', 'two'],
      ['impossible-constraint', 'three'],
    ]);
  });
});

describe('a fault of a constraint', () => {
  test('parts that exclude each other, for as many tiles as the seat is dealt', () => {
    const constraint = { kongs: 3, pairs: 4 };
    expect(only(drillOf([sampledDeal(constraint)])).message).toBe(
      'Deal 1: no rack of 13 tiles can have these together: 4 pairs and 3 kongs; change one of them. A kong is also a pung, and a pung also a pair.',
    );
    expect(parseDrill(drillOf([{ ...sampledDeal(constraint), dealer: 0 }]), houseKernel).ok).toBe(true);
  });

  test('a range whose ends are swapped', () => {
    expect(only(drillOf([sampledDeal({ jokers: { from: 3, to: 1 } })])).message).toBe(
      'Deal 1: "jokers" goes from 3 to 1; swap the two numbers.',
    );
  });

  test('a section that the card does not have', () => {
    const { code, message } = only(drillOf([sampledDeal({ section: 'spirals' })]));
    expect(code).toBe('unknown-section');
    expect(message).toMatch(/^Deal 1: the card has no section "spirals"; choose one of one-suit, .+\.$/);
  });
});

describe('a file that is no drill', () => {
  test('is broken, empty or no JSON', () => {
    const text = JSON.stringify(drillOf([sampledDeal({})]), null, 2);
    const faults: readonly (readonly [string, string])[] = [
      ['', 'It ends in line 1, column 1, where there should be a value.'],
      ['deals', 'In line 1, column 1, there should be a value.'],
      [text.slice(0, -3), 'It ends in line 24, column 3, where there should be a comma or "]".'],
      [text.replace('"form": ', '"form" '), 'In line 4, column 10, there should be a colon.'],
    ];
    for (const [torn, where] of faults) {
      const read = readDrillFile(torn, houseKernel);
      expect(read.ok ? [] : read.problems.map(({ message }) => message)).toEqual([
        `Drill: the file cannot be read as JSON. ${where} Save it again where it was made.`,
      ]);
    }
  });

  test('is of another version', () => {
    expect(only({ ...drillOf([sampledDeal({})]), format: 'quadrille-drill/2', extra: 1 })).toMatchObject({
      code: 'unknown-version',
      deal: null,
      message:
        'Drill: the file uses version 2 of the drill format, but this program reads version 1. Save it as version 1 or use a newer program.',
    });
  });

  test('is of another format', () => {
    expect(only({ ...drillOf([sampledDeal({})]), format: 'quadrille-card/1' }).message).toBe(
      'Drill: "format" must be "quadrille-drill/1".',
    );
    expect(only([]).message).toBe('Drill: it must be an object with the entries of the format.');
  });

  test('is too large or too deep, or has a name that could harm', () => {
    expect(readDrillFile(' '.repeat(2_000_001), houseKernel)).toMatchObject({
      problems: [{ code: 'too-large' }],
    });
    const deep = JSON.parse(`${'['.repeat(20)}${']'.repeat(20)}`);
    expect(only(deep).code).toBe('too-large');
    expect(only({ deals: new Array(40_000).fill(0) }).code).toBe('too-large');
    expect(only(JSON.parse('{"format":{"__proto__":1}}')).code).toBe('unsafe-name');
  });

  test.each<[string, (drill: ReturnType<typeof drillOf>) => unknown, string]>([
    ['no deal', (drill) => ({ ...drill, deals: [] }), 'Drill: "deals" must be a list of 1 to 60 deals.'],
    [
      'a form',
      (drill) => ({ ...drill, form: 'duel' }),
      'Drill: "form" must be "alone", "tables" or "guided".',
    ],
    [
      'two styles',
      (drill) => ({ ...drill, bots: { ...drill.bots, styles: ['strong', 'casual'] } }),
      'Drill: "bots.styles" must be three bot styles: to the right, across and to the left.',
    ],
    ['an entry too many', (drill) => ({ ...drill, owner: 'x' }), 'Drill: unknown entry "owner"; remove it.'],
    [
      'a seat',
      (drill) => ({ ...drill, deals: [{ ...drill.deals[0], seat: 4 }] }),
      'Deal 1: "seat" must be a seat: 0, 1, 2 or 3.',
    ],
    [
      'no id',
      (drill) => ({ ...drill, deals: [{ ...drill.deals[0], id: 'First deal' }] }),
      'Deal 1: "id" must be a lowercase letter, then lowercase letters, digits and single hyphens, at most 40 characters.',
    ],
    [
      'a kind of tiles',
      (drill) => ({ ...drill, deals: [dealOf({ kind: 'found', seed } as never)] }),
      'Deal 1: "tiles.kind" must be "random", "manual" or "sampled".',
    ],
    [
      'a tile',
      (drill) => ({ ...drill, deals: [composed([['bam-10' as Face]])] }),
      'Deal 1: "tiles.racks" must be four lists of tiles, one for each seat; a tile is written "bam-3", "east", "red", "flower" or "joker".',
    ],
    [
      'an amount',
      (drill) => ({ ...drill, deals: [sampledDeal({ jokers: 15 })] }),
      'Deal 1: "tiles.constraint.jokers" must be a whole number from 0 to 14, or a range {"from", "to"} of such numbers.',
    ],
    [
      'a part of a constraint',
      (drill) => ({ ...drill, deals: [sampledDeal({ luck: 1 } as never)] }),
      'Deal 1: unknown entry "luck" in "tiles.constraint"; remove it.',
    ],
    [
      'an id twice',
      (drill) => ({ ...drill, deals: [drill.deals[0], drill.deals[0]] }),
      'Deal 2: it has the id "first", as deal 1 has; rename one.',
    ],
  ])('has a wrong entry: %s', (_, change, message) => {
    expect(only(change(drillOf([sampledDeal({})]))).message).toBe(message);
  });
});
