// The built page stays small: what the front page waits for, and what a table takes in all.
import { describe, expect, it } from 'vitest';
import { firstLoadBytes } from '../kit/first-load.ts';

describe('the first load', () => {
  it('takes no more script than a slow line brings in a moment', () => {
    const { front, all } = firstLoadBytes();
    // The schemas and the engine alone are larger than the first bound: they must not slip into the front page.
    expect(front).toBeGreaterThan(5_000);
    expect(front).toBeLessThan(30 * 1024);
    expect(all).toBeGreaterThan(front);
    expect(all).toBeLessThan(150 * 1024);
  });
});
