// Names and other texts that a person can set: nothing hides in them, and names that look alike are told apart.
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { distinctName, parseName } from '../../server/room/name.ts';
import { parseCard } from '../../shared-engine/card/parse.ts';
import { drillSchema } from '../../shared-engine/drill/format.ts';
import { CLASSES_PATH, roomPath } from '../../shared-engine/protocol/paths.ts';
import { lobbySchema } from '../../shared-engine/protocol/room-http.ts';
import { dashboardOf, joinClass, openClass, TERMS } from '../kit/class-room.ts';
import { dealOf, drillOf } from '../kit/drills.ts';
import { openRoom, post, takeSeat, watch } from '../kit/http-client.ts';
import { seedNamed } from '../kit/rounds.ts';
import { startServer, type TestServer } from '../kit/server.ts';

let server: TestServer;
beforeAll(async () => {
  server = await startServer({ seed: 'look-alikes' });
});
afterAll(() => server.stop());

const HIDDEN: readonly [string, string][] = [
  ['a zero-width space', 'In\u200Bes'],
  ['a joiner between Latin letters', 'In\u200Des'],
  ['a non-joiner between Latin letters', 'In\u200Ces'],
  ['a joiner at the end', 'Ines\u200D'],
  ['a word joiner', 'In\u2060es'],
  ['a soft hyphen', 'In\u00ADes'],
  ['a combining grapheme joiner', 'In\u034Fes'],
  ['an Arabic letter mark', 'Ines\u061C'],
  ['an override of direction', 'In\u202Ees'],
  ['an isolate', 'In\u2066es'],
  ['a Hangul filler', '\u3164Ines'],
  ['a half-width Hangul filler', 'Ines\uFFA0'],
  ['a Khmer vowel that shows nothing', 'In\u17B4es'],
  ['a Mongolian separator', 'In\u180Ees'],
  ['an empty Braille pattern', 'Ines\u2800'],
  ['a selector behind a letter', 'Ines\uFE0F'],
  ['a selector behind a digit', 'Ines 1\uFE0F'],
  ['one of the further selectors', 'Ines\u{E0100}'],
  ['letters of tags without a flag', 'Ines\u{E0061}\u{E0062}'],
  ['a musical sign that shows nothing', 'Ines\u{1D173}'],
  ['an annotation mark', 'In\uFFF9es'],
  ['a placeholder of an object', 'In\uFFFCes'],
  ['a byte-order mark', 'In\uFEFFes'],
  ['a line separator', 'In\u2028es'],
];

const SHOWN = [
  'Zoë',
  '王さん',
  'علی‌رضا',
  'क्‍ष',
  '👩🏽‍🌾',
  '👩‍👩‍👧‍👦',
  '🏴󠁧󠁢󠁳󠁣󠁴󠁿 Isla',
  '❤️',
  '1️⃣',
  '🇫🇷',
  'Ο Νίκος',
  'Ирина',
];

describe('AC8 a text that can be set', () => {
  test.each(HIDDEN)('with %s is no name', (_, text) => {
    expect(parseName(text)).toBeNull();
  });

  test.each(SHOWN)('%s is a name', (text) => {
    expect(parseName(text)).toBe(text.normalize('NFC'));
  });

  test('hides nothing in the title of a drill or of a deal, in a task or in a note', async () => {
    const deal = dealOf({ kind: 'random', seed: seedNamed('hidden') }, { id: 'one' });
    const drill = drillOf([deal]);
    for (const [, text] of HIDDEN) {
      const hidden = [
        { ...drill, title: text },
        ...['title', 'task', 'note'].map((entry) => ({ ...drill, deals: [{ ...deal, [entry]: text }] })),
      ];
      for (const one of hidden) expect(drillSchema.safeParse(one).success).toBe(false);
    }
    expect(drillSchema.safeParse({ ...drill, title: '王さん 👩🏽‍🌾' }).success).toBe(true);
    const two = { ...drill, deals: [{ ...deal, task: 'First line.\nSecond line.\tEnd.' }] };
    expect(drillSchema.safeParse(two).success).toBe(true);
    const body = { drill: { ...drill, title: 'In\u202Ees' }, terms: TERMS, card: null };
    const rejected = await post(`${server.url}${CLASSES_PATH}`, body);
    expect(await rejected.json()).toMatchObject({
      code: 'bad-drill',
      problems: [expect.stringContaining('that can all be seen')],
    });
  });

  test('hides nothing in the name of a card or of its sections', () => {
    const card = (name: string, section: string) => ({
      format: 'quadrille-card/1',
      id: 'mine',
      name,
      parameters: {},
      sections: [{ id: 'one', name: section }],
      patterns: [{ id: 'p', section: 'one', points: 25, concealed: false, groups: [] }],
    });
    for (const [, text] of HIDDEN) {
      for (const file of [card(text, 'One'), card('Mine', text)]) {
        const parsed = parseCard(file);
        const messages = parsed.ok ? [] : parsed.problems.map(({ message }) => message);
        expect(messages.join()).toContain('that can all be seen');
      }
    }
  });
});

