// Asking the coach: what counts as helped, and how often a choice is judged before one is named.
import { describe, expect, it } from 'vitest';
import { cardMatches, likeliestMatches } from '../../client/cards/card-matches.ts';
import { type CoachPorts, openCoachSession } from '../../client/coach/coach-session.ts';
import { namedAt, openHelped, wasHelped, withHelp } from '../../client/coach/helped.ts';
import { type Circumstances, roundOf } from '../../client/practice/history/round-of.ts';
import { coachedWords } from '../../client/review/strings.ts';
import type { StartDeepAnalysis } from '../../client/workers/deep-analysis.ts';
import { reachOf, tilesGone } from '../../shared-engine/analysis/coach/reach.ts';
import { reviewRound } from '../../shared-engine/analysis/review/review-round.ts';
import { roundDetailSchema } from '../../shared-engine/practice/stored-round.ts';
import { bagOf } from '../../shared-engine/rules/tiles/bag.ts';
import { sampleDeepAnalysis } from '../kit/classes.ts';
import { openTable, simplest } from '../kit/page-tables.ts';
import { atSomePass } from '../kit/pass-situations.ts';
import { houseKernel, records } from '../kit/reviews.ts';

const findReach: CoachPorts['findReach'] = async (card, rack, gone) => reachOf(card, bagOf(rack), gone);

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

  it('has four numbers judged at most, each the one that was better than the one before', async () => {
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
    const session = await openCoachSession({ record, decision }, houseKernel.card, { start, findReach });
    session.advise(
      ({ tiles, sentences }) => said.push(...tiles, ...sentences),
      () => said.push('failed'),
    );
    const [first] = asked;
    expect(asked).toEqual([first, !first, first, !first]);
    // The last one judged is no better than the one it lost to, which is named.
    expect(said).toEqual([
      `We would ${first ? 'continue' : 'stop'}.`,
      expect.stringMatching(/about 30 in 100 games/),
      'The line of wins in your review is about club players, so it usually lies higher.',
    ]);
  });

  it('calls the likeliest hand what the card beside the rack lists first', async () => {
    for (const n of [1, 2, 4]) {
      const { record, rack, decision } = atSomePass(n);
      if (decision === null) throw new Error('nothing is open');
      const { card } = houseKernel;
      const start: StartDeepAnalysis = () => () => {};
      const { coaching } = await openCoachSession({ record, decision }, card, { start, findReach });
      const reach = reachOf(card, bagOf(rack), tilesGone(record));
      const listed = likeliestMatches(card, cardMatches(card, bagOf(rack)), reach).slice(0, 10);
      const sections = card.sections.map(({ name }, section) => ({
        name,
        count: listed.filter((match) => match.section === section).length,
      }));
      const [most] = sections.toSorted((a, b) => b.count - a.count);
      expect(coaching.pointsTo[0]).toMatch(
        new RegExp(
          `^Of the 10 hands you are likeliest to reach, ${most!.count} (is|are) in ${most!.name}\\b`,
        ),
      );
      expect(coaching.pointsTo[1]).toContain(`The likeliest is ${listed[0]!.toGo} tiles away; `);
    }
  });

  it('is told in the review with the pass it named, and where that was not compared', () => {
    const named = ['bam-1', 'bam-2', 'red'] as const;
    const helped = withHelp(withHelp([], 1, 'first-right'), 1, 'first-right', named);
    expect([wasHelped(helped, 1, 'first-right'), wasHelped(helped, 1, 'first-left')]).toEqual([true, false]);
    expect(namedAt(helped, 1, 'first-right')).toEqual(named);
    expect(namedAt(withHelp([], 2, 'vote'), 2, 'vote')).toBeNull();
    const review = reviewRound(records('coached', 1)[0]!, houseKernel);
    const analysis = sampleDeepAnalysis('best');
    const pass = review.choices.find((choice) => choice.kind === 'pass');
    if (pass?.kind !== 'pass') throw new Error('no pass');
    const compared = { ...analysis, finalists: [{ ...analysis.finalists[0]!, tiles: named.toReversed() }] };
    expect(coachedWords({ ...pass, analysis: compared }, named)).toBeNull();
    expect(coachedWords({ ...pass, analysis }, named)).toBe(
      'It named 1 bam, 2 bam and red dragon, which we did not compare with your choice.',
    );
    expect(coachedWords(pass, named)).toBeNull();
  });

  it('is noted in the round for a vote and a courtesy number as for a pass', async () => {
    const { table, last, view } = await openTable();
    while (view().stage.phase !== 'closed') table.send(simplest(view(), 1));
    const asked = ['first-left', 'vote', 'courtesy-ask'] as const;
    const { round } = last();
    const helped = asked
      .toReversed()
      .reduce((all, step) => withHelp(all, round, step), withHelp([], round + 1, 'second-left'));
    const state = { home: 'page', table: last(), review: null, aims: {}, commitment: null } as const;
    const by: Circumstances = { playedAt: 1, placeOf: () => 'page', card: null };
    const stored = roundOf({ ...state, helped }, by);
    expect(stored?.summary.helped).toEqual(asked);
    expect(stored?.detail.coached).toBeUndefined();
    // The pass that was named stays with the round, so that its review of later says which it was.
    const named = ['bam-1', 'dot-9', 'red'] as const;
    const again = roundOf({ ...state, helped: withHelp(helped, round, 'first-left', named) }, by);
    expect(roundDetailSchema.parse(again?.detail)).toMatchObject({ coached: { 'first-left': named } });
  });
});
