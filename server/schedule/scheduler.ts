// Does in a room what no person does: deals, bots' choices, stand-ins at deadlines; one timer a room.
import { scriptedChoice, seatView, stepOf } from '../../shared-engine/index.ts';
import { ACCEPTED, type Answer, reject } from '../aggregate/decision.ts';
import type { Timing } from '../config.ts';
import { errorFacts, type Log } from '../log.ts';
import type { Cancel, Clock, Entropy, Nodes, PlayingCard } from '../ports.ts';
import type { TablePolicy } from '../room/policy.ts';
import type { Room } from '../room/room.ts';
import type { Play } from '../room/state.ts';
import { newSeed } from '../secrets.ts';
import type { Bots } from '../work-ports.ts';
import { type Action, nextAction } from './due-actions.ts';

/** Pause after an action that could not be done, so that a store that is away is not asked over and over. */
const RETRY_MS = 1000;

export interface SchedulerPorts {
  readonly bots: Bots;
  readonly clock: Clock;
  readonly entropy: Entropy;
  readonly nodes: Nodes;
  readonly timing: Timing;
  readonly log: Log;
}

export interface ScheduledRoom {
  readonly room: Pick<Room, 'code' | 'state' | 'submit'>;
  readonly policy: TablePolicy;
  readonly card: PlayingCard;
  /** When the open step was opened, by the clock of this server. */
  stepSince(): number;
}

export class Scheduler {
  readonly #scheduled: ScheduledRoom;
  readonly #ports: SchedulerPorts;
  #cancel: Cancel = () => {};
  #busy = false;
  #stopped = false;

  constructor(scheduled: ScheduledRoom, ports: SchedulerPorts) {
    this.#scheduled = scheduled;
    this.#ports = ports;
  }

  /** Looks anew at what is due; to be called whenever something changed. */
  wake(): void {
    this.#cancel();
    if (this.#busy || this.#stopped) return;
    const { clock, timing, nodes } = this.#ports;
    const { room, policy } = this.#scheduled;
    const stepSince = this.#scheduled.stepSince();
    const next = nextAction(room.state, { node: nodes.id, policy, timing, stepSince });
    if (next === null) return;
    const wait = next.at - clock.now();
    if (wait > 0) this.#cancel = clock.after(wait, () => this.wake());
    else void this.#run(next.action);
  }

  stop(): void {
    this.#stopped = true;
    this.#cancel();
  }

  async #run(action: Action): Promise<void> {
    this.#busy = true;
    const { room } = this.#scheduled;
    const before = room.state.seq;
    const answer = await this.#perform(action).catch((error: unknown) => {
      this.#ports.log.error({ action: action.kind, ...errorFacts(error) }, 'a scheduled action failed');
      return reject('try-later');
    });
    this.#busy = false;
    // Something has changed: the action is done, or somebody was quicker.
    if (room.state.seq !== before) return this.wake();
    const { clock, log } = this.#ports;
    // Without a change it would come again at once, also where another server stored it and this one has yet to load it.
    if (!answer.ok) log.warn({ action: action.kind, code: answer.code }, 'a scheduled action was rejected');
    if (!this.#stopped) this.#cancel = clock.after(RETRY_MS, () => this.wake());
  }

  async #perform(action: Action): Promise<Answer> {
    const { room } = this.#scheduled;
    const { state } = room;
    const { entropy, nodes } = this.#ports;
    switch (action.kind) {
      case 'deal': {
        const id = `server/deal ${(state.play?.number ?? 0) + 1} after ${state.seq}`;
        return room.submit({ kind: 'deal', code: room.code, seed: newSeed(entropy) }, id);
      }
      case 'claim-timer': {
        const gone = await nodes.gone(state.timerOwners);
        return room.submit({ kind: 'claim-timer', node: nodes.id, gone });
      }
      case 'choose':
        return state.play === null ? ACCEPTED : this.#choose(action, state.play);
    }
  }

  async #choose({ seat, by, style }: Action & { kind: 'choose' }, play: Play): Promise<Answer> {
    const { room, card } = this.#scheduled;
    const view = seatView(play.round, seat);
    const { seed } = play.round.deal;
    const fairnessKey = room.state.classCode ?? room.code;
    const own = await this.#ports.bots.choose({ style, view, card, seed, fairnessKey });
    const { script } = play.dealt;
    const choice = script ? scriptedChoice(script, view, own) : own;
    // Named after the question, so that several servers that answer it at once answer it once.
    const id = `server/${play.number} ${stepOf(view.stage)}:${seat} ${play.withdrawals[seat]}`;
    return room.submit({ kind: 'choose-for', seat, by, round: play.number, choice }, id);
  }
}
