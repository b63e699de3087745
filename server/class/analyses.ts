// The deep analyses of a class: asked for while it is held, stored in its log, and told from there alone.
import {
  type AnalyzedChoice,
  analyzedChoice,
  isAnonymous,
  type Review,
  type SeatRecord,
  type Step,
  seatView,
} from '../../shared-engine/index.ts';
import type { Answer } from '../aggregate/decision.ts';
import { type SeatDecision, seatDecisions } from '../reviews/analysis-requests.ts';
import type {
  AnalysisRank,
  AnalysisRequest,
  DeepAnalyzer,
  PendingAnalysis,
  Reviewer,
} from '../work-ports.ts';
import { cohortOf } from './anonymity.ts';
import type { ClassCommand } from './decide.ts';
import type { FollowedClass } from './followed-class.ts';
import { roundOf } from './player-results.ts';
import { type ClassPlayer, type ClosedRound, type FrozenStep, playersWithPlace } from './state.ts';

export interface AnalysesPorts {
  readonly reviewer: Reviewer;
  /** Shared with the reviews of the players; null where there are quick reviews alone. */
  readonly analyzer: DeepAnalyzer | null;
  /** Asks anew whatever has been analyzed already, so that how long it takes does not tell who chose first (rule AN5). */
  readonly afresh: DeepAnalyzer | null;
}

export interface AnalyzedClass extends FollowedClass {
  /** Stores what was found. Never rejects. */
  record(command: ClassCommand): Promise<Answer>;
}

/** Analyses stored together while more are on their way, so that a class of sixty fills its log slowly. */
const BATCH = 8;

/** Where in the drill a choice is. */
interface ChoicePlace {
  readonly deal: number;
  readonly step: Step;
}

interface Running {
  readonly at: ChoicePlace;
  readonly abort: AbortController;
  readonly pending: PendingAnalysis | undefined;
}

export class ClassAnalyses {
  readonly #live: AnalyzedClass;
  readonly #ports: AnalysesPorts;
  /** The decisions that are being analyzed, by their ids, and how that is broken off. */
  readonly #running = new Map<string, Running>();
  #isStopped = false;
  /** How far each deal of each player was followed. */
  readonly #followed = new Map<string, string>();
  #found: Record<string, AnalyzedChoice> = {};
  #rounds: ClosedRound[] = [];
  #isStoring = false;

  constructor(live: AnalyzedClass, ports: AnalysesPorts) {
    this.#live = live;
    this.#ports = ports;
  }

  /** Whether any are made at this server. */
  get areMade(): boolean {
    return this.#ports.analyzer !== null;
  }

  /** Asks for what is missing, of those who sit in this room or of all; what failed is asked for again. */
  ask(room: string | null = null): void {
    const { state } = this.#live;
    // Friends without a teacher have no report.
    if (this.#isStopped || state.terms.amongFriends) return;
    this.#rankAll();
    if (isAnonymous(state.terms)) {
      for (const step of state.frozen) this.#followFrozen(step);
      return;
    }
    for (const player of playersWithPlace(state)) {
      if (room !== null && player.room !== room) continue;
      for (let deal = player.first; deal < state.dealt; deal++) this.#followPlayer(player, deal);
    }
  }

  /** The teacher has revealed a step: what its costs wait for goes before everything else. */
  revealed(): void {
    this.#rankAll();
    this.#storeSoon();
  }

  #rankAll(): void {
    for (const { at, pending } of this.#running.values()) pending?.rank(this.#rankOf(at));
  }

  /**
   * What a class is not shown yet waits for its players alone, whose tables have asked for it as well where their pages
   * do not analyze it themselves.
   */
  #rankOf({ deal, step }: ChoicePlace): AnalysisRank {
    const { shown, dealt, ended, terms } = this.#live.state;
    const isLast = deal === dealt - 1;
    if (shown?.revealed === true && shown.step === step && isLast) return 'interactive';
    if (!isLast || ended) return 'background';
    return isAnonymous(terms) ? 'live' : 'spare';
  }

