// The table in the page keeps the same rules as the server's, with the same bots and the same review.
import { describe, expect, it } from 'vitest';
import { readBotNames, storeBotNames } from '../../client/storage/bot-names.ts';
import { forgetPageRound, readPageRound, storePageRound } from '../../client/storage/page-round.ts';
import type { FollowRequest } from '../../client/workers/deep-analysis-worker.ts';
import type { KeyedAnalysis } from '../../client/workers/seat-work.ts';
import { decisionKey, decisionsIn } from '../../shared-engine/analysis/review/deep-analysis.ts';
import type { Review } from '../../shared-engine/analysis/review/review.ts';
import { reviewRound } from '../../shared-engine/analysis/review/review-round.ts';
import { createSwarKernel } from '../../shared-engine/kernels/tiles-to-go/swar.ts';
import { serverMessageSchema } from '../../shared-engine/protocol/messages.ts';
import { checkRound } from '../../shared-engine/rules/exchange/recompute.ts';
import { STANDARD_TERMS } from '../../shared-engine/rules/exchange/terms.ts';
import { analysisOf } from '../kit/fake-analysis.ts';
import { memoryStorage } from '../kit/memory-storage.ts';
import { card, DEAL, openTable, simplest } from '../kit/page-tables.ts';

describe('a table in the page', () => {
  it('W1 W2 W4 plays by other ways from the next deal on, once they are chosen between deals', async () => {
    const short = { ...STANDARD_TERMS.alone, secondCharleston: 'none', courtesy: 'none' } as const;
    const { table, last, view, stored } = await openTable(undefined, null, short);
    const answerAll = () => {
      while (view().stage.phase !== 'closed') table.send(simplest(view(), last().round));
    };
    const east = { ...STANDARD_TERMS.alone, whoIsEast: 'always' } as const;
    table.send({ kind: 'action', id: 't0', action: { kind: 'set-terms', terms: east } });
    answerAll();
    expect(view().record.steps).toHaveLength(3);
    expect(last().terms).toEqual(short);
    table.send({ kind: 'action', id: 't1', action: { kind: 'set-terms', terms: east } });
    expect([last().terms, view().terms]).toEqual([east, short]);
    table.send({ kind: 'action', id: 'r1', action: { kind: 'ready', ready: true } });
    expect([view().dealer, view().terms, stored().terms]).toEqual([1, east, east]);
  });

  it('Z1 D4 a table in the page plays a round to its end and reviews it as the engine does', async () => {
    const { table, messages, last, view } = await openTable();
    for (let step = 0; view().stage.phase !== 'closed'; step++) {
      expect(step).toBeLessThan(12);
      table.send(simplest(view(), last().round));
    }
    const closed = view();
    if (closed.stage.phase !== 'closed') throw new Error('not closed');
    const { opened, racks } = closed.stage;
    expect(opened?.seed).toBe(DEAL.seed);
    const moves = closed.record.steps.filter((step) => step.kind === 'move');
    const seen = { seat: 1, rack: closed.record.start, moves } as const;
    const head = { roundId: 'here/1', dealer: DEAL.dealer, terms: STANDARD_TERMS.alone };
    const claim = { ...head, ...opened!, commitment: closed.commitment!, racks: racks!, seen };
    expect(checkRound(claim)).toEqual({ ok: true });
    const review = messages.find((message) => message.kind === 'review')?.review;
    expect(review).toEqual(reviewRound(closed.record, createSwarKernel(card)));
  });

  it('a table in the page sends only messages that the server might have sent', async () => {
    const { table, messages, last, view } = await openTable();
    while (view().stage.phase !== 'closed') table.send(simplest(view(), last().round));
    for (const message of messages) expect(serverMessageSchema.parse(message)).toEqual(message);
  });

  it('E1 a rejected choice changes nothing', async () => {
    const { table, messages, last } = await openTable();
    const before = last();
    table.send({
      kind: 'choose',
      id: 'wrong',
      round: 1,
      seat: 1,
      choice: { kind: 'vote', step: 'vote', go: true },
    });
    expect(messages.at(-1)).toMatchObject({ kind: 'rejected', id: 'wrong', code: 'wrong-step' });
    expect(last()).toBe(before);
  });

  it('D3 the next deal is a new one and East moves to the right', async () => {
    const { table, last, view } = await openTable();
    while (view().stage.phase !== 'closed') table.send(simplest(view(), last().round));
    table.send({ kind: 'action', id: 'next', action: { kind: 'ready', ready: true } });
    expect(last().round).toBe(2);
    expect(view().dealer).toBe(3);
    expect(view().record.steps).toEqual([]);
  });

  it('E2 a round left at any point comes out again as it was, after the close with its review', async () => {
    const played = await openTable();
    for (;;) {
      const storage = memoryStorage();
      storePageRound(storage, played.stored());
      const again = await openTable(undefined, readPageRound(storage, DEAL, 1));
      expect(again.last()).toEqual(played.last());
      if (played.view().stage.phase === 'closed') {
        const reviews = [played, again].map(({ messages }) =>
          messages.findLast(({ kind }) => kind === 'review'),
        );
        expect(reviews[0]).toMatchObject({ kind: 'review' });
        expect(reviews[1]).toEqual(reviews[0]);
        break;
      }
      played.table.send(simplest(played.view(), 1));
    }
    played.table.send({ kind: 'action', id: 'next', action: { kind: 'ready', ready: true } });
    expect(played.stored()).toMatchObject({ number: 2, answers: [] });
  });

  it('a stored round is played on by nobody else: another deal, another card or a torn text begins anew', async () => {
    const { table, view, last, stored } = await openTable();
    table.send(simplest(view(), last().round));
    const storage = memoryStorage();
    storePageRound(storage, stored());
    expect(stored().answers).toHaveLength(1);
    expect(readPageRound(storage, { ...DEAL, dealer: 3 }, 1)).toBeNull();
    expect(readPageRound(storage, DEAL, 2)).toBeNull();
    const other = await openTable(undefined, { ...stored(), card: 'another' });
    expect(other.view().record.steps).toEqual([]);
    storage.write('page-round', '{"deal":');
    expect(readPageRound(storage, DEAL, 1)).toBeNull();
    forgetPageRound(storage);
    expect(storage.read('page-round')).toBeNull();
  });

  it('each choice is analyzed from when it is made, and the review has each analysis as it comes', async () => {
    const { analysis } = analysisOf(8);
    const requests: FollowRequest[] = [];
    let tell: (answer: KeyedAnalysis) => void = () => {};
    let ended = 0;
    const { table, messages, last, view } = await openTable((onAnalysis) => {
      tell = onAnalysis;
      return { send: (request) => requests.push(request), end: () => ended++ };
    });
    const keysOf = () => decisionsIn(requests.at(-1)!.follow.record).map(decisionKey);
    const reviews = () => messages.flatMap((message) => (message.kind === 'review' ? [message] : []));
    // The card comes once, and the step that is open goes along so that it is prepared.
    expect(requests).toMatchObject([{ card: { id: card.id }, follow: { open: { step: 'first-right' } } }]);
    table.send(simplest(view(), last().round));
    expect(requests[1]).toMatchObject({ card: null, follow: { open: { step: 'first-across' } } });
    tell({ key: keysOf()[0]!, analysis });
    expect(reviews()).toEqual([]);
    while (view().stage.phase !== 'closed') table.send(simplest(view(), last().round));
    expect(requests.at(-1)!.follow).toEqual({ record: view().record, open: null, isClosed: true });
    expect(reviews().map(({ review, more }) => [depthsOf(review), more])).toEqual([[[0], true]]);

    for (const key of keysOf()) tell({ key, analysis });
    const final = reviews().at(-1)!;
    expect(depthsOf(final.review)).toEqual([...final.review.choices.keys()]);
    expect(final.more).toBe(false);

    // Of the round before nothing is told any more.
    const told = reviews().length;
    table.send({ kind: 'action', id: 'next', action: { kind: 'ready', ready: true } });
    tell({ key: 'of the round before', analysis });
    expect(reviews()).toHaveLength(told);
    table.stop();
    expect(ended).toBe(1);
  });
});

