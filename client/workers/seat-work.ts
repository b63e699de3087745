// The order of the work for one's own seat: choices that are made, one after the other, then the one that is still open.
import {
  type DeepAnalysis,
  decisionKey,
  decisionsIn,
  type Ledger,
  type PendingDecision,
  type SeatRecord,
} from '../../shared-engine/index.ts';

/** What the seat knows now. */
export interface SeatKnowledge {
  readonly record: SeatRecord;
  /** What the open step waits for; null where it waits for nothing. */
  readonly open: PendingDecision | null;
  /** Whether the round is closed, so that luck and choices can be told. */
  readonly isClosed: boolean;
}

/** The analysis of a decision, by the key that the decision has everywhere. */
export interface KeyedAnalysis {
  readonly key: string;
  readonly analysis: DeepAnalysis;
}

/** Luck and choices of a closed round, by the tiles that the seat was dealt. */
export interface RecordedLedger {
  readonly start: string;
  readonly ledger: Ledger;
}

export interface SeatWorkPorts {
  analyze(record: SeatRecord, nth: number): DeepAnalysis;
  /** So that an analysis of whatever is chosen takes less time. */
  prepare(record: SeatRecord, open: PendingDecision): void;
  ledger(record: SeatRecord): Ledger;
  /** Between two pieces of work, so that news gets in. */
  pause(): Promise<void>;
  onAnalysis(answer: KeyedAnalysis): void;
  onLedger(answer: RecordedLedger): void;
}

export interface SeatWork {
  /** What was known before is forgotten: a choice withdrawn is not analyzed any more. */
  follow(knowledge: SeatKnowledge): void;
}

export function createSeatWork(ports: SeatWorkPorts): SeatWork {
  let known: SeatKnowledge | null = null;
  let answered: ReadonlySet<string> = new Set();
  let prepared = '';
  let settled = '';
  let isWorking = false;

  async function work() {
    isWorking = true;
    while (known !== null && workOn(known)) await ports.pause();
    isWorking = false;
  }

  /** Does the next piece; whether there was one. */
  function workOn({ record, open, isClosed }: SeatKnowledge): boolean {
    const keys = decisionsIn(record).map(decisionKey);
    const nth = keys.findIndex((key) => !answered.has(key));
    if (nth !== -1) {
      const key = keys[nth]!;
      // Those of rounds before are forgotten.
      answered = new Set([...keys.filter((other) => answered.has(other)), key]);
      ports.onAnalysis({ key, analysis: ports.analyze(record, nth) });
      return true;
    }
    const name = JSON.stringify([record, open]);
    if (isClosed && keys.length > 0 && settled !== name) {
      settled = name;
      ports.onLedger({ start: record.start.join(), ledger: ports.ledger(record) });
      return true;
    }
    if (open === null || prepared === name) return false;
    prepared = name;
    ports.prepare(record, open);
    return true;
  }

  return {
    follow(knowledge) {
      known = knowledge;
      if (!isWorking) void work();
    },
  };
}
