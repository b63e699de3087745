// What a device keeps of others’ pages: the deals of a class that were taken home, and what clubs’ pages told last.
import { describe, expect, it } from 'vitest';
import { ClubReader } from '../../client/class/club/club-reader.ts';
import { pathInKeyFile } from '../../client/class/keys/teacher-key.ts';
import { type ApiResult, existence } from '../../client/connection/api.ts';
import { mayCome } from '../../client/room/bring-home.ts';
import { forgetClub, listClubs, readClub, storeClub } from '../../client/storage/clubs.ts';
import { noteListed, readListed } from '../../client/storage/listed-table.ts';
import {
  homeDeal,
  noteHome,
  noteHomeAnswers,
  readHome,
  readHomeAnswers,
  storeHome,
} from '../../client/storage/taken-home.ts';
import type { ClubPage } from '../../shared-engine/protocol/club.ts';
import type { TakenHome } from '../../shared-engine/protocol/take-home.ts';
import type { Face, Four } from '../../shared-engine/rules/tiles/face.ts';
import { memoryStorage } from '../kit/memory-storage.ts';
import { publishedDrill } from '../kit/published-device.ts';
import { seedNamed } from '../kit/rounds.ts';

describe('a deal that was taken home', () => {
  const { tableTerms, bots, card } = publishedDrill();
  const racks: Four<readonly Face[]> = [['bam-1'], ['bam-2'], ['bam-3'], ['joker']];
  const taken: TakenHome = {
    ...{ code: 'ABCD2345', title: 'Pairs', room: 'BCDE2345', terms: { cardClosed: false } },
    ...{ tableTerms, bots, card },
    deals: [
      {
        ...{ id: 'first', title: null, task: null, script: [], round: 2 },
        deal: { seed: seedNamed('home'), dealer: 0, prepared: racks },
      },
    ],
  };

  it('is found by the table and the round at which it was played, and nothing else is', () => {
    const storage = memoryStorage();
    noteHome(storage, taken.room, taken.code);
    expect([readHome(storage, taken.room)?.taken, homeDeal(storage, taken.room, 2)]).toEqual([null, null]);
    expect(storeHome(storage, taken)).toBe(true);
    // The class is looked into again, which takes nothing away.
    noteHome(storage, taken.room, taken.code);
    const found = homeDeal(storage, taken.room, 2);
    expect(found).toMatchObject({ taken, place: 0 });
    // A deal of an earlier round comes home later: what was kept of this one stays its own.
    const [deal] = taken.deals;
    storeHome(storage, { ...taken, deals: [{ ...deal!, id: 'earlier', round: 1 }, deal!] });
    expect(homeDeal(storage, taken.room, 2)).toMatchObject({ place: 1, key: found!.key });
    expect(homeDeal(storage, taken.room, 1)!.key).not.toBe(found!.key);
    storeHome(storage, taken);
    expect([homeDeal(storage, taken.room, 1), homeDeal(storage, 'CDEF2345', 2)]).toEqual([null, null]);
  });

  it('goes on where it was when the tab is loaded anew, and begins anew once it is over', () => {
    const tab = memoryStorage();
    const place = { room: taken.room, round: 2 };
    const answers = [{ kind: 'vote', step: 'vote', go: true }] as const;
    noteHomeAnswers(tab, place, answers);
    expect(readHomeAnswers(tab, place)).toEqual(answers);
    expect(readHomeAnswers(tab, { ...place, round: 1 })).toEqual([]);
    noteHomeAnswers(tab, place, null);
    expect(readHomeAnswers(tab, place)).toEqual([]);
    tab.write(`home-answers.${taken.room}.2`, '[{"kind":"vote"');
    expect(readHomeAnswers(tab, place)).toEqual([]);
  });

  it('is as if it were not there where its text is torn', () => {
    const storage = memoryStorage();
    storeHome(storage, taken);
    const key = `taken-home.${taken.room}`;
    storage.write(key, storage.read(key)!.slice(0, -9));
    expect(homeDeal(storage, taken.room, 2)).toBeNull();
  });
});

it('TH2 a class is asked again for a deal only while it lets deals go home and has not ended', () => {
  const player = { room: 'BCDE2345', seat: 0, deal: null, home: [] } as const;
  const open = { takeHome: true, ended: false, player: { ...player, home: [] } };
  expect(mayCome(open)).toBe(true);
  for (const otherwise of [{ takeHome: false }, { ended: true }, { player: null }])
    expect(mayCome({ ...open, ...otherwise })).toBe(false);
});

