// Judges for tests: they keep what they are asked and answer when and what the test says.
import type { ChoiceToJudge, Judged, Judges } from '../../server/ports.ts';
import { type Judgement, type Question, questionsIn } from '../../shared-engine/index.ts';

export interface AskedChoice extends ChoiceToJudge {
  readonly question: Question;
  readonly gaveWay: () => boolean;
  /** Whether it has been answered or called off. */
  readonly isOver: () => boolean;
  readonly wasCalledOff: () => boolean;
  answer(judged: Judged | null): void;
}

export interface ScriptedJudges {
  readonly judges: Judges;
  /** Oldest first; what is over stays. */
  readonly asked: readonly AskedChoice[];
}

export function scriptedJudges(): ScriptedJudges {
  const asked: AskedChoice[] = [];
  const judges: Judges = {
    judge(choice) {
      let gaveWay = false;
      let over = false;
      let calledOff = false;
      let settle: (judged: Judged | null) => void = () => {};
      const result = new Promise<Judged | null>((resolve) => {
        settle = resolve;
      });
      const answer = (judged: Judged | null) => {
        over = true;
        settle(judged);
      };
      asked.push({
        ...choice,
        question: questionsIn(choice.record)[choice.nth]!,
        gaveWay: () => gaveWay,
        isOver: () => over,
        wasCalledOff: () => calledOff,
        answer,
      });
      return {
        result,
        giveWay() {
          gaveWay = true;
        },
        callOff() {
          calledOff = true;
          answer(null);
        },
      };
    },
  };
  return { judges, asked };
}

/** A judgement that says nothing but that it was made, in so many worlds. */
export function judgedIn(worlds: number, lowered = false): Judged {
  const judgement: Judgement = {
    depth: 'deep',
    verdict: 'as-good',
    decided: true,
    loss: null,
    gift: null,
    played: 0,
    rival: null,
    finalists: [],
    rivals: 0,
    mean: null,
    worlds,
    smallLoss: 1,
    words: [],
  };
  return { judgement, lowered };
}
