// A table in the page itself: the same engine, three bots, no server; for playing a deal again and without a network.
import {
  type Analyst,
  begin,
  botPause,
  botRandom,
  type Choice,
  type CompiledCard,
  chooseFor,
  createAnalyst,
  createSwarKernel,
  type Deal,
  type DealScript,
  decide,
  evolve,
  type Four,
  forFour,
  isWaitingFor,
  type Kernel,
  nextDealer,
  openRound,
  type Resolved,
  type Review,
  type Round,
  type RoundEvent,
  reviewRound,
  roundIdOf,
  SEATS,
  type Seat,
  type SeatInfo,
  type ServerMessage,
  type SimdModule,
  type Step,
  type StyleName,
  scriptedChoice,
  seatView,
  stepOf,
  stream,
  type Terms,
  termsFrom,
} from '../../shared-engine/index.ts';
import type { Connection, ConnectionState } from '../connection/connection.ts';
import type { ClientRequest } from '../connection/pending.ts';
import type { Cancel, StartTimer } from '../connection/socket.ts';
import type { PageRound } from '../storage/page-round.ts';
import type { OwnAnalyses, StartOwnAnalyses } from '../workers/own-analyses.ts';

export interface LocalTablePorts {
  readonly code: string;
  readonly first: Deal;
  readonly you: Seat;
  /** How the first deal is played. */
  readonly terms: Terms;
  readonly name: string;
  readonly botNames: Four<string>;
  readonly style: StyleName;
  /** Where the three bots pass differently, and what they answer in a deal with a script (rule R6). */
  readonly styles?: Four<StyleName | null>;
  readonly script?: DealScript;
  /** Milliseconds for which a bot pauses before it chooses, at the usual pace. */
  readonly botDelay: number;
  readonly loadCard: () => Promise<CompiledCard>;
  readonly loadSimd: () => Promise<SimdModule>;
  readonly newSeed: () => string;
  readonly startTimer: StartTimer;
  /** Follows the player's seat and analyzes its choices as they are made. */
  readonly startOwnAnalyses: StartOwnAnalyses;
  /** The round as it stood when the page was left; null for a new one. */
  readonly stored: PageRound | null;
  readonly store: (round: PageRound) => void;
  /** A deal has been dealt; the first one too. */
  readonly onDeal: (deal: Deal, terms: Terms) => void;
  readonly on: {
    readonly state: (state: ConnectionState) => void;
    readonly message: (message: ServerMessage) => void;
  };
}

interface Play {
  readonly number: number;
  readonly deal: Deal;
  readonly round: Round;
  /** The player's own, in their order. */
  readonly answers: readonly Choice[];
  /** With which a round of the server went on here; none where it was dealt here. */
  readonly outcomes: readonly Resolved[];
}

