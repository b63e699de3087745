// A published drill on a device: what is stored of it, what its players are told, and the comments of a teacher.
import { describe, expect, it } from 'vitest';
import { dateAt, endOfDay } from '../../client/class/model/strings.ts';
import { withComment } from '../../client/class/prepare/draft.ts';
import { DRILL, promises, roundWords } from '../../client/class/published/strings.ts';
import {
  type DrillOnDevice,
  listPublished,
  notePublished,
  readDrillOnDevice,
  storeDrillOnDevice,
} from '../../client/storage/published.ts';
import { parseName } from '../../server/room/name.ts';
import { isQuestion } from '../../shared-engine/protocol/published.ts';
import { isVisibleName } from '../../shared-engine/rules/text.ts';
import { dealOf } from '../kit/drills.ts';
import { memoryStorage } from '../kit/memory-storage.ts';
import { publishedDrill } from '../kit/published-device.ts';
import { seedNamed } from '../kit/rounds.ts';

const drill = publishedDrill();

describe('a published drill on a device', () => {
  it('is read back with the rounds that wait, and a torn text is as if there were none', () => {
    const storage = memoryStorage();
    const round = {
      id: 'round-one',
      answers: [],
      questions: [],
      state: 'waiting',
      code: null,
      message: null,
    } as const;
    const device: DrillOnDevice = { drill, rounds: { first: round }, released: [] };
    expect(readDrillOnDevice(storage, drill.code)).toBeNull();
    expect(storeDrillOnDevice(storage, device)).toBe(true);
    expect(readDrillOnDevice(storage, drill.code)).toEqual(device);
    storage.write(`published.${drill.code}`, '{"drill":');
    expect(readDrillOnDevice(storage, drill.code)).toBeNull();
  });

  it('is listed for its teacher once, the newest first', () => {
    const storage = memoryStorage();
    for (const code of ['A', 'B', 'A']) notePublished(storage, { code, title: `Drill ${code}` });
    expect(listPublished(storage).map(({ code }) => code)).toEqual(['A', 'B']);
  });

  it('tells its players what becomes of their choices, and why a round is not counted', () => {
    const anonymous = promises(drill.terms, drill).join(' ');
    expect(anonymous).toMatch(/^Nobody learns what you chose\..*several players.*400 days/);
    const named = promises({ ...drill.terms, names: true }, drill).join(' ');
    expect(named).toMatch(/^Your teacher sees your name/);
    expect(named).not.toContain('Nobody learns');
    expect(promises(drill.terms, { ...drill, state: 'withdrawn' })).toEqual([
      expect.stringMatching(/^What you send is stored for 400 days/),
    ]);
    const round = {
      id: 'x',
      answers: [],
      questions: [],
      state: 'rejected',
      code: 'round-not-played',
      message: 'That round could not have been played so.',
    } as const;
    const open = { counted: false, state: 'open' } as const;
    expect([roundWords(round, open), roundWords(undefined, open)]).toEqual([
      'That round could not have been played so.',
      'Not played yet',
    ]);
  });

  it('tells how many have played a deal, one as one', () => {
    expect([1, 2].map(DRILL.through)).toEqual([
      '1 player has played this deal.',
      '2 players have played this deal.',
    ]);
  });

  it('ends with its last day by the clock of the teacher’s device', () => {
    const end = endOfDay('2026-12-31')!;
    expect([dateAt(end - 1), dateAt(end)]).toEqual(['2026-12-31', '2027-01-01']);
    expect(endOfDay('')).toBeNull();
  });
});

it('a comment on a step is written, changed and taken out of its deal again', () => {
  const deal = dealOf({ kind: 'random', seed: seedNamed('comment') });
  const written = withComment(deal, 'vote', { chosen: 1, words: 'Go on.' });
  const both = withComment(written, 'first-right', { chosen: undefined, words: 'Keep it.' });
  expect(both.comments).toEqual({
    vote: { chosen: 1, words: 'Go on.' },
    'first-right': { words: 'Keep it.' },
  });
  const one = withComment(both, 'vote', { chosen: undefined, words: '' });
  expect(one.comments).toEqual({ 'first-right': { words: 'Keep it.' } });
  expect(withComment(one, 'first-right', { chosen: undefined, words: '' })).toEqual(deal);
});

it('a name and a question are held at the page to what the server takes', () => {
  const names = ['Wilma', '王さん', '', '   ', '\u200B', 'turn\u202Earound', '\u0301\u0301'];
  expect(names.filter(isVisibleName)).toEqual(['Wilma', '王さん']);
  for (const name of names) expect(isVisibleName(name)).toBe(parseName(name) !== null);
  const questions = ['Why not\nthe pair?', ' ', 'turn\u202Earound', 'x'.repeat(281)];
  expect(questions.filter(isQuestion)).toEqual(['Why not\nthe pair?']);
});
