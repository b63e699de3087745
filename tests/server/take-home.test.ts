// The deals of a class that its players take home: who is sent which of them, and when.
import { expect, onTestFinished, test } from 'vitest';
import { CLASS } from '../../server/class/class.ts';
import { decideClass } from '../../server/class/decide.ts';
import { beginClass, evolveClass } from '../../server/class/evolve.ts';
import { classInfoSchema } from '../../shared-engine/protocol/class.ts';
import { CLASSES_PATH, classPath } from '../../shared-engine/protocol/paths.ts';
import { takenHomeSchema } from '../../shared-engine/protocol/take-home.ts';
import { act, joinAll, joinClass, openClass, TERMS } from '../kit/class-room.ts';
import { dealOf, drillOf } from '../kit/drills.ts';
import { ownView, playOn, post, sitDown } from '../kit/http-client.ts';
import { seedNamed } from '../kit/rounds.ts';
import { startServer } from '../kit/server.ts';

const DRILL = drillOf([
  dealOf({ kind: 'random', seed: seedNamed('home one') }, { title: 'Two pairs', note: 'Ask Ines.', seat: 2 }),
  dealOf({ kind: 'random', seed: seedNamed('home two') }, { id: 'second' }),
]);

test('TH3 a player is sent the deals that nobody has to finish any more, which nobody begins then, and when the class has ended those the player has finished', async () => {
  const at = await startServer({ seed: 'take home' });
  onTestFinished(() => at.stop());
  const teacher = await openClass(at, DRILL);
  const { players, peers } = await joinAll(at, teacher.code, ['Ines', 'Tomas']);
  const get = (part: '' | 'deals', secret: string) =>
    fetch(`${at.url}${classPath(teacher.code, part)}`, { headers: { authorization: `Bearer ${secret}` } });
  const rejection = async (secret: string) => (await (await get('deals', secret)).json()).code;
  const taken = async (nth: number) => {
    const { classSecret } = players[nth]!;
    const home = takenHomeSchema.parse(await (await get('deals', classSecret)).json());
    const { player } = classInfoSchema.parse(await (await get('', classSecret)).json());
    expect(player!.home).toEqual(home.deals.map(({ round }) => round));
    return home;
  };
  const untilRound = (round: number) =>
    Promise.all(peers.map((peer) => peer.untilTable((table) => table.round === round, 'the deal')));

  await act(at, teacher, { kind: 'deal-next' });
  await untilRound(1);
  const dealt = ownView(peers[0]!).rack;
  expect(await rejection(players[0]!.classSecret)).toBe('deals-not-given');
  await act(at, teacher, { kind: 'take-home', on: true });
  await playOn(peers[0]!, 'first');
  expect((await taken(0)).deals).toEqual([]);
  await playOn(peers[1]!, 'second');
  const home = await taken(0);
  expect(home).toMatchObject({
    title: DRILL.title,
    room: players[0]!.code,
    bots: DRILL.bots.styles,
    card: null,
  });
  expect(home.deals).toMatchObject([{ id: 'first', title: 'Two pairs', round: 1, script: [] }]);
  expect(home.deals[0]!.deal.prepared[0]).toEqual(dealt);
  expect(JSON.stringify(home)).not.toContain('Ask Ines.');
  // Neither the code alone nor the teacher's secret is a player's.
  for (const secret of ['nothing', teacher.secret]) expect(await rejection(secret)).toBe('no-such-class');

  // What is on the devices by now is played anew by nobody: who joins begins with the next deal, also when no more goes home.
  await act(at, teacher, { kind: 'take-home', on: false });
  const late = await joinClass(at, teacher.code, 'Late Pia');
  const pia = await sitDown(at, late);

  await act(at, teacher, { kind: 'take-home', on: true });
  await act(at, teacher, { kind: 'deal-next' });
  await untilRound(2);
  await pia.untilTable((table) => table.round === 1, 'the deal');
  expect(ownView(pia).rack).toEqual(ownView(peers[1]!).rack);
  await playOn(peers[1]!, 'third');
  expect((await taken(1)).deals.map(({ round }) => round)).toEqual([1]);
  await act(at, teacher, { kind: 'end' });
  expect((await taken(1)).deals.map(({ round }) => round)).toEqual([1, 2]);
  expect((await taken(0)).deals.map(({ round }) => round)).toEqual([1]);
  expect((await act(at, teacher, { kind: 'take-home', on: false })).status).toBe(200);
  expect(await rejection(players[0]!.classSecret)).toBe('deals-not-given');
});

