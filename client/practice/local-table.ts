// A table in the page itself: the same engine, three bots, no server; for playing a deal again and without a network.
import {
  type Analyst,
  begin,
  botRandom,
  type CompiledCard,
  chooseFor,
  createAnalyst,
  createSwarKernel,
  type Deal,
  decide,
  evolve,
  forFour,
  type Kernel,
  neighbor,
  openRound,
  type Round,
  type RoundEvent,
  reviewRound,
  roundIdOf,
  SEATS,
  type Seat,
  type SeatInfo,
  type ServerMessage,
  type SimdModule,
  type StyleName,
  seatView,
  stepOf,
  withDeepAnalysis,
} from '../../shared-engine/index.ts';
import type { Connection, ConnectionState } from '../connection/connection.ts';
import type { ClientRequest } from '../connection/pending.ts';
import type { Cancel, StartTimer } from '../connection/socket.ts';
import type { ChoiceAnalysis, RoundAnalysisRequest } from '../workers/deep-analysis-worker.ts';

export interface LocalTablePorts {
  readonly code: string;
  readonly first: Deal;
  readonly you: Seat;
  readonly name: string;
  readonly botNames: readonly [string, string, string, string];
  readonly style: StyleName;
  readonly loadCard: () => Promise<CompiledCard>;
  readonly loadSimd: () => Promise<SimdModule>;
  readonly newSeed: () => string;
  readonly startTimer: StartTimer;
  /** Analyzes a closed round choice by choice; returns a function that cancels it. */
  readonly startDeepAnalysis: StartDeepAnalysis;
  /** A deal has been dealt; the first one too. */
  readonly onDeal: (deal: Deal) => void;
  readonly on: {
    readonly state: (state: ConnectionState) => void;
    readonly message: (message: ServerMessage) => void;
  };
}

export type StartDeepAnalysis = (
  request: RoundAnalysisRequest,
  onAnswer: (answer: ChoiceAnalysis) => void,
) => Cancel;

/** Nobody else sits at this table, so nothing has to stay private (rule Z2). */
const TERMS = { revealRacks: true } as const;

interface Play {
  readonly number: number;
  readonly round: Round;
}

export function localTable(ports: LocalTablePorts): Connection {
  const { you, on } = ports;
  let kernel: Kernel | null = null;
  let analyst: Analyst | null = null;
  let play: Play | null = null;
  let seq = 0;
  let cancelReview: Cancel = () => {};
  let cancelAnalysis: Cancel = () => {};

  async function start() {
    on.state({ kind: 'connecting' });
    const [card, vectors] = await Promise.all([ports.loadCard(), ports.loadSimd()]);
    kernel ??= createSwarKernel(card);
    analyst ??= createAnalyst(card, vectors);
    on.state({ kind: 'open' });
    if (play === null) deal(ports.first, 1);
    else sendTable();
  }

  function cancel() {
    cancelReview();
    cancelAnalysis();
  }

  function deal(next: Deal, number: number) {
    cancel();
    play = { number, round: begin(openRound(next, TERMS, roundIdOf(ports.code, number))) };
    ports.onDeal(next);
    letBotsAnswer();
    sendTable();
  }

  function send(request: ClientRequest) {
    if (play === null) return;
    if (request.kind === 'choose') return choose(request);
    on.message({ kind: 'ack', id: request.id });
    if (request.action.kind === 'ready' && play.round.phase === 'closed') {
      const dealer = neighbor(play.round.deal.dealer, 'right');
      deal({ seed: ports.newSeed(), dealer }, play.number + 1);
    }
  }

  function choose({ id, choice }: ClientRequest & { kind: 'choose' }) {
    const decision = decide(play!.round, { ...choice, seat: you, by: 'player' });
    if (!decision.ok) {
      const { code, message } = decision;
      return on.message({ kind: 'rejected', id, code, message });
    }
    apply(decision.events);
    on.message({ kind: 'ack', id });
    letBotsAnswer();
    sendTable();
    if (play!.round.phase === 'closed') review(play!);
  }

  function apply(events: readonly RoundEvent[]) {
    play = { ...play!, round: events.reduce(evolve, play!.round) };
  }

  /** Each bot sees its own seat's view and nothing more, as on the server; ends when the step waits for the player. */
  function letBotsAnswer() {
    for (let answered = true; answered; ) {
      answered = SEATS.filter((seat) => seat !== you).some(botAnswers);
    }
  }

  function botAnswers(seat: Seat): boolean {
    const { round } = play!;
    const view = seatView(round, seat);
    const step = stepOf(view.stage);
    if (step === null || kernel === null || analyst === null || view.answer !== null) return false;
    const analystNow = analyst;
    const choice = chooseFor(
      ports.style,
      view,
      kernel,
      botRandom(round.deal.seed, step, seat),
      () => analystNow,
    );
    const decision = choice && decide(round, { ...choice, seat, by: 'bot' });
    if (!decision?.ok) return false;
    apply(decision.events);
    return true;
  }

  /** The table is shown first, because a review takes a moment. */
  function review({ number, round }: Play) {
    cancelReview = ports.startTimer(30, () => {
      if (kernel === null || play?.number !== number) return;
      const { record } = seatView(round, you);
      let current = reviewRound(record, kernel);
      const sendReview = () => on.message({ kind: 'review', round: number, review: current });
      sendReview();
      cancelAnalysis = ports.startDeepAnalysis(
        { record, card: kernel.card, choices: current.choices.length },
        ({ nth, analysis }) => {
          current = withDeepAnalysis(current, nth, analysis);
          sendReview();
        },
      );
    });
  }

  function sendTable() {
    if (play === null || kernel === null) return;
    const { id, name } = kernel.card;
    on.message({
      kind: 'table',
      seq: ++seq,
      table: {
        code: ports.code,
        you,
        seats: forFour(info),
        terms: { deadline: null, ...TERMS },
        card: { id, name },
        round: play.number,
        remaining: null,
        view: seatView(play.round, you),
      },
    });
  }

  function info(seat: Seat): SeatInfo {
    if (seat !== you) return { kind: 'bot', name: ports.botNames[seat], style: ports.style };
    return { kind: 'person', name: ports.name, present: true, ready: false, host: true };
  }

  return { start: () => void start(), retryNow() {}, send, stop: cancel };
}
