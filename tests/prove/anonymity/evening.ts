// An evening of an anonymous class, played by script, in which an attacker fetches everything after every single choice.
import { reportJson } from '../../../client/class/results/report-files.ts';
import { replayRoom } from '../../../server/room/room.ts';
import { memoryStore } from '../../../server/store/memory.ts';
import type { Drill } from '../../../shared-engine/drill/format.ts';
import { REPORT_TABLES, reportTable } from '../../../shared-engine/drill/report/report-files.ts';
import type { ClassTerms } from '../../../shared-engine/protocol/class.ts';
import { type DrillReport, drillReportSchema } from '../../../shared-engine/protocol/class-report.ts';
import { classPath, classPersonalDataPath } from '../../../shared-engine/protocol/paths.ts';
import { type Random, stream } from '../../../shared-engine/rules/deal/random.ts';
import type { AnswerChoice } from '../../../shared-engine/rules/exchange/command.ts';
import { STEPS, type Step } from '../../../shared-engine/rules/exchange/schedule.ts';
import type { Face } from '../../../shared-engine/rules/tiles/face.ts';
import {
  act,
  dashboardOf,
  type JoinedPlayer,
  joinClass,
  openClass,
  page,
  type Teacher,
} from '../../kit/class-room.ts';
import { dealOf, drillOf } from '../../kit/drills.ts';
import { analysisByDecision, answering } from '../../kit/fake-analysis.ts';
import { anyAnswer, isAsked, isClosed, ownView, post, sitDown } from '../../kit/http-client.ts';
import { eventsOf } from '../../kit/room-logs.ts';
import { seedNamed } from '../../kit/rounds.ts';
import { startServer, type TestServer } from '../../kit/server.ts';
import type { Peer } from '../../kit/sockets.ts';
import { fetchedOtherwise, madeOfReport, type OtherWays, openWays } from './other-ways.ts';

/** Of the saved files, which tell nothing by it. */
const DAY = '2026-11-26';

export interface EveningPlan {
  readonly seed: string;
  readonly form: Drill['form'];
  readonly players: number;
  readonly deals: number;
  readonly terms?: Partial<ClassTerms>;
  /** Which script each player follows; the player's own number where it says nothing. */
  readonly scripts?: Readonly<Record<number, number>>;
  /** What the teacher and the players do between choices, after this many of them. */
  readonly between?: Readonly<Record<number, (evening: Evening) => Promise<void>>>;
  /** Whether choices are deeply analyzed, so that costs are told too. */
  readonly isAnalyzed?: boolean;
  /** Whether keys, screens and the drill are fetched after every choice too, and not only between deals. */
  readonly isThorough?: boolean;
  /** A started server that the evening is played at; nobody leaves and nothing restarts there. */
  readonly at?: Pick<TestServer, 'url'>;
}

/** Everything fetched at one moment, by what it was fetched from. */
export type Fetched = Readonly<Record<string, string>>;

/** Opinions that scripts share, so that there is something to count. */
export const OPINIONS = 2;
/** From this number on each script has an opinion of its own. */
export const LONERS = 100;

export async function playEvening(plan: EveningPlan): Promise<readonly Fetched[]> {
  const evening = await Evening.open(plan);
  try {
    await evening.play();
    return evening.fetched;
  } finally {
    await evening.close();
  }
}

export class Evening {
  readonly fetched: Fetched[] = [];
  readonly players: JoinedPlayer[] = [];
  readonly peers: Peer[] = [];
  readonly #place: Parameters<typeof memoryStore>[0] = new Map();
  readonly #plan: EveningPlan;
  #server!: Pick<TestServer, 'url'>;
  /** Null at a server that others have started. */
  #own: TestServer | null = null;
  #teacher!: Teacher;
  /** Secrets of a dashboard opened with a key and of a big screen opened with its code. */
  #ways: OtherWays | null = null;
  /** Choices so far, and the players who have left. */
  #choices = 0;
  readonly #gone = new Set<number>();

  private constructor(plan: EveningPlan) {
    this.#plan = plan;
  }

