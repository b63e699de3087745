// A published drill of this process: rounds are played out again before they are counted, and what is told is analyzed.
import {
  type CountedChoices,
  countedChoices,
  type GuidedStart,
  rotatedScript,
  type SendRound,
} from '../../shared-engine/index.ts';
import { ACCEPTED, type Answer, reject } from '../aggregate/decision.ts';
import type { Log } from '../log.ts';
import type { Clock, PlayingCard, Unsubscribe } from '../ports.ts';
import type { Drills, PlayedDeal } from '../work-ports.ts';
import { DrillAnalyses, type DrillAnalysesPorts } from './analyses.ts';
import type { PublishedCommand } from './decide.ts';
import type { PublishedAggregate } from './published.ts';
import { type PublishedState, phaseOf, publishedTableTerms, roundsOf } from './state.ts';

export interface ActiveDrillPorts extends DrillAnalysesPorts {
  readonly drills: Pick<Drills, 'play'>;
  readonly clock: Clock;
  readonly log: Log;
}

/** A round as a device sends it, and whose it is. */
export interface SentRound extends Pick<SendRound, 'id' | 'choices' | 'questions'> {
  readonly player: string;
  /** Place of the deal in the drill. */
  readonly deal: number;
  readonly name: string | null;
  /** Of whom no other waits behind all of theirs. */
  readonly sender: string;
}

export class ActiveDrill {
  readonly code: string;
  readonly card: PlayingCard;
  readonly analyses: DrillAnalyses;
  readonly #aggregate: PublishedAggregate;
  readonly #ports: ActiveDrillPorts;
  readonly #unsubscribe: Unsubscribe;
  /** When the drill was last asked for, by the clock of this server. */
  usedAt = 0;

  /** Follows the drill until `stop`. */
  constructor(aggregate: PublishedAggregate, card: PlayingCard, ports: ActiveDrillPorts) {
    this.code = aggregate.code;
    this.card = card;
    this.#aggregate = aggregate;
    this.#ports = ports;
    this.analyses = new DrillAnalyses(this, ports);
    this.#unsubscribe = aggregate.onChange(({ recorded }) => {
      for (const { seq, event } of recorded) ports.log.info({ seq, event: event.kind }, 'drill event');
      this.analyses.ask();
    });
  }

  get state(): PublishedState {
    return this.#aggregate.state;
  }

  submit(command: PublishedCommand): Promise<Answer> {
    return this.#aggregate.submit(command);
  }

  /** Rejects when the store cannot be reached. */
  catchUp(version: number): Promise<void> {
    return this.#aggregate.catchUp(version);
  }

  /** Counts the round, unless one of this device is counted already; nothing is played out that could not be. */
  async count({ player, id, deal, choices, questions, name, sender }: SentRound): Promise<Answer> {
    if (roundsOf(this.state, player)[deal] !== undefined) return ACCEPTED;
    const phase = phaseOf(this.state, this.#ports.clock.now());
    if (phase !== 'open') return reject(phase === 'over' ? 'drill-over' : 'drill-withdrawn');
    const played = await this.play(deal, choices, sender);
    if (played === null) return reject('busy');
    if (!played.ok || !played.isClosed) return reject('round-not-played');
    const counted: CountedChoices = countedChoices(played.record);
    return this.submit({ kind: 'count', player, id, deal, choices: counted, questions, name });
  }

  /** These choices of whoever plays the deal; null where it cannot be done just now. */
  play(deal: number, choices: SentRound['choices'], sender: string): Promise<PlayedDeal | null> {
    const start = this.#startOf(deal);
    if (start === null) return Promise.resolve({ ok: false });
    return this.#ports.drills.play({ card: this.card, fairnessKey: sender, start, choices });
  }

  stop(): void {
    this.#unsubscribe();
    this.analyses.stop();
  }

  #startOf(place: number): GuidedStart | null {
    const { drill, deals } = this.state;
    const [deal, prepared] = [drill.deals[place], deals[place]];
    if (deal === undefined || prepared === undefined) return null;
    const terms = publishedTableTerms(this.state);
    return { deal: prepared, seat: 0, bots: drill.bots, terms, script: rotatedScript(deal) };
  }
}
