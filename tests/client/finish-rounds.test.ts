// The reviews of stored rounds: finished when they were left, and told alike when they are opened again.
import { IDBFactory } from 'fake-indexeddb';
import 'fake-indexeddb/auto';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { finishRounds } from '../../client/practice/history/finish-rounds.ts';
import { pastTable } from '../../client/practice/history/past-table.ts';
import { JUDGE } from '../../client/practice/history/round-of.ts';
import { keepTold, withKept } from '../../client/practice/history/told.ts';
import { closeDatabase } from '../../client/storage/history/database.ts';
import {
  answersOf,
  listRounds,
  readRound,
  removeRounds,
  storeAnswers,
  storeRound,
  wholeHistory,
} from '../../client/storage/history/rounds.ts';
import { reviewRound } from '../../shared-engine/analysis/review/review-round.ts';
import { compileCard } from '../../shared-engine/card/compile.ts';
import { createSwarKernel } from '../../shared-engine/kernels/tiles-to-go/swar.ts';
import { unpackPlay } from '../../shared-engine/practice/round-play.ts';
import { type RoundSummary, storedLedger } from '../../shared-engine/practice/stored-round.ts';
import type { ServerMessage } from '../../shared-engine/protocol/messages.ts';
import { analysisOf, SAMPLE_LEDGER } from '../kit/fake-analysis.ts';
import { STORED_CARD, storedRound } from '../kit/stored-rounds.ts';

beforeEach(async () => {
  await closeDatabase();
  globalThis.indexedDB = new IDBFactory();
});

const one = storedRound('one', { playedAt: 1 });

async function listed(): Promise<readonly RoundSummary[]> {
  const rounds = await listRounds();
  if (!rounds.ok) throw new Error(rounds.problem);
  return rounds.value;
}

describe('a round whose review was not finished', () => {
  /** Finishes the reviews of what is stored; `during` happens before the answers come, and may close the page. */
  function finishing(during: (closePage: () => void) => Promise<unknown>) {
    return new Promise<void>((resolve) => {
      const cancel = finishRounds({
        startDeepAnalysis({ choices }, { onChoice, onLedger }) {
          const closePage = () => {
            cancel();
            setImmediate(resolve);
          };
          void during(closePage).then(() => {
            const { analysis } = analysisOf(8);
            for (const nth of choices) onChoice({ nth, analysis });
            onLedger?.(SAMPLE_LEDGER);
          });
          return () => {};
        },
        onLeft: (left) => left === 0 && resolve(),
      });
    });
  }

  it('gets its verdicts', async () => {
    await storeRound(one, STORED_CARD);
    await finishing(async () => {});
    const [judged] = await listed();
    expect(judged!.choices.length).toBeGreaterThan(1);
    expect(new Set(judged!.choices.map(({ verdict }) => verdict))).toEqual(new Set(['best']));
    // The section that was said before the first pass was never near.
    const aims = { said: 1, near: 0 };
    const found = {
      judge: JUDGE,
      choices: judged!.choices,
      aims,
      ...storedLedger({ ledger: SAMPLE_LEDGER }),
    };
    expect(judged).toEqual({ ...one.summary, ...found });
  });

  it('is told alike when it is opened again, at once and without another analysis', async () => {
    await storeRound(one, STORED_CARD);
    await finishing(async () => {});
    const play = unpackPlay(one.detail.play)!;
    const sent: ServerMessage[] = [];
    const table = pastTable({
      round: one,
      play,
      card: compileCard(STORED_CARD.file),
      startTimer: (_, run) => {
        run();
        return () => {};
      },
      startDeepAnalysis: () => {
        throw new Error('analyzed again');
      },
      on: { state() {}, message: (message) => sent.push(message) },
    });
    table.start();
    await vi.waitFor(() => expect(sent).toHaveLength(2));
    const message = sent[1];
    if (message?.kind !== 'review') throw new Error('no review');
    expect(message.more).toBe(false);
    expect(message.review.ledger).toEqual(SAMPLE_LEDGER);
    for (const { analysis } of message.review.choices) expect(analysis).toEqual(analysisOf(8).analysis);
    // Less than is stored takes nothing away, and what is told of a round that is deleted goes with it.
    await keepTold(one.summary.id, { ...message.review, ledger: null });
    expect((await withKept(one.summary.id, { ...message.review, ledger: null })).ledger).toEqual(
      SAMPLE_LEDGER,
    );
    await removeRounds([one.summary.id]);
    await keepTold(one.summary.id, message.review);
    expect(await answersOf(one.summary.id)).toEqual({ ok: true, value: null });
  });

  it('is judged anew where what is stored was told by another judge', async () => {
    await storeRound(one, STORED_CARD);
    await finishing(async () => {});
    const stored = await answersOf(one.summary.id);
    if (!stored.ok || stored.value === null) throw new Error('nothing stored');
    const other = { ...stored.value, judge: 'another', count: 99 };
    await storeAnswers(other);
    const { record } = unpackPlay(one.detail.play)!;
    const bare = reviewRound(record, createSwarKernel(compileCard(STORED_CARD.file)));
    expect(await withKept(one.summary.id, bare)).toEqual(bare);
    // However much another judge told, it gives way.
    await storeAnswers(stored.value);
    expect((await withKept(one.summary.id, bare)).ledger).toEqual(SAMPLE_LEDGER);
  });

  it('stays away when another tab deletes it meanwhile, or everything', async () => {
    const everything = async () => {
      await closeDatabase();
      globalThis.indexedDB = new IDBFactory();
    };
    for (const away of [() => removeRounds([one.summary.id]), everything]) {
      await storeRound(one, STORED_CARD);
      await finishing(away);
      expect(await wholeHistory()).toMatchObject({ value: { rounds: [] } });
      expect(await readRound(one.summary.id)).toEqual({ ok: true, value: null });
    }
  });

  it('is left as it was when the page closes before the end', async () => {
    await storeRound(one, STORED_CARD);
    await finishing(async (closePage) => closePage());
    expect(await listed()).toEqual([one.summary]);
  });
});
