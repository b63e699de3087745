// Where somebody stands in a lesson, as the tab stores it.
import { expect, it } from 'vitest';
import {
  type LessonProgress,
  readLessonProgress,
  storeLessonProgress,
} from '../../client/storage/lesson-progress.ts';
import { memoryStorage } from '../kit/memory-storage.ts';

const MINE: LessonProgress = {
  place: { deal: 0, moment: 1 },
  chosen: [['0/0', { kind: 'vote', step: 'vote', go: true }]],
};
const NOTHING: LessonProgress = { place: { deal: 0, moment: 0 }, chosen: [] };

it('the place in a lesson outlasts a look at another one, and ends where the lesson begins anew', () => {
  const tab = memoryStorage();
  storeLessonProgress(tab, 'one', MINE);
  storeLessonProgress(tab, 'another', NOTHING);
  expect(readLessonProgress(tab, 'another')).toBeNull();
  expect(readLessonProgress(tab, 'one')).toMatchObject({ ...MINE });
  storeLessonProgress(tab, 'one', NOTHING);
  expect(readLessonProgress(tab, 'one')).toBeNull();
});

it('takes no more room for a long lesson than for a short one', () => {
  const tab = memoryStorage();
  storeLessonProgress(tab, 'x'.repeat(100_000), MINE);
  expect(tab.read('lesson')!.length).toBeLessThan(300);
});
