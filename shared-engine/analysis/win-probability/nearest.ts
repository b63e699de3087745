// The targets nearest to a rack, found in packed sums four at a time.
import { inEachByte, largerWord, largestByte, matchedWord, reaches } from '../../kernels/index.ts';

/** Writes the lanes of the targets with the fewest tiles to go to `lanes` and answers how many there are. */
export function nearestLanes(sums: Int32Array, jokers: number, lanes: Int32Array): number {
  const free = inEachByte(jokers);
  let most = 0;
  for (let w = 0; w < sums.length; w++) most = largerWord(most, matchedWord(sums[w]!, free));
  const best = Math.max(1, largestByte(most));
  const bar = inEachByte(best);
  let count = 0;
  for (let w = 0; w < sums.length; w++) {
    const word = matchedWord(sums[w]!, free);
    if (!reaches(word, bar)) continue;
    for (let byte = 0; byte < 4; byte++) {
      if (((word >>> (byte * 8)) & 255) === best) lanes[count++] = w * 4 + byte;
    }
  }
  return count;
}
