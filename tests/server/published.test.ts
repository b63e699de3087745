// A published drill at a server: played on devices at different times, counted, told of in steps, closed and taken back.
import { afterAll, beforeAll, expect, test } from 'vitest';
import { drillReportSchema } from '../../shared-engine/protocol/class-report.ts';
import { drillPath } from '../../shared-engine/protocol/paths.ts';
import {
  type PublishedDrill,
  publishedDashboardSchema,
  releasedSchema,
  roundSentSchema,
  type SendRound,
} from '../../shared-engine/protocol/published.ts';
import { STEPS } from '../../shared-engine/rules/exchange/schedule.ts';
import { cookieIn } from '../kit/class-room.ts';
import { post } from '../kit/http-client.ts';
import {
  DAY_MS,
  type DrillTeacher,
  device,
  fetchAt,
  openDrill,
  playAtRandom,
  playDeal,
  publish,
  quickDrill,
  request,
  sendRound,
} from '../kit/published.ts';
import { startServer, type TestServer, workers } from '../kit/server.ts';
import { proof } from '../prove/proofs/published.ts';

let at: TestServer;
let teacher: DrillTeacher;
let info: PublishedDrill;

beforeAll(async () => {
  at = await startServer({ seed: 'published' });
  const [first, second] = quickDrill(2).deals;
  const comments = { 'first-right': { chosen: ['bam-1', 'west'], words: 'Keep <b>the pair</b>.' } } as const;
  teacher = await publish(at, { ...quickDrill(2), deals: [{ ...first, comments }, second] });
  info = await openDrill(at, teacher.code, device('anybody'));
});
afterAll(() => at.stop());

const choicesOf = (who: string, place = 0, drill = info) =>
  playDeal(drill, place, playAtRandom(`${who} ${place}`)).choices;
const roundOf = (who: string, more: Partial<SendRound> = {}): SendRound => ({
  id: `round-of-${who.replace(' ', '-')}`,
  deal: 'deal-1',
  choices: choicesOf(who),
  questions: [],
  ...more,
});
const send = (who: string, more: Partial<SendRound> = {}, to = teacher) =>
  sendRound(at, to.code, device(who), roundOf(who, more));
const sent = async (response: Promise<Response>) => roundSentSchema.parse(await (await response).json());
const codeOf = async (response: Promise<Response> | Response) => {
  const answer = await response;
  return [answer.status, (await answer.json()).code];
};
const act = (action: unknown, of = teacher) =>
  post(`${at.url}${drillPath(of.code, 'actions')}`, action, of.secret);
const dashboard = async (of = teacher) =>
  publishedDashboardSchema.parse(await (await fetchAt(at, of.code, 'dashboard', of.secret)).json());
const report = async (server = at) =>
  drillReportSchema.parse(await (await fetchAt(server, teacher.code, 'report', teacher.secret)).json());

test('PD3 a device gets the whole deal with its comments once, and needs no server until it sends', () => {
  expect(info).toMatchObject({ state: 'open', keptDays: 400, teacher: false, counted: [] });
  const [first] = info.deals;
  expect(first?.deal.prepared.map(({ length }) => length)).toEqual([13, 14, 13, 13]);
  // Markup is text: who shows it decides that it stays one.
  expect(first?.comments?.['first-right']?.words).toBe('Keep <b>the pair</b>.');
});

test('PD1 a round that was changed, cut short or played elsewhere is rejected in words and counted nowhere', async () => {
  const honest = choicesOf('forger');
  const [first, ...rest] = honest;
  const [rack] = info.deals[0]!.deal.prepared;
  const foreign = (['bam-1', 'bam-2', 'bam-3', 'dot-9', 'north'] as const).filter(
    (face) => !rack!.includes(face),
  );
  const forged = { ...first!, tiles: [...foreign, ...rack!.slice(0, 3)].slice(0, 3) };
  const elsewhere = playDeal(info, 1, playAtRandom('forger 1')).choices;
  for (const choices of [
    [forged, ...rest],
    honest.slice(0, -1),
    [...honest, honest.at(-1)!],
    elsewhere,
    [],
  ]) {
    const response = await sendRound(at, teacher.code, device('forger'), {
      ...roundOf('forger'),
      choices: choices as SendRound['choices'],
    });
    const body = await response.json();
    expect([response.status, body.code]).toEqual([422, 'round-not-played']);
    expect(body.message).toMatch(/could not have been played so/);
  }
  expect(await codeOf(send('forger', { deal: 'no-such-deal' }))).toEqual([422, 'round-not-played']);
  expect((await openDrill(at, teacher.code, device('forger'))).counted).toEqual([]);
});

test('PD2 a round sent again is counted once and answered alike, and another one of its device is practice', async () => {
  const one = await sent(send('player 1'));
  expect(one).toMatchObject({ counted: true, released: { through: null, steps: [] } });
  expect(await sent(send('player 1'))).toEqual(one);
  expect(await sent(send('player 1', { id: 'another-round' }))).toMatchObject({ counted: false });
  expect((await openDrill(at, teacher.code, device('player 1'))).counted).toEqual(['deal-1']);
});

