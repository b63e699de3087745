// Cards of one's own on this device: kept, shared byte for byte, edited step by step, never overwritten silently.
import { describe, expect, it } from 'vitest';
import { TYPING } from '../../client/cards/editor/help-strings.ts';
import {
  answeredAs,
  meaningOf,
  meantAs,
  type Shown,
  USUAL_ANSWERS,
  withGroup,
} from '../../client/cards/editor/meaning.ts';
import { openSession } from '../../client/cards/editor/session.ts';
import { cardText, packCard, readCardText, unpackCard } from '../../client/cards/own/card-transfer.ts';
import { wholeReportOf } from '../../client/cards/own/counting.ts';
import { totalsOf } from '../../client/cards/own/reports.ts';
import { emptyCard, nextYears, openShelf } from '../../client/cards/own/shelf.ts';
import type { TextStorage } from '../../client/storage/browser-storage.ts';
import { cardForTables, listOwnCards, markCardUsed, unplayable } from '../../client/storage/own-cards.ts';
import { canonicalPattern } from '../../shared-engine/card/canonical.ts';
import { meanSameHands } from '../../shared-engine/card/compare.ts';
import { exampleOf } from '../../shared-engine/card/example.ts';
import type { CardFile } from '../../shared-engine/card/format.ts';
import { HOUSE_CARD } from '../../shared-engine/card/house/card.ts';
import { parseCard } from '../../shared-engine/card/parse.ts';
import { readShorthand } from '../../shared-engine/card/shorthand/read.ts';
import { writeShorthand } from '../../shared-engine/card/shorthand/write.ts';
import { memoryStorage } from '../kit/memory-storage.ts';

function shelfIn(storage: TextStorage = memoryStorage()) {
  let ids = 0;
  return openShelf(storage, () => `id${++ids}`);
}

const full = (storage: TextStorage): TextStorage => ({ ...storage, write: () => false });
const begun = emptyCard('Tuesday club', 'First');
const hand = (text: string) => {
  const read = readShorthand(text);
  if (!read.ok) throw new Error(text);
  return read.pattern;
};
const withHand = (card: CardFile, text: string): CardFile => ({
  ...card,
  patterns: [{ id: 'hand', section: card.sections[0]!.id, ...hand(text) }],
});

