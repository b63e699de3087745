// The file in which a history goes to another device, and what is said of a file that is none.
import { describe, expect, it } from 'vitest';
import {
  type History,
  type HistoryRead,
  historyLines,
  historyReader,
} from '../../shared-engine/practice/history-file.ts';
import { unpackPlay } from '../../shared-engine/practice/round-play.ts';
import { mergedSummary } from '../../shared-engine/practice/stored-round.ts';
import { historyOf, storedChoice, storedRound } from '../kit/stored-rounds.ts';

function read(lines: readonly string[]): HistoryRead {
  const reader = historyReader();
  for (const line of lines) {
    const problem = reader.take(line.replace(/\n$/, ''));
    if (problem) return { ok: false, problem };
  }
  return reader.end();
}

const lines = (history: History) => [...historyLines(history)];

describe('a history as a file', () => {
  const history = historyOf(storedRound('one'), storedRound('open', {}, true));

  it('comes back as it was saved', () => {
    expect(read(lines(history))).toEqual({ ok: true, history });
  });

  it('is rejected where its end is missing, between two lines and within one', () => {
    const whole = lines(history);
    for (const torn of [whole.slice(0, -1), [...whole.slice(0, -1), whole.at(-1)!.slice(0, 300)]]) {
      expect(read(torn)).toMatchObject({ ok: false, problem: { code: 'torn' } });
    }
  });

  it('is rejected as foreign where it is something else, and as later where a newer page wrote it', () => {
    for (const foreign of [['{"format":"quadrille-drill/1"}'], ['\u0000PNG'], [''], []]) {
      expect(read(foreign)).toEqual({ ok: false, problem: { code: 'foreign' } });
    }
    const later = ['{"format":"quadrille-history","version":2,"rounds":0,"something":"new"}'];
    expect(read(later)).toEqual({ ok: false, problem: { code: 'later' } });
  });

  it('is rejected with the line where a round says what cannot be', () => {
    const [one] = history.rounds;
    const damaged = [
      { ...one!, summary: { ...one!.summary, playedAt: 'yesterday' } },
      { ...one!, detail: { ...one!.detail, id: 'f'.repeat(32) } },
      { ...one!, detail: { ...one!.detail, play: one!.detail.play.replace('~', '~!') } },
      { ...one!, detail: { ...one!.detail, play: '{}' } },
    ];
    for (const round of damaged) {
      const [head, card] = lines(history);
      expect(read([head!, card!, JSON.stringify(round)])).toEqual({
        ok: false,
        problem: { code: 'damaged', line: 3 },
      });
    }
  });

  it('a pass of tiles that the seat never held makes a round no round', () => {
    const { play } = storedRound('one').detail;
    const known = unpackPlay(play)!;
    const [first, ...rest] = known.record.steps;
    if (first?.kind !== 'move') throw new Error('no pass');
    const steps = [{ ...first, gave: ['joker', 'joker', 'joker', 'joker'] }, ...rest];
    expect(unpackPlay(JSON.stringify({ ...known, record: { ...known.record, steps } }))).toBeNull();
  });

  it('takes at most 6 KB for a round with all its verdicts', () => {
    const verdict = { verdict: 'just-as-good', loss: -0.123, halfWidth: 0.456 } as const;
    const choices = Array.from({ length: 11 }, () => storedChoice(verdict));
    const round = storedRound('long', { choices }, true);
    expect(JSON.stringify(round).length).toBeLessThan(6_000);
  });
});

describe('the same round stored twice', () => {
  const early = storedRound('one', { playedAt: 5, choices: [storedChoice()] }).summary;
  const judged = storedRound('one', { playedAt: 9, choices: [storedChoice({ verdict: 'best' })] }).summary;

  it('keeps the verdicts that go further and the time of the first play, in either order', () => {
    for (const merged of [mergedSummary(early, judged), mergedSummary(judged, early)]) {
      expect(merged).toEqual({ ...judged, playedAt: 5 });
    }
  });

  it('takes the verdicts of a newer judge once it has judged every choice', () => {
    const two = (verdicts: readonly ('best' | 'costly' | null)[]) =>
      verdicts.map((verdict) => storedChoice({ verdict }));
    const old = { ...judged, choices: two(['best', 'best']) };
    const half = { ...judged, judge: '2027-01-01', choices: two(['costly', null]) };
    const whole = { ...half, choices: two(['costly', 'best']) };
    expect(mergedSummary(old, half).choices).toEqual(old.choices);
    expect(mergedSummary(old, whole).choices).toEqual(whole.choices);
    expect(mergedSummary(whole, old).choices).toEqual(whole.choices);
  });
});