/** The choices that have a deep analysis. */
function depthsOf({ choices }: Review): number[] {
  return [...choices.keys()].filter((nth) => choices[nth]!.analysis.depth === 'deep');
}

describe('the bots of a table in the page', () => {
  it('W5 C4 pause as the table’s pace says; meanwhile a pass is taken back, and nobody chooses once the page is left', async () => {
    const running = new Set<{ readonly ms: number; readonly run: () => void }>();
    const { table, last, view, stored } = await openTable(
      undefined,
      null,
      { ...STANDARD_TERMS.alone, botPace: 'slow' },
      (ms, run) => {
        const timer = { ms, run };
        running.add(timer);
        return () => running.delete(timer);
      },
    );
    const elapse = (ms: number) => {
      const timer = [...running].find((one) => one.ms === ms)!;
      running.delete(timer);
      timer.run();
    };
    const pauses = () => [...running].map(({ ms }) => ms);
    const answered = () => (view().stage.phase === 'closed' ? null : view().stage);
    expect([pauses(), answered()]).toMatchObject([
      [2500, 3750, 4375],
      { answered: [false, false, false, false] },
    ]);
    table.send(simplest(view(), 1));
    elapse(2500);
    expect(answered()).toMatchObject({ answered: [true, true, false, false] });
    const withdrawn = { kind: 'withdraw', step: 'first-right' } as const;
    table.send({ kind: 'choose', id: 'back', round: 1, seat: 1, choice: withdrawn });
    expect([answered(), stored().answers]).toMatchObject([{ answered: [true, false, false, false] }, []]);
    table.send(simplest(view(), 1));
    elapse(4375);
    expect([pauses(), view().record.steps]).toEqual([[3750], []]);
    elapse(3750);
    expect([pauses(), view().record.steps.length, last().round]).toEqual([[2500, 3750, 4375], 1, 1]);
    table.stop();
    expect(pauses()).toEqual([]);
    table.start();
    await new Promise((resolve) => setImmediate(resolve));
    expect(pauses()).toEqual([2500, 3750, 4375]);
  });

  it('keep their names when their deal is played again, and a person’s name is none of theirs', () => {
    const storage = memoryStorage();
    const usual = ['Merle', 'Nuno', 'Orla', 'Dunja'] as const;
    storeBotNames(storage, 'deal', ['', 'Tomas', 'Wilma', '']);
    expect(readBotNames(storage, 'deal', usual)).toEqual(['Merle', 'Tomas', 'Wilma', 'Dunja']);
    expect(readBotNames(storage, 'another', usual)).toEqual(usual);
  });
});
