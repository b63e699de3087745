// The order of a whole run: what takes long begins first, so that nothing is left to run alone while a core has no work.
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** Files that take long, the longest first; how large they are, by which a clean clone sorts, says nothing of that. */
const LONG: readonly string[] = [
  'engine/review-proofs',
  'browser/practice',
  'browser/class',
  'browser/four-friends',
  'server/siege',
  'server/simulator',
  'browser/accessibility',
  'browser/screens',
  'browser/connection-lost',
  'browser/solo',
  'server/worker-thread',
  'browser/prepare',
  'engine/win-probability-calibration',
  'engine/review-privacy',
  'browser/published',
  'browser/settings',
  'server/races',
  'browser/server-restart',
  'browser/class-guided',
  'browser/club-evening',
];

export class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const others = await super.sort(files);
    return others.toSorted((one, other) => placeOf(one) - placeOf(other));
  }
}

function placeOf({ moduleId }: TestSpecification): number {
  const place = LONG.findIndex((name) => moduleId.endsWith(`/tests/${name}.test.ts`));
  return place === -1 ? LONG.length : place;
}
