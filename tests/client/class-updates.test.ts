// What the pages of a class show when the server does not send any more what they showed.
import { describe, expect, it } from 'vitest';
import { CLASS } from '../../client/class/model/strings.ts';
import { afterFailure } from '../../client/class/model/use-updates.ts';
import { FRIENDS } from '../../client/class/player/strings.ts';
import { withoutReport } from '../../client/class/results/use-report.ts';

const failure = (code: string) => ({ ok: false, code, message: `The server says ${code}.` }) as const;

describe('a page that follows a class', () => {
  const before = { value: { version: 3 }, problem: null, at: 7 };

  it('takes away what may be seen no more, and says why in the words of the page', () => {
    const nothing = { value: null, at: 7 };
    expect(afterFailure(before, failure('no-such-class'))).toEqual({ ...nothing, problem: CLASS.deleted });
    const keyGone = failure('not-the-teacher');
    expect(afterFailure(before, keyGone)).toEqual({ ...nothing, problem: keyGone.message });
    for (const code of ['no-such-class', 'not-seated'] as const)
      expect(afterFailure(before, failure(code), FRIENDS.lost)).toEqual({
        ...nothing,
        problem: FRIENDS.lost[code],
      });
  });

  it('keeps what it shows through a failure that passes', () => {
    const away = failure('unreachable');
    expect(afterFailure(before, away)).toEqual({ ...before, problem: away.message });
  });
});

describe('a report', () => {
  const players = [{ name: 'Ines', deals: [] }];
  const report = { title: 'Pairs', ended: false, anonymous: false, deals: [], players };
  const known = { report, row: null };

  it('CH4 goes when its class was deleted or the key taken back, and stays through a failure that passes', () => {
    expect(withoutReport(known, failure('no-such-class'))).toBe(CLASS.deleted);
    expect(withoutReport(known, failure('not-the-teacher'))).toBe('The server says not-the-teacher.');
    expect(withoutReport(known, failure('unreachable'))).toBe(known);
    // Where there never was one, the server's sentence says why, and the first one stands.
    expect(withoutReport(null, failure('no-such-class'))).toBe('The server says no-such-class.');
    expect(withoutReport('First.', failure('unreachable'))).toBe('First.');
  });
});
