// The rounds that a browser stores: put in, listed, deleted, merged, and what is said when it refuses or forgets.
import { IDBFactory } from 'fake-indexeddb';
import 'fake-indexeddb/auto';
import { beforeEach, describe, expect, it } from 'vitest';
import { queueAt } from '../../client/practice/exercises/queue.ts';
import { historyModel } from '../../client/practice/history/model.ts';
import { findings } from '../../client/practice/history/strings.ts';
import { HISTORY_DATABASE } from '../../client/storage/browser-storage.ts';
import { closeDatabase, openDatabase } from '../../client/storage/history/database.ts';
import { noteChange } from '../../client/storage/history/durability.ts';
import { historyFileParts, readHistoryFile } from '../../client/storage/history/file.ts';
import {
  latestRounds,
  listRounds,
  listSchedules,
  readRound,
  storeRound,
  storeSchedule,
  storeVerdicts,
} from '../../client/storage/history/rounds.ts';
import { exercisesOf } from '../../shared-engine/practice/exercise.ts';
import type { RoundSummary, StoredChoice } from '../../shared-engine/practice/stored-round.ts';
import { memoryStorage } from '../kit/memory-storage.ts';
import { historyOf, STORED_CARD, storedChoice, storedRound } from '../kit/stored-rounds.ts';

beforeEach(async () => {
  await closeDatabase();
  globalThis.indexedDB = new IDBFactory();
});

const noPause = async () => {};
const one = storedRound('one', { playedAt: 1 });
const two = storedRound('two', { playedAt: 2 });

async function listed(): Promise<readonly RoundSummary[]> {
  const rounds = await listRounds();
  if (!rounds.ok) throw new Error(rounds.problem);
  return rounds.value;
}

async function ids(): Promise<readonly string[]> {
  return (await listed()).map(({ id }) => id);
}

describe('stored rounds', () => {
  it('come latest first, each once however often it is stored, with its card', async () => {
    await storeRound(one, STORED_CARD);
    await storeRound(two, STORED_CARD);
    const again = storedRound('one', { playedAt: 3, choices: [storedChoice({ verdict: 'costly' })] });
    expect(await storeRound(again, null)).toEqual({ ok: true, value: { isNew: false, count: 2 } });
    expect(await ids()).toEqual([two.summary.id, one.summary.id]);
    const read = await readRound(one.summary.id);
    const summary = { ...again.summary, playedAt: 1 };
    // What has been read is not read again until something has changed.
    const before = await listed();
    expect(await listed()).toBe(before);
    await storeVerdicts(one.summary.id, { choices: [storedChoice({ verdict: 'best' })], judge: 'later' });
    expect((await listed()).at(-1)!.judge).toBe('later');
    expect(read).toEqual({
      ok: true,
      value: { round: { summary, detail: one.detail }, card: STORED_CARD },
    });
  });

  it('that are deleted can be put back as they were', async () => {
    await storeRound(one, STORED_CARD);
    await storeRound(two, STORED_CARD);
    const model = historyModel({ notes: memoryStorage(), pause: noPause });
    await model.remove([one.summary.id]);
    expect(await ids()).toEqual([two.summary.id]);
    await model.putBack();
    expect(await ids()).toEqual([two.summary.id, one.summary.id]);
    expect(model.state.value.removed).toEqual([]);
    expect((await readRound(one.summary.id)).ok).toBe(true);
  });

  it('of two devices that both went on are all there after a merge, the same round once', async () => {
    const three = storedRound('three', { playedAt: 3 });
    const file = new Blob(historyFileParts(historyOf(two, three)));
    await storeRound(one, STORED_CARD);
    await storeRound(two, STORED_CARD);
    const model = historyModel({ notes: memoryStorage(), pause: noPause });
    await model.add(file);
    expect(await ids()).toEqual([three, two, one].map(({ summary }) => summary.id));
    expect(model.state.value.message).toBe('One round added. One round was here already.');
    await model.add(file);
    expect(model.state.value.message).toBe('No round added. 2 rounds were here already.');
    const saved = await model.fileParts();
    expect(await readHistoryFile(new Blob([...saved!]), noPause)).toMatchObject({ ok: true });
  });

  it('stay as they are when a file is torn, foreign or too large, and the page says why', async () => {
    await storeRound(one, STORED_CARD);
    const model = historyModel({ notes: memoryStorage(), pause: noPause });
    const parts = historyFileParts(historyOf(two));
    const huge = { size: 200_000_000 } as Blob;
    const files = [new Blob(parts.slice(0, -1)), new Blob(['x'.repeat(5_000_000)]), huge];
    for (const [place, words] of [/end of this file is missing/, /holds no rounds/, /too large/].entries()) {
      await model.add(files[place]!);
      expect(model.state.value.message).toMatch(words);
      expect(await ids()).toEqual([one.summary.id]);
    }
  });
});

describe('a round in the list', () => {
  it('counts the costly choices that its review shows, and says how many of them the coach helped with', () => {
    const choice = (step: StoredChoice['step'], by: StoredChoice['by'] = 'player') =>
      storedChoice({ step, by, verdict: 'costly' });
    const choices = [choice('first-right'), choice('vote'), choice('first-left', 'stand-in')];
    expect(findings({ choices })).toBe('2 costly choices');
    expect(findings({ choices, helped: ['vote'] })).toBe('2 costly choices, 1 of them with the coach’s help');
    expect(findings({ choices: [choice('vote')], helped: ['vote'] })).toBe(
      'One costly choice, with the coach’s help',
    );
    expect(findings({ choices: [storedChoice({ verdict: 'best' })], helped: ['vote'] })).toBe(
      'No costly choice, coach asked once',
    );
  });
});