  /** Aborts everything. */
  stop(): void {
    this.#isStopped = true;
    for (const { abort } of this.#running.values()) abort.abort();
  }

  /** The player's own choices, and how the round went as a whole. */
  #followPlayer(player: ClassPlayer, deal: number): void {
    const round = roundOf(this.#live, player, deal);
    if (round === null) return;
    const place = `${player.id} ${deal}`;
    const reached = `${round.resolved.length} ${round.phase === 'closed'}`;
    if (this.#followed.get(place) === reached) return;
    this.#followed.set(place, reached);
    const { record } = seatView(round, player.seat);
    const missing = this.#missing(record).filter(({ by }) => by === 'player');
    const isNew = round.phase === 'closed' && !this.#isStored({ player: player.id, deal });
    if (missing.length === 0 && !isNew) return;
    const review = this.#review(record);
    const again = () => this.#followed.delete(place);
    for (const { request, step } of missing) {
      void this.#analyze(request, review, this.#ports.analyzer, { deal, step }).then((found) => {
        if (found === null) again();
        else this.#found[request.decisionId] = found;
        this.#storeSoon();
      });
    }
    if (!isNew) return;
    void review.then((made) => {
      if (made === null) return again();
      const toGo = { start: made.toGoStart, end: made.toGoEnd };
      this.#rounds.push({ player: player.id, deal, toGo });
      this.#storeSoon();
    });
  }

  /** What is told of a frozen step gets its costs all at once, from what was frozen alone (rule AN5). */
  #followFrozen({ deal, seat, step, spreads }: FrozenStep): void {
    const place = `${deal} ${seat} ${step}`;
    if (this.#followed.has(place)) return;
    this.#followed.set(place, 'frozen');
    const told = spreads.flatMap(({ cells }) => cells.flatMap(({ decisionId }) => decisionId ?? []));
    const records = cohortOf(this.#live.state, deal, seat).flatMap((player) => {
      const round = roundOf(this.#live, player, deal);
      return round === null ? [] : [seatView(round, seat).record];
    });
    const missing = records.flatMap((record) => this.#missing(record).map((one) => ({ ...one, record })));
    const asked = told.flatMap((id) => missing.find(({ request }) => request.decisionId === id) ?? []);
    void Promise.all(
      asked.map(async ({ request, record }) => {
        const found = await this.#analyze(request, this.#review(record), this.#ports.afresh, { deal, step });
        return [request.decisionId, found] as const;
      }),
    ).then((made) => {
      if (made.some(([, found]) => found === null)) this.#followed.delete(place);
      else for (const [id, found] of made) if (found) this.#found[id] = found;
      this.#storeSoon();
    });
  }

  #missing(record: SeatRecord): readonly SeatDecision[] {
    const { card, code, state } = this.#live;
    if (!this.areMade) return [];
    return seatDecisions(record, card, code).filter(
      ({ request: { decisionId } }) => !state.analyzed[decisionId] && !this.#running.has(decisionId),
    );
  }

  /** Null where it could not be made. */
  async #analyze(
    request: AnalysisRequest,
    review: Promise<Review | null>,
    analyzer: DeepAnalyzer | null,
    at: ChoicePlace,
  ): Promise<AnalyzedChoice | null> {
    const { decisionId, nth } = request;
    const abort = new AbortController();
    const pending = analyzer?.analyze(request, abort.signal, this.#rankOf(at));
    this.#running.set(decisionId, { at, abort, pending });
    const [result, made] = [await pending?.result, await review];
    this.#running.delete(decisionId);
    const choice = made?.choices[nth];
    if (!result || !made || !choice) return null;
    return analyzedChoice({ ...choice, analysis: result.analysis }, made.sections);
  }

  #review(record: SeatRecord): Promise<Review | null> {
    const { card, code } = this.#live;
    return this.#ports.reviewer.review({ record, card, fairnessKey: code }).catch(() => null);
  }

  #isStored({ player, deal }: Pick<ClosedRound, 'player' | 'deal'>): boolean {
    return this.#live.state.rounds.some((one) => one.player === player && one.deal === deal);
  }

  /** As soon as nothing more is on its way, enough has come, or the big screen waits for some of it. */
  #storeSoon(): void {
    const choices = Object.keys(this.#found).length;
    const { shown } = this.#live.state;
    const isWaitedFor =
      shown?.revealed === true && Object.values(this.#found).some(({ step }) => step === shown.step);
    const isDue = this.#running.size === 0 || choices >= BATCH || isWaitedFor;
    if (this.#isStoring || this.#isStopped || !isDue) return;
    if (choices === 0 && this.#rounds.length === 0) return;
    const command = { kind: 'analyzed', choices: this.#found, rounds: this.#rounds } as const;
    this.#found = {};
    this.#rounds = [];
    this.#isStoring = true;
    void this.#live.record(command).then(({ ok }) => {
      this.#isStoring = false;
      // With the next request; the analyses are remembered.
      if (!ok) this.#followed.clear();
      else this.#storeSoon();
    });
  }
}