describe('the shelf', () => {
  it('keeps cards apart that have one name, and none is taken for the house card', () => {
    const storage = memoryStorage();
    const shelf = shelfIn(storage);
    for (const card of [HOUSE_CARD, begun, begun, HOUSE_CARD]) shelf.add(card);
    expect(shelf.entries.value.map(({ name }) => name)).toEqual([
      'House card (2)',
      'Tuesday club',
      'Tuesday club (2)',
      'House card (3)',
    ]);
    const copy = shelf.open(shelf.entries.value[0]!.key)!.card;
    expect(copy.id).not.toBe(HOUSE_CARD.id);
    expect(meanSameHands(copy, HOUSE_CARD)).toBe(true);
    expect(listOwnCards(storage)).toEqual(shelf.entries.value);
  });

  it('gives tables the hands that are ready, and remembers when it did', () => {
    const storage = memoryStorage();
    const shelf = shelfIn(storage);
    const key = shelf.add(begun)!.key;
    expect(cardForTables(storage, key)).toBeNull();
    const { card, revision } = shelf.open(key)!;
    const two = withHand(card, '4f 3a 3a+1 4match');
    const draft: CardFile = {
      ...two,
      name: ' ',
      patterns: [...two.patterns, { ...two.patterns[0]!, id: 'b', groups: [] }],
    };
    shelf.store(key, draft, revision);
    const playable = parseCard(cardForTables(storage, key));
    expect(playable.ok && [playable.card.patterns.length, playable.card.name]).toEqual([
      1,
      'Card without a name',
    ]);
    markCardUsed(storage, key, '2026-11-26');
    expect(listOwnCards(storage)[0]!.used).toBe('2026-11-26');
    expect(cardForTables(storage, 'gone')).toBeNull();
  });

  it('F3 says which card cannot be played, and that one is not here any more', () => {
    const storage = memoryStorage();
    const shelf = shelfIn(storage);
    const key = shelf.add(begun)!.key;
    expect([unplayable(storage, null), unplayable(storage, key), unplayable(storage, 'gone')]).toEqual([
      null,
      'Tuesday club',
      '',
    ]);
    shelf.store(key, withHand(begun, '4f 3a 3a+1 4match'), shelf.open(key)!.revision);
    expect(unplayable(storage, key)).toBeNull();
  });

  it('F1 keeps a card of too many hands, names the widest, and gives tables none of it', () => {
    const storage = memoryStorage();
    const shelf = shelfIn(storage);
    const wide = withHand(begun, '4a / 3b / 2c 3wind 2f');
    const [one] = wide.patterns;
    const card: CardFile = { ...wide, patterns: [one!, { ...one!, id: 'again' }] };
    const key = shelf.add(card)!.key;
    expect(shelf.open(key)!.card.patterns).toHaveLength(2);
    expect(cardForTables(storage, key)).toBeNull();
    for (const pattern of card.patterns) wholeReportOf(pattern, {});
    expect(totalsOf({ ...begun, patterns: [{ ...one!, groups: [] }] })).toMatchObject({ ready: 0, all: 0 });
    expect(totalsOf(card)).toMatchObject({
      ready: 2,
      widest: [{ name: 'First 1', ways: 12_096 }, { ways: 12_096 }],
    });
    const read = readCardText(JSON.stringify(card));
    expect(read.ok && read.card.patterns).toHaveLength(2);
  });

  it('tells a name that is taken by another card, as far as a reader can tell, from the card’s own', () => {
    const shelf = shelfIn();
    const [one, other] = [shelf.add(begun)!, shelf.add({ ...begun, name: ' ' })!];
    expect(other.name).toBe('Card without a name');
    expect(
      [' tuesday  CLUB', 'Tuesday club', 'House card', 'Tuesday'].map((name) =>
        shelf.isTaken(name, other.key),
      ),
    ).toEqual([true, true, true, false]);
    expect(shelf.isTaken('Tuesday club', one.key)).toBe(false);
  });

  it('takes back what was deleted, puts cards away, and begins next year’s card without hands', () => {
    const shelf = shelfIn();
    const entry = shelf.add({
      ...withHand(begun, '6f 4a 4a+1'),
      name: 'Club 2026',
      parameters: { year: 2026 },
    })!;
    const undo = shelf.remove(entry);
    expect([shelf.entries.value, shelf.open(entry.key)]).toEqual([[], null]);
    expect(undo()).toBe(true);
    shelf.archive(entry, true);
    expect(shelf.entries.value).toEqual([{ ...entry, archived: true }]);
    const next = nextYears(shelf.open(entry.key)!.card);
    expect([next.name, next.parameters.year, next.sections, next.patterns]).toEqual([
      'Club 2027',
      2027,
      begun.sections,
      [],
    ]);
  });

  it('says when the browser stores nothing more, and when what is stored is no card', () => {
    const storage = memoryStorage({
      'own-card.x': '{"revision":"1","card":{}}',
      'own-card.y': 'torn',
      'own-cards': '{',
    });
    expect(shelfIn(full(storage)).add(begun)).toBeNull();
    expect([shelfIn(storage).open('x'), shelfIn(storage).open('y'), listOwnCards(storage)]).toEqual([
      null,
      null,
      [],
    ]);
  });
});