test('TH3 who joins when everybody has finished the last deal plays it, and until then it goes home to nobody anew', async () => {
  const at = await startServer({ seed: 'take home late' });
  onTestFinished(() => at.stop());
  const teacher = await openClass(at, { ...DRILL, deals: DRILL.deals.slice(0, 1) }, { takeHome: true });
  const { players, peers } = await joinAll(at, teacher.code, ['Ines']);
  const roundsOf = async (secret: string) => {
    const headers = { authorization: `Bearer ${secret}` };
    const answer = await fetch(`${at.url}${classPath(teacher.code, 'deals')}`, { headers });
    return takenHomeSchema.parse(await answer.json()).deals.map(({ round }) => round);
  };
  await act(at, teacher, { kind: 'deal-next' });
  await peers[0]!.untilTable(({ round }) => round === 1, 'the deal');
  await playOn(peers[0]!, 'last');
  expect(await roundsOf(players[0]!.classSecret)).toEqual([1]);
  const late = await joinClass(at, teacher.code, 'Late Pia');
  const pia = await sitDown(at, late);
  await pia.untilTable(({ round }) => round === 1, 'the deal for the late one');
  for (const { classSecret } of [players[0]!, late]) expect(await roundsOf(classSecret)).toEqual([]);
  await playOn(pia, 'late');
  for (const { classSecret } of [players[0]!, late]) expect(await roundsOf(classSecret)).toEqual([1]);
});

test('TH2 players may take nothing home unless the teacher says so, also after the end, and never at tables of four', () => {
  const opened = (form: 'alone' | 'tables') =>
    beginClass({
      seq: 1,
      at: 0,
      event: {
        kind: 'opened',
        drill: { ...DRILL, form },
        deals: [],
        terms: TERMS,
        card: { kind: 'house' },
        secretHash: 'a'.repeat(64),
      },
    })!;
  const ended = evolveClass(opened('alone'), { seq: 2, at: 0, event: { kind: 'ended' } });
  expect(ended.takeHome).toBe(false);
  const on = { kind: 'take-home', on: true } as const;
  const decision = decideClass(ended, on, 0);
  expect(decision).toEqual({ ok: true, events: [on] });
  expect(evolveClass(ended, { seq: 3, at: 0, event: { ...on, on: false } }).wasTakenHome).toBe(false);
  const given = evolveClass(ended, { seq: 3, at: 0, event: on });
  expect(decideClass(given, on, 0)).toEqual({ ok: true, events: [] });
  expect(decideClass(given, { kind: 'take-home', on: false }, 0)).toMatchObject({ events: [{ on: false }] });
  // What went home stays there, also where the state is read back, from before this was stored as well.
  const kept = evolveClass(given, { seq: 4, at: 0, event: { ...on, on: false } });
  expect(CLASS.restore(opened('alone'), CLASS.snapshotOf(kept)!)).toEqual(kept);
  const { wasTakenHome, ...earlier } = JSON.parse(CLASS.snapshotOf(given)!);
  expect([wasTakenHome, CLASS.restore(opened('alone'), JSON.stringify(earlier))]).toEqual([true, given]);
  expect(decideClass(opened('tables'), on, 0)).toMatchObject({ ok: false, code: 'tables-of-four' });
});

test('TH2 a class at tables of four that would hand its deals out is not opened', async () => {
  const at = await startServer({ seed: 'take home' });
  onTestFinished(() => at.stop());
  const request = { drill: { ...DRILL, form: 'tables' }, terms: { ...TERMS, takeHome: true }, card: null };
  const answer = await post(`${at.url}${CLASSES_PATH}`, request);
  expect([answer.status, (await answer.json()).code]).toEqual([409, 'tables-of-four']);
});
