// A card in the making: examples that are rolled, what each hand comes to, the part that plays, and cards held together.
import { describe, expect, test } from 'vitest';
import { freeId, meanSameHands, mergedCard } from '../../shared-engine/card/compare.ts';
import { compileCard, distinctHandsOf } from '../../shared-engine/card/compile.ts';
import { exampleOf } from '../../shared-engine/card/example.ts';
import {
  CARD_FORMAT,
  type CardFile,
  type CardPattern,
  cardDraftSchema,
} from '../../shared-engine/card/format.ts';
import { HOUSE_CARD } from '../../shared-engine/card/house/card.ts';
import { parseCard } from '../../shared-engine/card/parse.ts';
import { patternReport, playablePart } from '../../shared-engine/card/report.ts';
import { readShorthand } from '../../shared-engine/card/shorthand/read.ts';
import { bagOf } from '../../shared-engine/rules/tiles/bag.ts';

function pattern(id: string, section: string, text: string): CardPattern {
  const read = readShorthand(text);
  if (!read.ok) throw new Error(read.problems[0]!.message);
  return { id, section, ...read.pattern };
}

function card(name: string, sections: Readonly<Record<string, readonly string[]>>): CardFile {
  return {
    format: CARD_FORMAT,
    id: 'made',
    name,
    parameters: {},
    sections: Object.keys(sections).map((id) => ({ id, name: id })),
    patterns: Object.entries(sections).flatMap(([id, texts]) =>
      texts.map((text, nth) => pattern(`${id}-${nth + 1}`, id, text)),
    ),
  };
}

describe('H7 an example follows from its seed and is a hand of the pattern', () => {
  test('H7 for every pattern of the house card, the same for the same seed and others for other seeds', () => {
    for (const one of HOUSE_CARD.patterns) {
      const shown = exampleOf(one, {}, 'seed')!;
      expect(exampleOf(one, {}, 'seed')).toEqual(shown);
      const tiles = bagOf(shown.faces.flatMap((face, nth) => new Array(one.groups[nth]!.size).fill(face)));
      const hands = distinctHandsOf(one, {}).map(({ singles, groups }) =>
        singles.map((n, i) => n + groups[i]!),
      );
      expect(hands).toContainEqual([...tiles]);
    }
    const rolled = ['1', '2', '3', '4', '5'].map((seed) =>
      exampleOf(HOUSE_CARD.patterns[0]!, {}, seed)!.faces.join(),
    );
    expect(new Set(rolled).size).toBeGreaterThan(1);
  });

  test('H7 a pattern of fewer than 14 tiles has examples too, one that no choice fits has none', () => {
    expect(exampleOf(pattern('p', 's', '2a 3a+1'), {}, 'seed')?.faces).toHaveLength(2);
    expect(exampleOf(pattern('p', 's', '2a 3b a=3 b=3'), {}, 'seed')).toBeNull();
    expect(exampleOf(pattern('p', 's', '2a+8 3a-1'), {}, 'seed')).toBeNull();
  });
});

describe('what a pattern in the making comes to', () => {
  test.each<[string, number, number, (string | number | null)[][]]>([
    ['3a 3a+1 3a+4 3a+5 2f', 14, 12, []],
    ['3a 3a+1', 6, 0, [['not-14-tiles', null]]],
    ['5x1 5x2 2x3 2year1', 14, 0, [['no-year', 4]]],
    ['6a 4a+7 4b b=4 a=3', 14, 0, [['number-out-of-range', 2]]],
    ['2x5 2x5 2x5 6f 2z', 14, 0, [['too-few-copies', 3]]],
  ])('%s', (text, tiles, hands, problems) => {
    const report = patternReport(pattern('p', 's', text), {});
    expect([report.tiles, report.hands]).toEqual([tiles, hands]);
    expect(report.problems.map(({ code, group }) => [code, group])).toEqual(problems);
  });

  test('a card with one hand entered plays with that hand, and says nothing of the rest', () => {
    const draft = card('Begun', { first: ['3a 3a+1 3a+4 3a+5 2f', '3a'], second: [] });
    const reports = draft.patterns.map((one) => patternReport(one, {}));
    const part = playablePart(draft, reports)!;
    expect(parseCard(part)).toEqual({ ok: true, card: part });
    expect([part.sections.length, compileCard(part).hands.length]).toEqual([1, reports[0]!.hands]);
    expect(playablePart({ ...draft, patterns: [] }, [])).toBeNull();
    expect(cardDraftSchema.safeParse(card('', { first: [''] })).success).toBe(true);
  });
});

describe('H8 cards mean the same when they have the same hands', () => {
  const text = '3a 3a+1 / 4x2 4wind wind=e,n 30';
  const one = card('One', { first: [text, '6f 4x1 4match 20'] });

  test('H8 whatever their ids, their variables and they themselves are called', () => {
    const renamed: CardFile = {
      ...one,
      name: 'Other',
      sections: [{ id: 'other', name: 'first' }],
      patterns: one.patterns.map((p, nth) => ({ ...p, id: `other-${nth}`, section: 'other' })),
    };
    expect(meanSameHands(one, renamed)).toBe(true);
    expect(meanSameHands(HOUSE_CARD, structuredClone(HOUSE_CARD))).toBe(true);
  });

  test.each([
    ['other points', ['3a 3a+1 / 4x2 4wind wind=e,n 31', '6f 4x1 4match 20']],
    ['concealed', [`${text} c`, '6f 4x1 4match 20']],
    ['one choice more', ['3a 3a+1 / 4x2 4wind wind=e,n,we 30', '6f 4x1 4match 20']],
    ['another order', ['6f 4x1 4match 20', text]],
    ['a hand less', [text]],
  ])('H8 but not with %s', (_what, texts) => {
    expect(meanSameHands(one, card('One', { first: texts }))).toBe(false);
  });
});

test('H9 merging adds the hands and sections that are missing and changes nothing else', () => {
  const mine = card('Mine', { winds: ['4e 4sou 3x1 3x2'], pairs: [] });
  const theirs = card('Theirs', { Winds: ['4e 4sou 3x1 3x2', '4n 4we 3x1 3x2'], rows: ['6a 4a+1 4f'] });
  const both = mergedCard(mine, {
    ...theirs,
    sections: theirs.sections.map((s) => ({ ...s, id: s.id.toLowerCase() })),
    patterns: theirs.patterns.map((p) => ({
      ...p,
      id: p.id.toLowerCase(),
      section: p.section.toLowerCase(),
    })),
  });
  expect(both.sections.map(({ id }) => id)).toEqual(['winds', 'pairs', 'rows']);
  expect(both.patterns.map(({ id, section }) => [id, section])).toEqual([
    ['winds-1', 'winds'],
    ['winds-2', 'winds'],
    ['rows-1', 'rows'],
  ]);
  expect(both.patterns[0]).toBe(mine.patterns[0]);
  expect([freeId('Été 2026!', new Set()), freeId('a', new Set(['a', 'a-2'])), freeId('', new Set())]).toEqual(
    ['t-2026', 'a-3', 'card'],
  );
});