test('PD5 PD8 nothing is told before ten are through, then all at once, and questions come with it in no order', async () => {
  const asked = (text: string) => ({ questions: [{ step: 'vote' as const, text }] });
  for (let n = 2; n <= 9; n++)
    await send(`player ${n}`, n < 4 ? asked(n === 2 ? 'Why vote?' : 'And now?') : {});
  const before = [await dashboard(), await report()];
  expect(before[0]).toMatchObject({ deals: [{ through: null, questions: [] }, { through: null }] });
  const tenth = await sent(send('player 10'));
  expect(tenth.released.through).toBe(10);
  expect(tenth.released.steps.length).toBeGreaterThan(0);
  const { deals } = await dashboard();
  expect(deals[0]).toMatchObject({ through: 10, names: [] });
  expect(deals[0]?.questions.map(({ text }) => text)).toEqual(['And now?', 'Why vote?']);
  const told = await report();
  for (let n = 11; n <= 14; n++) await send(`player ${n}`);
  expect(await report()).toEqual(told);
  expect((await sent(send('player 15'))).released.through).toBe(15);
});

test('PD6 what was released is the same after a restart, and what others chose is told to who may compare', async () => {
  const told = await report();
  const again = await startServer({ seed: 'published again', store: at.store });
  expect(await report(again)).toEqual(told);
  await again.stop();
  const released = async (of: DrillTeacher, who: string) =>
    releasedSchema.parse(await (await fetchAt(at, of.code, 'released', device(who))).json()).deals;
  expect((await released(teacher, 'anybody')).map(({ through }) => through)).toEqual([15, null]);
  const terms = { compare: 'at-end', names: false, cardClosed: true } as const;
  const later = await publish(at, quickDrill(), { terms });
  const closed = await openDrill(at, later.code, device('x'));
  expect(closed.tableTerms.cardHelp).toBe('none');
  expect(await released(later, 'x')).toEqual([]);
  await send('x', { choices: choicesOf('x', 0, closed) }, later);
  expect(await released(later, 'x')).toHaveLength(1);
});

test('PD5 where players give a name their teacher sees who is through and every choice, and a name is needed', async () => {
  const terms = { compare: 'at-once', names: true, cardClosed: false } as const;
  const named = await publish(at, quickDrill(), { terms });
  expect(await codeOf(send('odo', {}, named))).toEqual([422, 'bad-name']);
  const { released } = await sent(send('odo', { name: 'Odo' }, named));
  expect(released).toMatchObject({ through: 1 });
  expect(released.steps[0]?.choices.map(({ count }) => count)).toEqual([1]);
  expect((await dashboard(named)).deals[0]).toMatchObject({ through: 1, names: ['Odo'] });
  const path = drillPath(named.code, 'personal-data');
  const headers = { authorization: `Bearer ${device('odo')}` };
  const { entries } = await (await fetch(`${at.url}${path}`, { headers })).json();
  expect(entries).toMatchObject([{ what: 'a round was counted', name: 'Odo', deal: 'deal-1' }]);
  expect((await fetch(`${at.url}${path}`, { method: 'DELETE', headers })).status).toBe(204);
  expect((await dashboard(named)).deals[0]).toMatchObject({ through: 1, names: [] });
  // Whoever has played and was given a teacher's key sees both, and deletes the own data alone.
  await sent(send('pia', { name: 'Pia' }, named));
  const both = { cookie: `teacher=${named.secret}; player=${device('pia')}` };
  const seen = await (await fetch(`${at.url}${path}`, { headers: both })).json();
  expect(seen.entries).toMatchObject([{ what: 'published the drill' }, { name: 'Pia' }]);
  const own = await fetch(`${at.url}${path}/device`, { method: 'DELETE', headers: both });
  expect([own.status, own.headers.getSetCookie().map((cookie) => cookie.split('=')[0])]).toEqual([
    204,
    ['player'],
  ]);
  expect((await dashboard(named)).deals[0]).toMatchObject({ through: 2, names: [] });
  const stored = JSON.stringify(await at.store.history(named.code));
  expect(stored).not.toContain('Odo');
});

test('PD4 after its last day a drill says so and counts nothing, until its teacher sets another day', async () => {
  const own = await publish(at, quickDrill(), { until: at.clock.now() + 1000 });
  at.clock.advance(2000);
  expect(await openDrill(at, own.code, device('late'))).toMatchObject({ state: 'over', deals: [] });
  expect(await codeOf(send('late', {}, own))).toEqual([409, 'drill-over']);
  for (const until of [at.clock.now() - 1, at.clock.now() + 500 * DAY_MS]) {
    expect(await codeOf(act({ kind: 'extend', until }, own))).toEqual([422, 'bad-last-day']);
    expect(await codeOf(post(`${at.url}/api/drills`, request(at, quickDrill(), { until })))).toEqual([
      422,
      'bad-last-day',
    ]);
  }
  expect((await act({ kind: 'extend', until: at.clock.now() + DAY_MS }, own)).status).toBe(200);
  expect(await sent(send('late', {}, own))).toMatchObject({ counted: true });
  expect((await act({ kind: 'withdraw' }, own)).status).toBe(200);
  expect(await codeOf(send('later', {}, own))).toEqual([409, 'drill-withdrawn']);
  expect(await codeOf(act({ kind: 'extend', until: at.clock.now() + DAY_MS }, own))).toEqual([
    409,
    'drill-withdrawn',
  ]);
  expect(await dashboard(own)).toMatchObject({ state: 'withdrawn' });
});