describe('exercises', () => {
  const DAY = 86_400_000;
  const schedule = (round: string, due: number) => ({
    id: `${round}/first-right`,
    due,
    lastReview: due - DAY,
    stability: 2,
    difficulty: 5,
    scheduledDays: 1,
    reps: 1,
    lapses: 0,
  });
  const costly = { choices: [storedChoice({ verdict: 'costly', loss: 3, halfWidth: 1 })] };

  it('of today are those that are due, the longest first, then the latest that were never asked', () => {
    const names = ['a', 'b', 'c', 'd'];
    const rounds = names.map((name, place) => storedRound(name, { ...costly, playedAt: place }).summary);
    const [a, b, c, d] = rounds.map(({ id }) => id);
    const schedules = [schedule(a!, 9 * DAY), schedule(b!, 2 * DAY), schedule(c!, 20 * DAY)];
    const queue = (dearest: 'across' | null, of = exercisesOf(rounds)) =>
      queueAt({ exercises: of, schedules, dearest }, 10 * DAY);
    const { today, nextDue } = queue(null);
    expect(today.map(({ exercise }) => exercise.round)).toEqual([b, a, d]);
    // Of those never asked, first what costs most.
    const across = { choices: [storedChoice({ verdict: 'costly', step: 'first-across' })], playedAt: 0 };
    const more = exercisesOf([...rounds, storedRound('e', across).summary]);
    expect(queue('across', more).today.map(({ exercise }) => exercise.step)).toEqual([
      'first-right',
      'first-right',
      'first-across',
      'first-right',
    ]);
    expect(nextDue).toBe(20 * DAY);
  });

  it('keep the later answer when two devices both went on', async () => {
    const [early, late] = [schedule(one.summary.id, DAY), schedule(one.summary.id, 5 * DAY)];
    await storeSchedule(late);
    const model = historyModel({ notes: memoryStorage(), pause: noPause });
    await model.add(new Blob(historyFileParts({ ...historyOf(one), schedules: [early] })));
    expect(await listSchedules()).toEqual({ ok: true, value: [late] });
    const saved = await readHistoryFile(new Blob([...(await model.fileParts())!]), noPause);
    expect(saved).toMatchObject({ ok: true, history: { schedules: [late] } });
  });
});

describe('a database of an older page', () => {
  it('keeps its rounds and gets what is new', async () => {
    await new Promise<void>((resolve) => {
      const request = indexedDB.open(HISTORY_DATABASE, 1);
      request.onupgradeneeded = () => {
        for (const [name, keyPath] of [
          ['summaries', 'id'],
          ['details', 'id'],
          ['cards', 'hash'],
        ] as const) {
          request.result.createObjectStore(name, { keyPath });
        }
        const row = { id: one.summary.id, text: JSON.stringify(one.summary) };
        request.transaction!.objectStore('summaries').put(row);
        request.transaction!.objectStore('details').put(one.detail);
      };
      request.onsuccess = () => {
        request.result.close();
        resolve();
      };
    });
    expect(await ids()).toEqual([one.summary.id]);
    expect(await listSchedules()).toEqual({ ok: true, value: [] });
    // An older page stored no time beside the text.
    await storeRound(two, STORED_CARD);
    expect(await latestRounds(1)).toEqual({ ok: true, value: [two.summary] });
    expect(await latestRounds(9)).toEqual({ ok: true, value: [two.summary, one.summary] });
    expect(await readRound(one.summary.id)).toMatchObject({ value: { round: one } });
  });
});

describe('a browser that does not keep what it was given', () => {
  it('is told of: rounds that vanished by themselves, not those that somebody deleted', async () => {
    const notes = memoryStorage();
    const model = historyModel({ notes, pause: noPause });
    await model.add(new Blob(historyFileParts(historyOf(one, two))));
    await model.remove([two.summary.id]);
    expect(model.state.value.forgotten).toBe(0);
    await closeDatabase();
    globalThis.indexedDB = new IDBFactory();
    const later = historyModel({ notes, pause: noPause });
    await later.load();
    expect(later.state.value).toMatchObject({ rounds: [], forgotten: 1 });
  });

  it('is told of until somebody has read it, however many rounds are played or deleted after the loss', async () => {
    const notes = memoryStorage();
    const model = historyModel({ notes, pause: noPause });
    const file = new Blob(historyFileParts(historyOf(one, two)));
    await model.add(file);
    await closeDatabase();
    globalThis.indexedDB = new IDBFactory();
    const three = storedRound('three', { playedAt: 3 });
    const stored = await storeRound(three, STORED_CARD);
    if (stored.ok) noteChange(notes, 1, stored.value.count);
    await model.load();
    expect(model.state.value.forgotten).toBe(2);
    await model.remove([three.summary.id]);
    expect(model.state.value.forgotten).toBe(2);
    await model.putBack();
    expect(model.state.value.forgotten).toBe(2);
    // Of what was lost, a file brings some back.
    await model.add(new Blob(historyFileParts(historyOf(two))));
    expect(model.state.value.forgotten).toBe(1);
    await model.acknowledge();
    expect(model.state.value.forgotten).toBe(0);
  });

  it('is told of: one that allows no database, and one where a newer page has been', async () => {
    globalThis.indexedDB = {
      open() {
        throw new DOMException('not here', 'SecurityError');
      },
    } as unknown as IDBFactory;
    expect(await openDatabase()).toEqual({ ok: false, problem: 'refused' });
    globalThis.indexedDB = new IDBFactory();
    await new Promise((resolve) => {
      const request = indexedDB.open(HISTORY_DATABASE, 1000);
      request.onsuccess = () => resolve(request.result.close());
    });
    expect(await listRounds()).toEqual({ ok: false, problem: 'newer' });
  });
});
