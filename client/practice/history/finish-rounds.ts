// Judges the choices that were left when a page was closed before its review was finished, one round after the other.
import {
  aimsMet,
  type CompiledCard,
  compileCard,
  createSwarKernel,
  type RoundSummary,
  reviewRound,
  storedChoices,
  storedLedger,
  unpackPlay,
  withDeepAnalysis,
  withLedger,
} from '../../../shared-engine/index.ts';
import type { Cancel } from '../../connection/socket.ts';
import { listRounds, readRound, storeVerdicts } from '../../storage/history/rounds.ts';
import type { StartDeepAnalysis } from '../../workers/deep-analysis.ts';
import { JUDGE } from './round-of.ts';
import { keepTold, withKept } from './told.ts';

export interface FinishPorts {
  readonly startDeepAnalysis: StartDeepAnalysis;
  /** Rounds that are still to be looked at; 0 when all are done. */
  readonly onLeft: (left: number) => void;
}

/** The latest first; returns a function that ends it. */
export function finishRounds({ startDeepAnalysis, onLeft }: FinishPorts): Cancel {
  let isCanceled = false;
  let cancelAnalysis: Cancel = () => {};
  let last: { readonly hash: string; readonly card: CompiledCard } | null = null;

  async function run(): Promise<void> {
    const listed = await listRounds();
    const unfinished = listed.ok ? listed.value.filter(isUnfinished) : [];
    for (const [place, { id }] of unfinished.entries()) {
      if (isCanceled) return;
      onLeft(unfinished.length - place);
      await finish(id);
    }
    if (!isCanceled) onLeft(0);
  }

  async function finish(id: string): Promise<void> {
    const read = await readRound(id);
    const play = read.ok && read.value ? unpackPlay(read.value.round.detail.play) : null;
    if (isCanceled || !read.ok || !read.value?.card || play === null) return;
    const { round, card: stored } = read.value;
    // Rounds on one card follow each other, and the worker knows a card that it has had before.
    if (last?.hash !== stored.hash) last = { hash: stored.hash, card: compileCard(stored.file) };
    const { card } = last;
    const before = round.summary.judge === JUDGE ? round.summary.choices : [];
    let review = await withKept(id, reviewRound(play.record, createSwarKernel(card)));
    if (isCanceled) return;
    const missing = [...review.choices.keys()].filter(
      (nth) => !before[nth]?.verdict && review.choices[nth]!.analysis.depth === 'quick',
    );
    if (review.choices.length > 0) {
      await new Promise<void>((resolve) => {
        const request = { record: play.record, card, choices: missing };
        const cancel = startDeepAnalysis(request, {
          onChoice({ nth, analysis }) {
            review = withDeepAnalysis(review, nth, analysis);
          },
          onLedger(ledger) {
            review = withLedger(review, ledger);
            resolve();
          },
        });
        cancelAnalysis = () => {
          cancel();
          resolve();
        };
      });
    }
    if (isCanceled) return;
    const choices = storedChoices(review, round.detail.aims).map((choice, nth) =>
      choice.verdict === null ? (before[nth] ?? choice) : choice,
    );
    // Judging takes seconds, in which another tab may have deleted the round: it stays deleted.
    const aims = aimsMet(review, round.detail.aims);
    await storeVerdicts(id, { choices, judge: JUDGE, ...(aims && { aims }), ...storedLedger(review) });
    await keepTold(id, review);
  }

  void run();
  return () => {
    isCanceled = true;
    cancelAnalysis();
  };
}

/** Whether a choice has no verdict yet, or luck is not known; a round whose card is not stored can have none. */
function isUnfinished({ choices, card, ledger }: RoundSummary): boolean {
  if (card.hash === null) return false;
  return choices.length === 0 || ledger === undefined || choices.some(({ verdict }) => verdict === null);
}
