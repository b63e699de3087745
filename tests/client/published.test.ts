// A published drill on a device: what is stored of it, what its players are told, and the comments of a teacher.
import { describe, expect, it } from 'vitest';
import { dateAt, endOfDay } from '../../client/class/model/strings.ts';
import { withComment } from '../../client/class/prepare/draft.ts';
import { promises, roundWords } from '../../client/class/published/strings.ts';
import {
  type DrillOnDevice,
  listPublished,
  notePublished,
  readDrillOnDevice,
  storeDrillOnDevice,
} from '../../client/storage/published.ts';
import type { PublishedDrill } from '../../shared-engine/protocol/published.ts';
import { STANDARD_TERMS } from '../../shared-engine/rules/exchange/terms.ts';
import { dealOf } from '../kit/drills.ts';
import { memoryStorage } from '../kit/memory-storage.ts';
import { seedNamed } from '../kit/rounds.ts';

const drill: PublishedDrill = {
  code: 'ABCD2345',
  title: 'Club drill',
  state: 'open',
  until: 1_800_000_000_000,
  terms: { compare: 'at-once', names: false, cardClosed: false },
  tableTerms: STANDARD_TERMS.class,
  bots: ['typical', 'strong', 'casual'],
  deals: [],
  card: null,
  counted: [],
  keptDays: 400,
  teacher: false,
};

describe('a published drill on a device', () => {
  it('is read back with the rounds that wait, and a torn text is as if there were none', () => {
    const storage = memoryStorage();
    const round = { id: 'round-one', answers: [], questions: [], state: 'waiting', message: null } as const;
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
    const anonymous = promises(drill.terms, 400).join(' ');
    expect(anonymous).toMatch(/^Nobody learns what you chose\..*several players.*400 days/);
    const named = promises({ ...drill.terms, names: true }, 400).join(' ');
    expect(named).toMatch(/^Your teacher sees your name/);
    expect(named).not.toContain('Nobody learns');
    const round = {
      id: 'x',
      answers: [],
      questions: [],
      state: 'rejected',
      message: 'The last day is over.',
    } as const;
    expect([roundWords(round, false), roundWords(undefined, false)]).toEqual([
      'The last day is over.',
      'Not played yet',
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