export function localTable(ports: LocalTablePorts): Connection {
  const { you, on } = ports;
  const bots = SEATS.filter((seat) => seat !== you);
  const styleOf = (seat: Seat): StyleName => ports.styles?.[seat] ?? ports.style;
  let kernel: Kernel | null = null;
  let analyst: Analyst | null = null;
  let play: Play | null = null;
  let terms = ports.terms;
  let seq = 0;
  let cancelBots: Cancel = () => {};
  /** The step that the bots have been asked at. */
  let botsAt: Step | null = null;
  let analyses: OwnAnalyses | null = null;
  /** The first answers of the round, once it is closed. */
  let first: Review | null = null;
  let cancelReview: Cancel = () => {};
  /** Counts starts and stops: whoever leaves before the parts have come finds no table opened behind them. */
  let nth = 0;

  async function start() {
    const own = ++nth;
    on.state({ kind: 'connecting' });
    const [card, vectors] = await Promise.all([ports.loadCard(), ports.loadSimd()]);
    if (own !== nth) return;
    kernel ??= createSwarKernel(card);
    analyst ??= createAnalyst(card, vectors);
    analyses ??= ports.startOwnAnalyses({ card, onAnalysis: sendReview });
    on.state({ kind: 'open' });
    if (play !== null) {
      botsAt = null;
      return show();
    }
    const stored = ports.stored?.card === card.id ? ports.stored : null;
    terms = stored?.terms ?? terms;
    deal(ports.first, stored?.number ?? 1, stored ?? {});
  }

  function stop() {
    nth++;
    cancelBots();
    cancelReview();
    analyses?.stop();
    analyses = null;
  }

  /** `answers` are given again after `outcomes`, as far as the engine of today takes them. */
  function deal(next: Deal, number: number, stored: Partial<PageRound> = {}) {
    const { answers = [], outcomes = [] } = stored;
    cancelBots();
    cancelReview();
    botsAt = null;
    first = null;
    // What is drawn anew for somebody who goes on without the server is nobody's to look at (rule G2).
    const played = 'prepared' in next ? { ...terms, revealRacks: false } : terms;
    const dealt = begin(openRound(next, played, roundIdOf(ports.code, number)));
    const round = outcomes.reduce((now, outcome) => evolve(now, { kind: 'resolved', outcome }), dealt);
    play = { number, deal: next, round, answers: [], outcomes };
    ports.onDeal(next, terms);
    for (const answer of answers) {
      if (!answerWith(answer).ok) break;
      // At once, until the step waits for the player.
      while (bots.some(botAnswers));
    }
    store();
    show();
  }

  /** What has happened is seen, and what follows from it begins. */
  function show() {
    sendTable();
    if (play!.round.phase === 'closed') review(play!);
    else askBots();
  }

  /** Once for each step: every bot chooses after its pause, whatever the player does meanwhile. */
  function askBots() {
    const view = seatView(play!.round, you);
    const step = stepOf(view.stage);
    if (step === botsAt) return;
    botsAt = step;
    const timers: Cancel[] = [];
    cancelBots = () => {
      for (const stop of timers) stop();
    };
    for (const seat of bots.filter((one) => isWaitingFor(view.stage, one))) {
      const answer = () => botAnswers(seat) && show();
      timers.push(ports.startTimer(botPause(view.terms, seat, ports.botDelay), answer));
    }
  }

  function send(request: ClientRequest) {
    if (play === null) return;
    if (request.kind === 'choose') return choose(request);
    const { id, action } = request;
    const isClosed = play.round.phase === 'closed';
    if (action.kind === 'set-terms' && isClosed) {
      const agreed = termsFrom(action.terms, 'alone');
      if (!agreed.ok) return on.message({ kind: 'rejected', id, code: agreed.code, message: agreed.message });
      terms = agreed.terms;
      sendTable();
    }
    on.message({ kind: 'ack', id });
    if (action.kind === 'ready' && isClosed) dealNext(play);
  }

  function dealNext({ round, number }: Play) {
    const seed = ports.newSeed();
    const east = { whoIsEast: terms.whoIsEast, player: you, last: round.deal.dealer };
    deal({ seed, dealer: nextDealer(east, stream(seed, 'first dealer')) }, number + 1);
  }

  function choose({ id, choice }: ClientRequest & { kind: 'choose' }) {
    const decision = answerWith(choice);
    if (!decision.ok) {
      const { code, message } = decision;
      return on.message({ kind: 'rejected', id, code, message });
    }
    store();
    on.message({ kind: 'ack', id });
    show();
  }

  function answerWith(choice: Choice): ReturnType<typeof decide> {
    const decision = decide(play!.round, { ...choice, seat: you, by: 'player' });
    if (!decision.ok) return decision;
    apply(decision.events);
    const { answers } = play!;
    play = { ...play!, answers: choice.kind === 'withdraw' ? answers.slice(0, -1) : [...answers, choice] };
    return decision;
  }

  function store() {
    if (play === null || kernel === null) return;
    const { number, deal: dealt, answers, outcomes, round } = play;
    ports.store({
      deal: dealt,
      seat: you,
      number,
      style: ports.style,
      terms: 'prepared' in dealt ? terms : round.terms,
      card: kernel.card.id,
      answers,
      ...(outcomes.length > 0 && { outcomes }),
    });
  }

  function apply(events: readonly RoundEvent[]) {
    play = { ...play!, round: events.reduce(evolve, play!.round) };
  }

  /** A bot sees its own seat's view and nothing more, as on the server. */
  function botAnswers(seat: Seat): boolean {
    const { round } = play!;
    const view = seatView(round, seat);
    const step = stepOf(view.stage);
    if (step === null || kernel === null || analyst === null || view.answer !== null) return false;
    const analystNow = analyst;
    const random = botRandom(round.deal.seed, step, seat);
    const own = chooseFor(styleOf(seat), view, kernel, random, () => analystNow);
    const choice = own && ports.script ? scriptedChoice(ports.script, view, own) : own;
    const decision = choice && decide(round, { ...choice, seat, by: 'bot' });
    if (!decision?.ok) return false;
    apply(decision.events);
    return true;
  }

  /** The table is shown first, because a review takes a moment. */
  function review({ number, round }: Play) {
    cancelReview = ports.startTimer(30, () => {
      if (kernel === null || play?.number !== number) return;
      first = reviewRound(seatView(round, you).record, kernel);
      sendReview();
    });
  }

  /** With the analyses that are there by now. */
  function sendReview() {
    if (first === null || analyses === null || play === null) return;
    const review = analyses.into(first);
    const more = review.choices.some(({ analysis }) => analysis.depth === 'quick');
    on.message({ kind: 'review', round: play.number, review, more });
  }

  function sendTable() {
    if (play === null || kernel === null) return;
    const { id, name } = kernel.card;
    const view = seatView(play.round, you);
    analyses?.follow(view);
    on.message({
      kind: 'table',
      seq: ++seq,
      table: {
        code: ports.code,
        you,
        seats: forFour(info),
        mode: 'alone',
        terms,
        card: { id, name },
        round: play.number,
        remaining: null,
        view,
      },
    });
  }

  function info(seat: Seat): SeatInfo {
    if (seat !== you) return { kind: 'bot', name: ports.botNames[seat], style: styleOf(seat) };
    return { kind: 'person', name: ports.name, present: true, ready: false, host: true };
  }

  return { start: () => void start(), retryNow() {}, send, stop };
}
