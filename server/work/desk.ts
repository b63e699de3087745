// Does the tasks, wherever it stands: in a worker's thread or, for tests and small servers, in the server's own.
import {
  type Analyst,
  chooseFor,
  compileCard,
  createAnalyst,
  createKernel,
  DEEP,
  houseCard,
  judgeDeeply,
  type Kernel,
  reviewRound,
  SHALLOW,
  type Vectors,
} from '../../shared-engine/index.ts';
import { prepareDrill } from './prepared-drill.ts';
import type { Answer, CardSlip, Task } from './task.ts';

/** Cards held ready at once; each takes a few megabytes. */
const CARDS = 6;

interface Ready {
  readonly kernel: Kernel;
  analyst(): Analyst;
}

export interface Desk {
  /** Makes a card ready before it is asked about. */
  prepare(slip: CardSlip): void;
  do(task: Task): Answer;
}

export function createDesk(vectors: Vectors): Desk {
  const cards = new Map<string, Ready>();

  function cardOf({ key, file }: CardSlip): Ready {
    const known = cards.get(key);
    if (known) return known;
    const card = file === null ? houseCard() : compileCard(file);
    let analyst: Analyst | null = null;
    const ready: Ready = {
      kernel: createKernel(card),
      analyst() {
        analyst ??= createAnalyst(card, vectors);
        return analyst;
      },
    };
    cards.set(key, ready);
    const [oldest] = cards.keys();
    if (cards.size > CARDS && oldest !== undefined) cards.delete(oldest);
    return ready;
  }

  return {
    prepare: (slip) => void cardOf(slip).analyst(),
    do(task) {
      const { kernel, analyst } = cardOf(task.card);
      switch (task.kind) {
        case 'review':
          return { kind: 'review', review: reviewRound(task.record, kernel, task.earlier) };
        case 'judge': {
          const budget = task.depth === 'deep' ? DEEP : SHALLOW;
          return { kind: 'judge', judgement: judgeDeeply(analyst(), task.record, task.nth, budget) };
        }
        case 'drill':
          return { kind: 'drill', prepared: prepareDrill(task.drill, kernel) };
        case 'choose': {
          const { style, view, seed } = task;
          return { kind: 'choose', choice: chooseFor(style, view, kernel, { below: () => seed }, analyst) };
        }
      }
    },
  };
}