test('PD4 a key opens the teacher’s page elsewhere, and a lost or wrong one is rejected in words', async () => {
  const path = (part: 'keys' | 'teacher') => `${at.url}${drillPath(teacher.code, part)}`;
  expect(await codeOf(post(path('keys'), {}, device('anybody')))).toEqual([403, 'not-the-teacher']);
  const { id, key } = await (await post(path('keys'), {}, teacher.secret)).json();
  const other = { ...teacher, secret: cookieIn(await post(path('teacher'), { key }), 'teacher') };
  expect((await dashboard(other)).keys.map((one) => one.id)).toEqual([id]);
  expect((await act({ kind: 'revoke-key', key: id }, other)).status).toBe(200);
  const response = await post(path('teacher'), { key });
  expect(response.status).toBe(403);
  expect((await response.json()).message).toMatch(/^This key does not open/);
  expect(await codeOf(fetchAt(at, 'NOTTHERE', 'dashboard', teacher.secret))).toEqual([404, 'no-such-drill']);
});

test('PD1 bots that play deals out, a broken drill and a foreign card are rejected before anything is published', async () => {
  const { bots, ...drill } = quickDrill();
  const slow = { ...drill, bots: { ...bots, styles: ['thoughtful', 'casual', 'random'] } };
  const publishing = (json: unknown, more = {}) => post(`${at.url}/api/drills`, request(at, json, more));
  expect(await codeOf(publishing(slow))).toEqual([422, 'bots-too-slow']);
  expect(await codeOf(publishing({ format: 'quadrille-drill/1' }))).toEqual([422, 'bad-drill']);
  expect(await codeOf(publishing(quickDrill(), { card: { format: 'another' } }))).toEqual([422, 'bad-card']);
  expect(await codeOf(publishing(quickDrill(), { terms: {} }))).toEqual([400, 'bad-request']);
});

test('PD9 questions of 100,000 letters, of nothing or with hidden signs are rejected in words; others stay as written', async () => {
  const ask = (text: string) => codeOf(send('asker', { questions: [{ step: STEPS[0], text }] }));
  for (const text of ['x'.repeat(100_000), ' ', 'a\u202Eb', 'zero\u200Bwidth']) {
    expect(await ask(text)).toEqual([422, 'bad-question']);
  }
  expect((await send('asker', { questions: [{ step: STEPS[0], text: '<i>Why?</i>' }] })).status).toBe(200);
  const four = Array.from({ length: 4 }, () => ({ step: STEPS[0], text: 'Why?' }));
  expect(await codeOf(send('asker', { questions: four }))).toEqual([400, 'bad-request']);
});

test('PD9 one address sends so many rounds in a minute and is then told to wait, and busy workers lose none', async () => {
  const { prepare } = workers.drills;
  const busy = await startServer({ seed: 'busy', drills: { prepare, play: async () => null } });
  const own = await publish(busy, quickDrill());
  const round = roundOf('many');
  const sending = () => sendRound(busy, own.code, device('many'), round);
  expect(await codeOf(sending())).toEqual([503, 'busy']);
  const codes = await Promise.all(Array.from({ length: 240 }, async () => (await sending()).status));
  expect([codes.filter((status) => status === 503).length, codes.at(-1)]).toEqual([239, 429]);
  await busy.stop();
});

test('PD6 what is told of thirty players over a week is what an independent count of their rounds says', async () => {
  const rows = await proof.run({ seed: 'quadrille', size: 'small' });
  expect(rows.filter(({ ok }) => !ok)).toEqual([]);
});

test('PD4 a last day is no later than this server stores a drill that nobody plays', async () => {
  const short = await startServer({ seed: 'stored briefly', settings: { CLASS_RETENTION_DAYS: '30' } });
  const until = (days: number) => ({ until: short.clock.now() + days * DAY_MS });
  expect(await codeOf(post(`${short.url}/api/drills`, request(short, quickDrill(), until(31))))).toEqual([
    422,
    'bad-last-day',
  ]);
  const own = await publish(short, quickDrill(), until(29));
  const actions = `${short.url}${drillPath(own.code, 'actions')}`;
  const extended = post(actions, { kind: 'extend', ...until(31) }, own.secret);
  expect(await codeOf(extended)).toEqual([422, 'bad-last-day']);
  await short.stop();
});
