// Questions of the page to the worker that plays choices on: one worker goes on from question to question.
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { startDeepAnalysis } from '../../client/workers/deep-analysis.ts';
import type { AnalysisTask, ChoiceAnalysis } from '../../client/workers/deep-analysis-worker.ts';
import { houseCard } from '../../shared-engine/card/house/card.ts';
import { analysisOf } from '../kit/fake-analysis.ts';
import { records } from '../kit/reviews.ts';

class FakeWorker {
  static made: FakeWorker[] = [];
  readonly tasks: AnalysisTask[] = [];
  isEnded = false;
  onmessage: ((event: { data: ChoiceAnalysis }) => void) | null = null;
  onerror: ((event: { message: string }) => void) | null = null;
  constructor() {
    FakeWorker.made.push(this);
  }
  postMessage(task: AnalysisTask) {
    this.tasks.push(task);
  }
  terminate() {
    this.isEnded = true;
  }
  answer(nth: number) {
    this.onmessage?.({ data: { nth, analysis: analysisOf(8).analysis } });
  }
}

describe('the worker behind the page', () => {
  beforeEach(() => {
    FakeWorker.made = [];
    vi.stubGlobal('Worker', FakeWorker);
    vi.useFakeTimers();
  });
  afterEach(() => {
    vi.runAllTimers();
    vi.useRealTimers();
    vi.unstubAllGlobals();
  });

  const [record] = records('a worker', 1);
  const ask = (card = houseCard(), choices = [0, 1]) => {
    const answers: number[] = [];
    const failures: string[] = [];
    const cancel = startDeepAnalysis(
      { record: record!, card, choices },
      {
        onChoice: ({ nth }) => answers.push(nth),
        onFailure: (message) => failures.push(message),
      },
    );
    return { answers, failures, cancel };
  };

  it('that has answered takes the next question on its card, which is not sent again', () => {
    const first = ask();
    const [worker] = FakeWorker.made;
    worker!.answer(0);
    worker!.answer(1);
    const second = ask();
    worker!.answer(1);
    expect(FakeWorker.made).toHaveLength(1);
    expect(worker!.tasks.map(({ card }) => card)).toEqual([houseCard(), null]);
    expect([first.answers, second.answers]).toEqual([[0, 1], [1]]);
    // One that still works is left alone; the first question is over and cancels nothing.
    first.cancel();
    expect(worker!.isEnded).toBe(false);
    ask();
    expect(FakeWorker.made).toHaveLength(2);
  });

  it('is not asked about another card, and ends when it is canceled, fails or waits too long', () => {
    ask(houseCard(), [0]);
    FakeWorker.made[0]!.answer(0);
    const other = ask({ ...houseCard() }, [0]);
    expect(FakeWorker.made[1]!.tasks[0]!.card).not.toBeNull();
    other.cancel();
    expect(FakeWorker.made[1]!.isEnded).toBe(true);
    vi.runAllTimers();
    expect(FakeWorker.made[0]!.isEnded).toBe(true);
    const failing = ask();
    FakeWorker.made[2]!.onerror?.({ message: 'out of memory' });
    expect([failing.failures, FakeWorker.made[2]!.isEnded]).toEqual([['out of memory'], true]);
  });
});
