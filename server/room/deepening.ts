// One seat's choices in one round, given to the judges one by one as they are made, while people think.
import {
  type AnswerChoice,
  type Question,
  questionsIn,
  type Review,
  recordWith,
  type SeatRecord,
  type SeatView,
  sayLowered,
  withJudgement,
} from '../../shared-engine/index.ts';
import type { Judged, Judges, Judging, PlayingCard } from '../ports.ts';

interface Given {
  /** Tells this choice from another that was made in its place. */
  readonly choice: string;
  readonly judging: Judging;
  judged: Judged | null;
  over: boolean;
}

export class Deepening {
  readonly #judges: Judges;
  readonly #card: PlayingCard;
  readonly #onJudged: () => void;
  /** By number of the choice. */
  #given: Given[] = [];
  #closed = false;

  constructor(judges: Judges, card: PlayingCard, onJudged: () => void) {
    this.#judges = judges;
    this.#card = card;
    this.#onJudged = onJudged;
  }

  /** Whether nothing more is to come for what was given so far. */
  get isOver(): boolean {
    return this.#given.every(({ over }) => over);
  }

  /** Gives what is new in the seat's view to the judges, and calls off what was taken back. */
  follow(view: SeatView): void {
    const record = recordSoFar(view);
    const choices = questionsIn(record).map(nameOf);
    const kept = choices.findIndex((choice, nth) => this.#given[nth]?.choice !== choice);
    const from = kept === -1 ? choices.length : kept;
    for (const { judging } of this.#given.splice(from)) judging.callOff();
    for (const choice of choices.slice(from)) this.#give(record, this.#given.length, choice);
    this.#closed = view.stage.phase === 'closed';
    if (this.#closed) for (const { judging } of this.#given) judging.giveWay();
  }

  /** The review with every judgement that is there. */
  into(review: Review): Review {
    const found = this.#given.flatMap(({ judged }, nth) => (judged ? [{ judged, nth }] : []));
    const deeper = found.reduce((now, { judged, nth }) => withJudgement(now, nth, judged.judgement), review);
    return found.some(({ judged }) => judged.lowered) ? sayLowered(deeper) : deeper;
  }

  stop(): void {
    for (const { judging } of this.#given.splice(0)) judging.callOff();
  }

  #give(record: SeatRecord, nth: number, choice: string): void {
    const judging = this.#judges.judge({ record, nth, card: this.#card });
    const given: Given = { choice, judging, judged: null, over: false };
    this.#given.push(given);
    void judging.result.then((judged) => {
      if (this.#given[nth] !== given) return;
      given.judged = judged;
      given.over = true;
      this.#onJudged();
    });
  }
}

/** What the seat has lived through and, where it has answered the open step, its answer as the last step. */
function recordSoFar(view: SeatView): SeatRecord {
  const answer = answerIn(view);
  // Who chose is no part of a judgement.
  return answer ? recordWith(view.record, answer, 'owner') : view.record;
}

function answerIn({ answer, stage }: SeatView): AnswerChoice | null {
  switch (answer?.kind) {
    case 'vote':
      return { kind: 'vote', step: 'vote', go: answer.go };
    case 'ask':
      return { kind: 'ask', step: 'courtesy-ask', count: answer.count };
    case 'pass': {
      const step = stage.phase === 'passing' ? stage.step : 'courtesy-pass';
      return { kind: 'seal', step, tiles: answer.tiles, blind: answer.blind };
    }
    case undefined:
      return null;
  }
}

/** By what the seat itself did, so that a choice stays the same when its step is over. */
function nameOf({ offered: { chosen, situation }, asked }: Question): string {
  const { seat } = situation;
  switch (chosen.kind) {
    case 'vote':
      return `vote ${chosen.go[seat]}`;
    case 'ask':
      return `ask ${chosen.asked[seat]}`;
    case 'move':
      return `${chosen.step} ${asked} ${chosen.blind[seat]} ${[...chosen.gave].sort().join(' ')}`;
  }
}
