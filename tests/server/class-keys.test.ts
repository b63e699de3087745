// A teacher's key and the code of the big screen: what they open, what they do not, and how they end.
import { afterAll, beforeAll, expect, test } from 'vitest';
import { createMetrics } from '../../server/http/metrics.ts';
import { hashSecret } from '../../server/secrets.ts';
import { drillFileParts } from '../../shared-engine/drill/file.ts';
import {
  bigScreenSchema,
  classInfoSchema,
  screenCodeSchema,
  teacherKeySchema,
} from '../../shared-engine/protocol/class.ts';
import { CLASSES_PATH, classPath } from '../../shared-engine/protocol/paths.ts';
import { act, cookieIn, dashboardOf, joinClass, openClass, page, type Teacher } from '../kit/class-room.ts';
import { dealOf, drillOf } from '../kit/drills.ts';
import { post } from '../kit/http-client.ts';
import { seedNamed } from '../kit/rounds.ts';
import { startServer, type TestServer } from '../kit/server.ts';

const metrics = createMetrics();
let at: TestServer;
let teacher: Teacher;
/** Every secret that was told here; none may be in a log or a metric. */
const secrets: string[] = [];

beforeAll(async () => {
  at = await startServer({ seed: 'class keys', metrics });
  teacher = await opened();
});
afterAll(() => at.stop());

function opened(): Promise<Teacher> {
  return openClass(at, drillOf([dealOf({ kind: 'random', seed: seedNamed('keys') })]));
}

const to = (part: Parameters<typeof classPath>[1], of = teacher) => `${at.url}${classPath(of.code, part)}`;

async function newKey(of = teacher) {
  const made = teacherKeySchema.parse(await (await post(to('keys', of), {}, of.secret)).json());
  secrets.push(made.key);
  return made;
}

async function newCode(of = teacher): Promise<string> {
  const { code } = screenCodeSchema.parse(await (await post(to('screen-codes', of), {}, of.secret)).json());
  secrets.push(code);
  return code;
}

async function screenWith(code: string, of = teacher): Promise<string> {
  const secret = cookieIn(await post(to('screens', of), { code }), 'screen');
  secrets.push(secret);
  return secret;
}

const get = (part: Parameters<typeof classPath>[1], secret: string, of = teacher) =>
  fetch(to(part, of), { headers: { authorization: `Bearer ${secret}` } });
const codeOf = async (response: Response) => [response.status, (await response.json()).code];

test('TK1 a key opens the same dashboard at another computer, after the end too, and makes keys of its own', async () => {
  const own = await opened();
  const { key } = await newKey(own);
  const brought = await post(to('teacher', own), { key });
  const other: Teacher = { code: own.code, secret: cookieIn(brought, 'teacher') };
  const seen = async (who: Teacher) => ({ ...(await dashboardOf(at, who)), version: 0 });
  expect(await seen(other)).toEqual(await seen(own));
  expect((await act(at, other, { kind: 'end' })).status).toBe(200);
  const third = await newKey(other);
  expect(await seen({ code: own.code, secret: third.key })).toMatchObject({ ended: true });
});

test('TK2 wrong keys, keys of another class and keys taken back are rejected alike, in words that say what to do', async () => {
  const { id, key } = await newKey();
  const foreign = await newKey(await opened());
  const desk = cookieIn(await post(to('teacher'), { key }), 'teacher');
  const waits = await dashboardOf(at, { ...teacher, secret: desk });
  const waiting = page(at, { ...teacher, secret: desk }, 'dashboard', `?seen=${waits.version}`);
  expect((await act(at, teacher, { kind: 'revoke-key', key: id })).status).toBe(200);
  expect((await act(at, teacher, { kind: 'revoke-key', key: id })).status).toBe(200);
  // Whoever had opened the dashboard with it is out, also out of a request that waits.
  expect(await codeOf(await waiting)).toEqual([403, 'not-the-teacher']);
  const answers = await Promise.all(
    [key, foreign.key, 'x'.repeat(43), ''].map(async (one) =>
      (await post(to('teacher'), { key: one })).text(),
    ),
  );
  expect(new Set(answers).size).toBe(1);
  expect(JSON.parse(answers[0]!)).toMatchObject({ code: 'wrong-key', message: /^This key does not open/ });
  expect((await dashboardOf(at, teacher)).keys.map((one) => one.id)).not.toContain(id);
});

test('TK7 whoever brings a key has the drill of the class as a file, which opens the same class again; nobody else has it', async () => {
  const own = await opened();
  const { key } = await newKey(own);
  const desk = cookieIn(await post(to('teacher', own), { key }), 'teacher');
  const file = await (await get('drill', desk, own)).json();
  expect(drillFileParts(file)).toMatchObject({ card: null, class: { names: false } });
  const { class: terms, ...drill } = file;
  const again = await post(`${at.url}${CLASSES_PATH}`, { drill, terms, card: null });
  expect(again.status).toBe(201);
  const player = await joinClass(at, own.code, 'Ines');
  const screen = await screenWith(await newCode(own), own);
  for (const secret of [player.classSecret, screen, 'x'.repeat(43)])
    expect(await codeOf(await get('drill', secret, own))).toEqual([403, 'not-the-teacher']);
});