describe('a card on its way to somebody else', () => {
  it('comes out of a link and out of a file byte for byte', async () => {
    for (const card of [HOUSE_CARD, begun, { ...withHand(begun, '2a'), name: 'Été, 東 🀀' }]) {
      const unpacked = await unpackCard(await packCard(card));
      expect(unpacked.ok && cardText(unpacked.card)).toBe(cardText(card));
      const read = readCardText(cardText(card));
      expect(read.ok && cardText(read.card)).toBe(cardText(card));
    }
    expect((await packCard(HOUSE_CARD)).length).toBeLessThan(6_000);
  });

  it('is rejected in words when it is torn, foreign or of a later version', async () => {
    const packed = await packCard(HOUSE_CARD);
    const said = async (text: string) => {
      const answer = await unpackCard(text);
      return answer.ok ? 'a card' : answer.problems[0]!;
    };
    for (const torn of [
      packed.slice(0, -1),
      packed.slice(0, 400),
      `${packed.slice(0, 90)}A${packed.slice(91)}`,
    ]) {
      expect(await said(torn)).toMatch(/^Part of this card link is missing\./);
    }
    expect(await said(packed.replace(/^1/, '2'))).toMatch(/newer Quadrille/);
    for (const foreign of ['', '1', '1.', 'x.y', '1.%', packed.slice(2)])
      expect(await said(foreign)).toMatch(/no card link/);
  });

  it('a few letters that unpack to more than any card are given up', async () => {
    const bytes = new Response(
      new Blob([new Uint8Array(8_000_000)]).stream().pipeThrough(new CompressionStream('gzip')),
    );
    const bomb = Buffer.from(await bytes.arrayBuffer()).toString('base64url');
    expect(await unpackCard(`1.${bomb}`)).toMatchObject({ ok: false, problems: [/^Part of this card link/] });
  });

  it('a file that is no card says what to do, one with an unfinished hand is taken for finishing', () => {
    expect(readCardText('[')).toMatchObject({ ok: false, problems: [/cannot be read as JSON/] });
    expect(readCardText('{"format":"other"}').ok).toBe(false);
    expect(readCardText(JSON.stringify(withHand(begun, '2a'))).ok).toBe(true);
    const twice = withHand(begun, '2a');
    const broken = { ...twice, patterns: [...twice.patterns, ...twice.patterns] };
    expect(readCardText(JSON.stringify(broken))).toMatchObject({
      ok: false,
      problems: expect.arrayContaining([expect.stringMatching(/two patterns have this id/)]),
    });
  });
});

describe('a card while it is edited', () => {
  function editing(storage = memoryStorage()) {
    const shelf = shelfIn(storage);
    const { key } = shelf.add(begun)!;
    const timers: (() => void)[] = [];
    const startTimer = (_: number, run: () => void) => {
      timers.splice(0, timers.length, run);
      return () => void timers.splice(0);
    };
    const open = (from = shelf) => openSession(key, { shelf: from, startTimer })!;
    return {
      shelf,
      key,
      storage,
      open,
      session: open(),
      later: () => {
        for (const run of timers.splice(0)) run();
      },
    };
  }
  const called = (card: CardFile, name: string) => ({ ...card, name });

  it('goes back and forth step by step, typing in one field being one step', () => {
    const { session } = editing();
    const name = () => session.card.value.name;
    for (const text of ['A', 'Ab', 'Abc']) session.change(called(session.card.value, text), 'name');
    session.change(withHand(session.card.value, '2a'));
    session.undo();
    expect([name(), session.card.value.patterns.length]).toEqual(['Abc', 0]);
    session.undo();
    expect([name(), session.canUndo.value]).toEqual(['Tuesday club', false]);
    session.redo();
    session.redo();
    expect([name(), session.card.value.patterns.length, session.canRedo.value]).toEqual(['Abc', 1, false]);
  });

  it('stores itself after a moment, and drops a hand that was left empty', () => {
    const { session, shelf, key, later } = editing();
    session.change({ ...begun, patterns: [{ id: 'empty', section: 'section-1', ...hand('') }] });
    session.show('empty');
    expect([session.storing.value, shelf.open(key)!.card.patterns.length]).toEqual(['changed', 0]);
    later();
    expect([session.storing.value, shelf.open(key)!.card.patterns.length]).toEqual(['stored', 1]);
    session.show(null);
    session.flush();
    expect(shelf.open(key)!.card.patterns).toEqual([]);
  });

  it('in two tabs never overwrites the other one silently; either version can be gone on with', () => {
    const { session, shelf, key, open, later } = editing();
    const other = open();
    other.change(called(begun, 'Theirs'));
    other.flush();
    session.change(called(begun, 'Mine'));
    later();
    expect(session.storing.value).toBe('changed-elsewhere');
    session.change(called(begun, 'Mine again'));
    session.flush();
    expect(shelf.open(key)!.card.name).toBe('Theirs');
    session.takeOther();
    expect([session.card.value.name, session.storing.value]).toEqual(['Theirs', 'stored']);
    session.undo();
    session.flush();
    expect(shelf.open(key)!.card.name).toBe('Mine again');
    other.changedElsewhere();
    expect(other.storing.value).toBe('changed-elsewhere');
  });

  it('says that nothing is stored when the browser refuses, and stores as soon as it does not', () => {
    const storage = memoryStorage();
    const { open } = editing(storage);
    let refuses = true;
    const moody: TextStorage = { ...storage, write: (key, text) => !refuses && storage.write(key, text) };
    const session = open(shelfIn(moody));
    session.change(called(begun, 'Kept later'));
    session.flush();
    expect(session.storing.value).toBe('refused');
    refuses = false;
    session.flush();
    expect(session.storing.value).toBe('stored');
  });
});

