// Runs beside the page: plays the choices of one round on in many worlds and sends each judgement as it is found.
import {
  type CompiledCard,
  createAnalyst,
  DEEP,
  type Judgement,
  judgeDeeply,
  loadVectors,
  type SeatRecord,
} from '../../shared-engine/index.ts';

export interface DeepTask {
  readonly record: SeatRecord;
  readonly card: CompiledCard;
  /** How many choices the review of the record has. */
  readonly choices: number;
}

export interface DeepAnswer {
  readonly nth: number;
  readonly judgement: Judgement;
}

self.addEventListener('message', (event: MessageEvent<DeepTask>) => void work(event.data));

async function work({ record, card, choices }: DeepTask): Promise<void> {
  const analyst = createAnalyst(card, await loadVectors());
  for (let nth = 0; nth < choices; nth++) {
    const answer: DeepAnswer = { nth, judgement: judgeDeeply(analyst, record, nth, DEEP) };
    self.postMessage(answer);
  }
}