describe('a club’s page', () => {
  const page = (nth: number): ClubPage => ({
    ...{
      code: `CLUB234${nth}`,
      name: `Club ${nth}`,
      drill: null,
      tables: [],
      listed: [],
      keptOff: [],
      address: null,
    },
    ...{ keptDays: 400, teacher: false, keys: [] },
  });

  it('is there as it was told last, for the eight that were opened last', () => {
    const storage = memoryStorage();
    for (let nth = 0; nth < 9; nth++) storeClub(storage, page(nth));
    storeClub(storage, { ...page(2), name: 'Tuesday club' });
    expect(
      listClubs(storage)
        .map(({ name }) => name)
        .slice(0, 3),
    ).toEqual(['Tuesday club', 'Club 8', 'Club 7']);
    expect([listClubs(storage).length, readClub(storage, page(0).code)]).toEqual([8, null]);
    expect(readClub(storage, page(8).code)).toEqual(page(8));
    forgetClub(storage, page(8).code);
    expect([listClubs(storage).length, readClub(storage, page(8).code)]).toEqual([7, null]);
  });

  it('CB2 is known to the device of a host who put a table there, until the table is taken off', () => {
    const storage = memoryStorage();
    noteListed(storage, 'BCDE2345', page(0).code);
    expect(readListed(storage, 'BCDE2345')).toBe(page(0).code);
    expect(readListed(storage, 'CDEF2345')).toBeNull();
    for (const other of 'FGHJKLM') noteListed(storage, `${other}CDE2345`, page(1).code);
    expect(readListed(storage, 'BCDE2345')).toBe(page(0).code);
    noteListed(storage, 'BCDE2345', null);
    expect(readListed(storage, 'BCDE2345')).toBeNull();
    // Tables that are gone are told of by nobody: as many are remembered as stand on a page at once.
    const tables = Array.from({ length: 25 }, (_, nth) => `TABLE${nth}`);
    for (const other of tables) noteListed(storage, other, page(1).code);
    const forgotten = tables.filter((other) => readListed(storage, other) === null);
    expect([forgotten, readListed(storage, 'MCDE2345')]).toEqual([['TABLE0'], null]);
  });

  it('is told as it was asked for last, with a key that is brought again until the server has judged it', async () => {
    const told: string[] = [];
    const brought: string[] = [];
    const answers: ((page: ClubPage) => void)[] = [];
    let keyAnswer = { ok: false, code: 'unreachable', message: 'No network.' } as const as ApiResult<null>;
    const reader = new ClubReader(
      {
        bring: async (key) => {
          brought.push(key);
          return keyAnswer;
        },
        fetch: () => new Promise((resolve) => answers.push((value) => resolve({ ok: true, value }))),
        told: (answer) => told.push(answer.ok ? answer.value.name : answer.code),
        keyFailed: ({ message }) => told.push(message),
      },
      'key',
    );
    const asked = async (nth: number) => expect.poll(() => answers.length).toBe(nth);
    const first = reader.read();
    await asked(1);
    keyAnswer = { ok: false, code: 'wrong-key', message: 'Wrong key.' };
    const second = reader.read();
    await asked(2);
    answers[1]!(page(2));
    answers[0]!(page(1));
    await Promise.all([first, second]);
    const last = reader.read();
    await asked(3);
    reader.end();
    answers[2]!(page(3));
    await last;
    expect([told, brought]).toEqual([
      ['No network.', 'Wrong key.', 'Club 2'],
      ['key', 'key'],
    ]);
  });

  it('is missing only where the server says so, and not after another failure', () => {
    const failed = (code: string) => ({ ok: false, code, message: code }) as const;
    const there = (answer: ApiResult<unknown>) => existence(answer, 'no-such-club');
    expect(there({ ok: true, value: page(0) })).toEqual({ ok: true, value: true });
    expect(there(failed('no-such-club'))).toEqual({ ok: true, value: false });
    for (const code of ['too-fast', 'unreachable', 'unclear'])
      expect(there(failed(code))).toEqual(failed(code));
  });

  it('is opened by a key from a file, as a class and a drill are', () => {
    const file = (path: string) =>
      JSON.stringify({ format: 'quadrille-teacher-key/1', class: 'x', link: `http://table.test${path}` });
    const path = `/club/ABCD2345#key=${'a'.repeat(43)}`;
    expect(pathInKeyFile(file(path))).toBe(path);
    expect(pathInKeyFile(file(path.replace('club', 'none')))).toBeNull();
  });
});
