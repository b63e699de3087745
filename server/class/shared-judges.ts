// Deeper judgements shared by everybody who faced and chose the same: each question is looked at once.
import { questionsIn } from '../../shared-engine/index.ts';
import type { ChoiceToJudge, Judged, Judges, Judging, PlayingCard } from '../ports.ts';

/** Judgements remembered for each card: a class of sixty with a few deals, every choice of it. */
const KEPT = 4000;

export interface SharedJudges extends Judges {
  /** What is known of this choice already. */
  known(choice: ChoiceToJudge): Judged | null;
}

/** One question on its way, for as many as have asked it. */
interface Looked {
  readonly judging: Judging;
  judged: Judged | null;
  /** Who still waits, and who of them still plays. */
  waiting: number;
  playing: number;
}

export function sharedJudges(judges: Judges): SharedJudges {
  const byCard = new WeakMap<PlayingCard, Map<string, Looked>>();

  function looksOf(card: PlayingCard): Map<string, Looked> {
    const known = byCard.get(card) ?? new Map<string, Looked>();
    byCard.set(card, known);
    return known;
  }

  function lookAt(choice: ChoiceToJudge, looks: Map<string, Looked>, key: string): Looked {
    const judging = judges.judge(choice);
    const look: Looked = { judging, judged: null, waiting: 0, playing: 0 };
    looks.set(key, look);
    void judging.result.then((judged) => {
      look.judged = judged;
      // What was called off, or failed, may be asked again.
      if (judged === null && looks.get(key) === look) looks.delete(key);
    });
    const [oldest] = looks.keys();
    if (looks.size > KEPT && oldest !== undefined) looks.delete(oldest);
    return look;
  }

  return {
    judge(choice) {
      const looks = looksOf(choice.card);
      const key = keyOf(choice);
      const look = looks.get(key) ?? lookAt(choice, looks, key);
      look.waiting++;
      look.playing++;
      return oneOf(look, () => {
        if (looks.get(key) === look && look.judged === null) looks.delete(key);
      });
    },
    known: (choice) => byCard.get(choice.card)?.get(keyOf(choice))?.judged ?? null,
  };
}

/** One asker's part in a look: it gives way, or is called off, when everybody who asked has done so. */
function oneOf(look: Looked, forget: () => void): Judging {
  let waits = true;
  let plays = true;
  function stopPlaying(): void {
    if (!plays) return;
    plays = false;
    if (--look.playing === 0) look.judging.giveWay();
  }
  return {
    result: look.judging.result,
    giveWay: stopPlaying,
    callOff() {
      if (!waits) return;
      waits = false;
      if (--look.waiting > 0) return stopPlaying();
      forget();
      look.judging.callOff();
    },
  };
}

/** What was asked, held and known then, and what was chosen: all that a judgement depends on. */
function keyOf({ record, nth }: ChoiceToJudge): string {
  return JSON.stringify(questionsIn(record)[nth] ?? { record, nth });
}