describe('AC8 names that look alike', () => {
  test.each([
    ['Ines', 'Ines'],
    ['Ines', 'INES'],
    ['Ines', 'lnes'],
    ['Ines', 'Inеs'],
    ['Ines', 'Іnеs'],
    ['Oda', '0da'],
    ['Oda', 'Оdа'],
    ['Nora', 'Νοrа'],
    ['Wilma', 'Ｗｉｌｍａ'],
  ])('%s and %s get a number', (first, second) => {
    expect(distinctName(second, [first])).toBe(`${second} (2)`);
  });

  test.each([
    ['Ines', 'Agnes'],
    ['Ines', 'Inès'],
    ['Анна', 'Инна'],
    ['王さん', '玉さん'],
  ])('%s and %s stay as they are', (first, second) => {
    expect(distinctName(second, [first])).toBe(second);
  });

  test('get a number that nobody at the table has', () => {
    expect(distinctName('Ines', ['Ines', 'ines (2)', 'Ines (3)'])).toBe('Ines (4)');
  });

  test('are told apart at a table and in a class', async () => {
    const { code } = await openRoom(server);
    await takeSeat(server, code, { name: 'Inеs', seat: null });
    await takeSeat(server, code, { name: 'ines', seat: null });
    const lobby = lobbySchema.parse(await (await fetch(`${server.url}${roomPath(code)}`)).json());
    const names = lobby.seats.map((seat) => (seat.kind === 'empty' ? null : seat.name));
    expect(names).toEqual(['Ines', 'Inеs (2)', 'ines (3)', null]);
    const teacher = await openClass(
      server,
      drillOf([dealOf({ kind: 'random', seed: seedNamed('a') }, { id: 'a' })]),
    );
    for (const name of ['Odo', 'Odo', '0do']) await joinClass(server, teacher.code, name);
    const players = (await dashboardOf(server, teacher)).players.map(({ name }) => name);
    expect(players).toEqual(['Odo', 'Odo (2)', '0do (3)']);
  });
});

describe('AC7 people who come at the same moment', () => {
  test('get different seats at a table, and the fifth is told that all are taken', async () => {
    const { code } = await openRoom(server);
    const three = await Promise.all(
      [1, 2, 3].map((n) => takeSeat(server, code, { name: `P${n}`, seat: null })),
    );
    expect(three.map(({ seat }) => seat).sort()).toEqual([1, 2, 3]);
    const seats = await post(`${server.url}${roomPath(code)}/seats`, { name: 'Late', seat: null });
    expect(await seats.json()).toMatchObject({ code: 'seat-taken' });
  });

  test('get different places in a class, also at two servers that share a store', async () => {
    const { store, clock } = server;
    const other = await startServer({ seed: 'another', store, clock });
    const drill = {
      ...drillOf([dealOf({ kind: 'random', seed: seedNamed('b') }, { id: 'b' })]),
      form: 'tables',
    } as const;
    const teacher = await openClass(server, drill);
    const first = await joinClass(server, teacher.code, 'Ines');
    const second = await joinClass(other, teacher.code, 'Tomas');
    const joined = await Promise.all(
      [server, other, server, other].map((at, n) => joinClass(at, teacher.code, `P${n}`)),
    );
    const places = [first, second, ...joined].map(({ code, seat }) => `${code}/${seat}`);
    expect(new Set(places).size).toBe(6);
    await other.stop();
  });
});

test('AC9 no more spectators get in than a table takes, however many tickets there are', async () => {
  const { code } = await openRoom(server);
  const came = await Promise.allSettled(Array.from({ length: 60 }, () => watch(server, code)));
  expect(came.filter(({ status }) => status === 'fulfilled')).toHaveLength(40);
});