describe('the help for typing', () => {
  it('says nothing that cannot be typed, and its whole hands can be made', () => {
    for (const [typed] of TYPING.rows) {
      for (const sign of typed.split(/ … | {2,}/)) {
        expect(readShorthand(`2a / 2a 2wind 2wind2 2dragon ${sign}`).ok, sign).toBe(true);
      }
    }
    for (const [typed] of TYPING.hands) {
      const report = wholeReportOf({ id: 'typed', section: 'first', ...hand(typed) }, {});
      expect([typed, report.tiles, report.problems]).toEqual([typed, 14, []]);
    }
  });
});

describe('a hand laid as it stands on a card', () => {
  const nothing: Shown = { pattern: hand(''), faces: [] };
  const laid = (answers = USUAL_ANSWERS) =>
    (['bam-2', 'bam-5', 'crak-5', 'red', 'east'] as const).reduce<Shown>(
      (shown, face) => withGroup(shown, { size: 2, face, as: 'tile' }, answers),
      nothing,
    );

  it('means any such row in any suits with their dragons, unless somebody says otherwise', () => {
    expect(writeShorthand(laid().pattern)).toBe('2a 2a+3 / 2a+3 2match 2east 25');
    const exact = { numbers: 'exact', suits: 'exact', winds: 'any', dragons: 'any' } as const;
    expect(writeShorthand(laid(exact).pattern)).toBe('/bam 2x2 2x5 /crak 2x5 2dragon 2wind 25');
  });

  it('is meant otherwise as a whole or group by group, and back', () => {
    const numbers = answeredAs(laid(), 'numbers', { ...USUAL_ANSWERS, numbers: 'exact' });
    expect(writeShorthand(numbers.pattern)).toBe('2x2 2x5 / 2x5 2match 2east 25');
    const suits = answeredAs(laid(), 'suits', { ...USUAL_ANSWERS, suits: 'exact' });
    expect(writeShorthand(suits.pattern)).toBe('/bam 2a 2a+3 /crak 2a+3 2red 2east 25');
    expect(writeShorthand(answeredAs(suits, 'suits', USUAL_ANSWERS).pattern)).toBe(
      '2a 2a+3 / 2a+3 2red 2east 25',
    );
    const own = meantAs(laid(), 1, { ...USUAL_ANSWERS, numbers: 'own' });
    expect(writeShorthand(own.pattern)).toBe('2a 2b / 2a+3 2match 2east 25');
    expect(meaningOf(own.pattern.groups[1]!.tile).numbers).toBe('own');
  });

  it('means the pattern again that it is an example of, for every pattern of the house card meant in one way', () => {
    let compared = 0;
    for (const pattern of HOUSE_CARD.patterns) {
      const body = canonicalPattern(pattern);
      if (body.where) continue;
      const { faces } = exampleOf(body, {}, 'laid')!;
      const shown = body.groups.reduce<Shown>(
        (sofar, { size, tile }, nth) =>
          withGroup(
            sofar,
            { size, face: faces[nth]!, as: 'zero' in tile ? 'zero' : 'tile' },
            meaningOf(tile),
          ),
        { pattern: { ...body, groups: [] }, faces: [] },
      );
      const file = (groups: typeof body): CardFile => ({
        ...HOUSE_CARD,
        patterns: [{ ...pattern, ...groups }],
      });
      expect(meanSameHands(file(shown.pattern), file(body)), pattern.id).toBe(true);
      compared++;
    }
    expect(compared).toBeGreaterThan(50);
  });
});
