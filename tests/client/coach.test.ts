// Asking the coach: what counts as helped, and how often a choice is judged before one is named.
import { describe, expect, it } from 'vitest';
import { openCoachSession } from '../../client/coach/coach-session.ts';
import { openHelped, withHelp } from '../../client/coach/helped.ts';
import { roundOf } from '../../client/practice/history/round-of.ts';
import type { StartDeepAnalysis } from '../../client/workers/deep-analysis.ts';
import { sampleDeepAnalysis } from '../kit/classes.ts';
import { openTable, simplest } from '../kit/page-tables.ts';
import { atSomePass } from '../kit/pass-situations.ts';
import { houseKernel } from '../kit/reviews.ts';

describe('a question to the coach', () => {
  it('counts as help once there is a hint, and not where the card or the page cannot be had', async () => {
    let helped = 0;
    const onHelp = () => {
      helped += 1;
    };
    expect(await openHelped(async () => null, onHelp)).toBe('failed');
    expect(await openHelped(() => Promise.reject(new Error('no network')), onHelp)).toBe('failed');
    expect(helped).toBe(0);
    expect(await openHelped(async () => ['a hint'], onHelp)).toEqual(['a hint']);
    expect(helped).toBe(1);
  });

  it('has four numbers judged at most, each the one that was better than the one before', () => {
    const { record } = atSomePass(2);
    const asked: (boolean | null)[] = [];
    const numbered = (played: number) => {
      const analysis = sampleDeepAnalysis('costly');
      const numbers = [played, 1 - played];
      const finalists = analysis.finalists.map((one, nth) => ({ ...one, tiles: [], number: numbers[nth]! }));
      return { ...analysis, finalists };
    };
    const start: StartDeepAnalysis = ({ record: answered, choices }, { onChoice }) => {
      const vote = answered.steps.at(-1);
      const go = vote?.kind === 'vote' ? vote.go[answered.seat] : null;
      asked.push(go);
      onChoice({ nth: choices[0]!, analysis: numbered(go ? 1 : 0) });
      return () => {};
    };
    const decision = { kind: 'vote', step: 'vote' } as const;
    const said: string[] = [];
    openCoachSession({ record, decision }, houseKernel.card, start).advise(
      ({ tiles, sentences }) => said.push(...tiles, ...sentences),
      () => said.push('failed'),
    );
    const [first] = asked;
    expect(asked).toEqual([first, !first, first, !first]);
    // The last one judged is no better than the one it lost to, which is named.
    expect(said).toEqual([
      `We would ${first ? 'continue' : 'stop'}.`,
      expect.stringMatching(/about 30 in 100 games/),
    ]);
  });

  it('is noted in the round for a vote and a courtesy number as for a pass', async () => {
    const { table, last, view } = await openTable();
    while (view().stage.phase !== 'closed') table.send(simplest(view(), 1));
    const asked = ['first-left', 'vote', 'courtesy-ask'] as const;
    const { round } = last();
    const helped = asked
      .toReversed()
      .reduce((all, step) => withHelp(all, round, step), withHelp([], round + 1, 'second-left'));
    const state = { home: 'page', table: last(), review: null, aims: {}, helped, commitment: null } as const;
    const stored = roundOf(state, { playedAt: 1, placeOf: () => 'page', card: null });
    expect(stored?.summary.helped).toEqual(asked);
  });
});