  static async open(plan: EveningPlan): Promise<Evening> {
    const evening = new Evening(plan);
    const { seed, form, players, deals: count, terms = {} } = plan;
    if (plan.at === undefined) await evening.#start(seed);
    else evening.#server = plan.at;
    const deals = Array.from({ length: count }, (_, n) =>
      dealOf({ kind: 'random', seed: seedNamed(`${seed} ${n}`) }, { id: `deal-${n + 1}` }),
    );
    const drill = { ...drillOf(deals), form };
    // Bots that answer at once: nothing here depends on how well they play.
    const bots = { ...drill.bots, styles: ['casual', 'casual', 'casual'] as const };
    evening.#teacher = await openClass(evening.#server, { ...drill, bots }, terms);
    evening.#ways = await openWays(evening.#server, evening.#teacher);
    for (let n = 0; n < players; n++) await evening.join(`Player ${n + 1}`);
    return evening;
  }

  async join(name: string): Promise<void> {
    const player = await joinClass(this.#server, this.#teacher.code, name);
    const peer = await sitDown(this.#server, player);
    if (this.#choices > 0) await peer.untilTable(() => isAsked(peer), 'the deal');
    this.players.push(player);
    this.peers.push(peer);
  }

  /** The player gives the seat up and has everything deleted that can be; a bot plays the deal to its end. */
  async leave(player: number): Promise<void> {
    const { classSecret, code } = this.players[player]!;
    const headers = { authorization: `Bearer ${classSecret}` };
    const path = classPersonalDataPath(this.#teacher.code);
    await fetch(`${this.#server.url}${path}`, { method: 'DELETE', headers });
    this.#gone.add(player);
    while (!(await this.#isClosed(code))) await new Promise((resolve) => setTimeout(resolve, 5));
  }

  /** A bot plays for the player, to the end of the deal. */
  async standIn(player: number): Promise<void> {
    await this.teach({ kind: 'stand-in', player, on: true });
    const peer = this.peers[player]!;
    await peer.untilTable(() => isClosed(peer), 'the close');
  }

  async #isClosed(room: string): Promise<boolean> {
    const events = this.#own && (await eventsOf(this.#own.store, room));
    return events !== null && replayRoom(events)?.play?.round.phase === 'closed';
  }

  /** The server starts anew with what it has stored; everybody who is still there comes back. */
  async restart(): Promise<void> {
    await this.#own?.stop();
    await this.#start(`${this.#plan.seed} again`);
    for (const [n, player] of this.players.entries()) {
      if (!this.#gone.has(n)) this.peers[n] = await sitDown(this.#server, player);
    }
  }

  /** Whether the server did it. */
  async teach(action: Parameters<typeof act>[2]): Promise<boolean> {
    return (await act(this.#server, this.#teacher, action)).ok;
  }

  reveal(step: Step): Promise<boolean> {
    return this.teach({ kind: 'show', shown: { seat: 0, step, kind: 'pass', revealed: true } });
  }

  /** All deals, to the end of the class. */
  async play(): Promise<void> {
    await this.fetch();
    for (let round = 1; round <= this.#plan.deals; round++) {
      await this.teach({ kind: 'deal-next' });
      await Promise.all(
        this.#present().map(([, peer]) =>
          peer.untilTable((table) => table.round === round && table.view !== null, 'the deal'),
        ),
      );
      await this.fetch();
      while (await this.#turn(round)) await this.#advance();
      for (const step of STEPS) await this.reveal(step);
      await this.fetch();
    }
    await this.teach({ kind: 'end' });
    await this.fetch();
  }

  /** `isBetween`: nobody is choosing. */
  async fetch(isBetween = true): Promise<void> {
    const { url } = this.#server;
    const { code, secret } = this.#teacher;
    const headers = { authorization: `Bearer ${secret}` };
    const text = async (response: Promise<Response>) => (await response).text();
    const [report, parsed] = await this.#report();
    const all = this.#plan.isThorough || isBetween;
    this.fetched.push({
      ...(all && (await fetchedOtherwise(this.#server, this.#teacher, this.#ways!))),
      ...madeOfReport(code, report, parsed),
      dashboard: await text(page(this.#server, this.#teacher, 'dashboard')),
      'big screen': await text(page(this.#server, this.#teacher, 'big-screen')),
      report,
      csv: REPORT_TABLES.map((table) => reportTable(table, parsed, { date: DAY, style: 'comma' })).join('\n'),
      json: reportJson(parsed, DAY),
      class: await text(fetch(`${url}${classPath(code)}`, { headers })),
      'personal data': await text(fetch(`${url}${classPersonalDataPath(code)}`, { headers })),
    });
  }

  /** Once nothing that was told is being analyzed any more: how long that takes is chance. */
  async #report(): Promise<readonly [string, DrillReport]> {
    for (;;) {
      const text = await (await page(this.#server, this.#teacher, 'report')).text();
      const report = drillReportSchema.parse(JSON.parse(text));
      if (report.deals.every(({ pending }) => pending === 0)) return [text, report];
      await new Promise((resolve) => setTimeout(resolve, 5));
    }
  }

  async close(): Promise<void> {
    for (const peer of this.peers) peer.socket.terminate();
    await this.#own?.stop();
  }

  async #start(seed: string): Promise<void> {
    const store = memoryStore(this.#place);
    const costs = this.#plan.isAnalyzed && { analyzer: answering(analysisByDecision) };
    this.#own = await startServer({ seed, store, ...costs });
    this.#server = this.#own;
  }

  #present(): (readonly [number, Peer])[] {
    return [...this.peers.entries()].filter(([n]) => !this.#gone.has(n));
  }

  /** Everybody who is asked chooses once, one after the other; false once nobody is. */
  async #turn(round: number): Promise<boolean> {
    let chosen = 0;
    for (const n of this.peers.keys()) {
      const peer = this.peers[n]!;
      if (this.#gone.has(n) || !isAsked(peer)) continue;
      await this.#choose(n, round);
      chosen++;
      await this.#plan.between?.[++this.#choices]?.(this);
      await this.fetch(false);
    }
    return chosen > 0;
  }

  /** The same script chooses the same wherever it holds the same tiles. */
  async #choose(n: number, round: number): Promise<void> {
    const peer = this.peers[n]!;
    const script = this.#plan.scripts?.[n] ?? n;
    const view = ownView(peer);
    const place = view.record.steps.length;
    const aims = { step: stepNow(peer), sections: [['stairs'], ['garden']][script % OPINIONS]! };
    const { url } = this.#server;
    await post(`${url}${classPath(this.#teacher.code, 'aims')}`, aims, this.players[n]!.classSecret);
    const opinion = script < LONERS ? `opinion ${script % OPINIONS}` : `script ${script}`;
    const random = stream(`${this.#plan.seed} ${round} ${place}`, opinion);
    const answer = await peer.choose(choiceOf(peer, random, script));
    if (answer.kind === 'rejected') throw new Error(`${answer.code}: ${answer.message}`);
    if (this.#plan.form === 'tables') return;
    await peer.untilTable(
      () => isClosed(peer) || ownView(peer).record.steps.length > place,
      'the end of the step',
    );
    await peer.untilTable(() => isClosed(peer) || isAsked(peer) || isHeld(peer), 'what comes next');
  }

  /** In a guided deal the teacher continues from a choice of the teacher's own; elsewhere there is nothing to do. */
  async #advance(): Promise<void> {
    if (this.#plan.form === 'tables') await Promise.all(this.#present().map(([, peer]) => peer.roundTrip()));
    if (this.#plan.form !== 'guided') return;
    const { guidedDeal } = await dashboardOf(this.#server, this.#teacher);
    if (!guidedDeal?.step) return;
    const { step, rack, needed, stepIndex } = guidedDeal;
    const tiles = rack.filter((face) => face !== 'joker').slice(0, needed);
    const choice = teachersChoice(step, tiles);
    if (!(await this.teach({ kind: 'advance', stepIndex, choice })))
      throw new Error(`not advanced at ${step}`);
    await Promise.all(
      this.#present().map(([, peer]) =>
        peer.untilTable(
          () =>
            (ownView(peer).record.actualSteps?.length ?? 0) > stepIndex && (isClosed(peer) || !isHeld(peer)),
          'the class',
        ),
      ),
    );
  }
}

function isHeld(peer: Peer): boolean {
  return peer.table.controls?.held === true;
}

function stepNow(peer: Peer): Step {
  const { stage } = ownView(peer);
  if (stage.phase === 'passing') return stage.step;
  return stage.phase === 'voting' ? 'vote' : stage.phase === 'asking' ? 'courtesy-ask' : 'courtesy-pass';
}

/** Votes differ between opinions, so that the ways through a deal differ in length. */
function choiceOf(peer: Peer, random: Random, script: number): AnswerChoice {
  const choice = anyAnswer(ownView(peer), random);
  return choice.kind === 'vote' ? { ...choice, go: script % OPINIONS === 0 } : choice;
}

function teachersChoice(step: Step, tiles: readonly Face[]): AnswerChoice | null {
  if (step === 'vote') return { kind: 'vote', step, go: true };
  if (step === 'courtesy-ask') return { kind: 'ask', step, count: 1 };
  return tiles.length === 0 ? null : { kind: 'pass', step, tiles, blind: 0 };
}
