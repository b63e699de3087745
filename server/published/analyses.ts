// The deep analyses of passes that are told of a published drill: made when nothing else waits, stored in its log.
import { type AnalyzedChoice, analyzedChoice, type Face, isFace } from '../../shared-engine/index.ts';
import type { Answer } from '../aggregate/decision.ts';
import type { PlayingCard } from '../ports.ts';
import { seatDecisions } from '../reviews/analysis-requests.ts';
import type { DeepAnalyzer, PlayedDeal, Reviewer } from '../work-ports.ts';
import type { PublishedCommand } from './decide.ts';
import { frozenAt } from './report.ts';
import { analysisKey, type PublishedState } from './state.ts';

export interface DrillAnalysesPorts {
  readonly reviewer: Reviewer;
  /** Null where there are quick reviews alone. */
  readonly analyzer: DeepAnalyzer | null;
}

interface AnalyzedDrill {
  readonly code: string;
  readonly card: PlayingCard;
  readonly state: PublishedState;
  play(deal: number, choices: readonly FirstPass[], sender: string): Promise<PlayedDeal | null>;
  submit(command: PublishedCommand): Promise<Answer>;
}

interface FirstPass {
  readonly kind: 'pass';
  readonly step: 'first-right';
  readonly tiles: readonly Face[];
  readonly blind: 0;
}

export class DrillAnalyses {
  readonly #drill: AnalyzedDrill;
  readonly #ports: DrillAnalysesPorts;
  readonly #abort = new AbortController();
  /** Tried since this drill was loaded: what failed is tried again when it is loaded anew. */
  readonly #tried = new Set<string>();
  #isRunning = false;

  constructor(drill: AnalyzedDrill, ports: DrillAnalysesPorts) {
    this.#drill = drill;
    this.#ports = ports;
  }

  /** Whether any are made at this server. */
  get areMade(): boolean {
    return this.#ports.analyzer !== null;
  }

  /** Asks for what is missing, one after the other; nobody waits for it. */
  ask(): void {
    if (this.#isRunning || !this.areMade) return;
    this.#isRunning = true;
    void this.#run().finally(() => {
      this.#isRunning = false;
    });
  }

  stop(): void {
    this.#abort.abort();
  }

  async #run(): Promise<void> {
    for (let next = this.#missing(); next !== null && !this.#abort.signal.aborted; next = this.#missing()) {
      const key = analysisKey(next.place, next.decisionId);
      this.#tried.add(key);
      const found = await this.#analyze(next.place, next.decisionId.split(' ').filter(isFace));
      if (found !== null) await this.#drill.submit({ kind: 'analyzed', choices: { [key]: found } });
    }
  }

  #missing(): { readonly place: number; readonly decisionId: string } | null {
    const { state } = this.#drill;
    for (const place of state.deals.keys()) {
      for (const { cells } of frozenAt(state, place)) {
        for (const { decisionId } of cells) {
          if (decisionId === null) continue;
          const key = analysisKey(place, decisionId);
          if (!state.analyzed[key] && !this.#tried.has(key)) return { place, decisionId };
        }
      }
    }
    return null;
  }

  /** From the deal and the pass alone: it tells nothing of anybody. Null where it could not be made. */
  async #analyze(place: number, tiles: readonly Face[]): Promise<AnalyzedChoice | null> {
    const { card, code } = this.#drill;
    const { reviewer, analyzer } = this.#ports;
    const played = await this.#drill.play(
      place,
      [{ kind: 'pass', step: 'first-right', tiles, blind: 0 }],
      code,
    );
    if (!played?.ok) return null;
    const [first] = seatDecisions(played.record, card, code);
    if (first === undefined) return null;
    const pending = analyzer?.analyze(first.request, this.#abort.signal, 'background');
    try {
      const review = await reviewer.review({ record: played.record, card, fairnessKey: code });
      const [result, choice] = [await pending?.result, review.choices[first.request.nth]];
      if (!result || !choice) return null;
      return analyzedChoice({ ...choice, analysis: result.analysis }, review.sections);
    } catch {
      return null;
    }
  }
}