test('TK3 of a class twelve keys are good at once, and only a teacher makes them', async () => {
  const own = await opened();
  const player = await joinClass(at, own.code, 'Ines');
  expect(await codeOf(await post(to('keys', own), {}, player.classSecret))).toEqual([403, 'not-the-teacher']);
  for (let made = 0; made < 12; made++) await newKey(own);
  expect(await codeOf(await post(to('keys', own), {}, own.secret))).toEqual([409, 'too-many-keys']);
  await act(at, own, { kind: 'revoke-key', key: 3 });
  expect((await newKey(own)).id).toBe(12);
});

test('TK4 the code of the big screen opens that and nothing else, until a newer code is made or the class ends', async () => {
  const own = await opened();
  const code = await newCode(own);
  const typed = `${code.slice(0, 3).toLowerCase()} ${code.slice(3)}`;
  const screen = await screenWith(typed, own);
  expect(bigScreenSchema.parse(await (await get('big-screen', screen, own)).json()).code).toBe(own.code);
  expect(classInfoSchema.parse(await (await get('', screen, own)).json())).toMatchObject({
    teacher: false,
    screen: true,
    player: null,
  });
  for (const part of ['dashboard', 'report'] as const) {
    expect(await codeOf(await get(part, screen, own))).toEqual([403, 'not-the-teacher']);
  }
  expect((await act(at, { ...own, secret: screen }, { kind: 'end' })).status).toBe(403);
  expect(await codeOf(await get('big-screen', screen))).toEqual([403, 'not-the-teacher']);
  const newer = await newCode(own);
  expect(await codeOf(await get('big-screen', screen, own))).toEqual([403, 'not-the-teacher']);
  expect(await codeOf(await post(to('screens', own), { code }))).toEqual([403, 'wrong-screen-code']);
  const second = await screenWith(newer, own);
  await act(at, own, { kind: 'end' });
  const ended = bigScreenSchema.parse(await (await get('big-screen', second, own)).json());
  expect([ended.ended, ended.shown, ended.spread]).toEqual([true, null, null]);
  expect(await codeOf(await post(to('screens', own), { code: newer }))).toEqual([409, 'class-over']);
});

test('TK5 somebody who tries codes or keys is slowed down, from one address and at one class', async () => {
  const own = await opened();
  const code = await newCode(own);
  const from = async (address: number) => {
    const answer = await at.app.inject({
      method: 'POST',
      url: classPath(own.code, 'screens'),
      remoteAddress: `192.0.2.${address}`,
      payload: { code: 'AAAAAA' },
    });
    return answer.json().code as string;
  };
  const many: string[] = [];
  for (let attempt = 0; attempt < 21; attempt++) many.push(await from(1));
  expect([many[0], many[19], many[20]]).toEqual(['wrong-screen-code', 'wrong-screen-code', 'too-fast']);
  for (let attempt = 0; attempt < 10; attempt++) await from(2);
  expect(await from(3)).toBe('too-often');
  const keys: number[] = [];
  for (let attempt = 0; attempt < 21; attempt++) {
    const answer = await at.app.inject({
      method: 'POST',
      url: classPath(own.code, 'teacher'),
      remoteAddress: '192.0.2.4',
      payload: { key: 'A'.repeat(43) },
    });
    keys.push(answer.statusCode);
  }
  expect([keys[19], keys[20]]).toEqual([403, 429]);
  at.clock.advance(60_000);
  expect(await screenWith(code, own)).not.toBe('');
});

test('TK1 no key, no code and no secret of a screen is in the store, a log line or a metric', async () => {
  expect(secrets.length).toBeGreaterThan(20);
  const logs = await Promise.all(
    (await at.store.codes(null, 100)).map(async (code) => JSON.stringify(await at.store.history(code))),
  );
  const texts = [...at.logged, await metrics.text(), ...logs].join('\n');
  expect(secrets.filter((secret) => texts.includes(secret))).toEqual([]);
  // The search itself finds what is there.
  expect(texts).toContain(hashSecret(secrets[0]!));
});

test('TK6 what two dashboards do at once is done once, and what was meant for another deal is not done', async () => {
  const drill = drillOf(['a', 'b', 'c'].map((id) => dealOf({ kind: 'random', seed: seedNamed(id) }, { id })));
  const own = await openClass(at, drill, { names: true });
  const { key } = await newKey(own);
  const other: Teacher = { code: own.code, secret: key };
  const both = await Promise.all([own, other].map((desk) => act(at, desk, { kind: 'deal-next', dealt: 0 })));
  expect(both.map(({ status }) => status)).toEqual([200, 200]);
  expect((await dashboardOf(at, own)).dealt).toBe(1);
  await act(at, own, { kind: 'deal-next', dealt: 1 });
  const shown = { seat: 0, step: 'first-right', kind: 'pass', revealed: true } as const;
  for (const late of [
    { kind: 'show', shown, dealt: 1 },
    { kind: 'hold', before: 'vote', dealt: 1 },
    { kind: 'deal-next', dealt: 0 },
  ] as const) {
    expect(await codeOf(await act(at, other, late))).toEqual([409, 'class-moved-on']);
  }
  expect(await dashboardOf(at, own)).toMatchObject({ dealt: 2, shown: null, holdBefore: null });
  expect((await act(at, other, { kind: 'show', shown, dealt: 2 })).status).toBe(200);
});
