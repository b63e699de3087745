// Does in a room what nobody does by hand: deals, moves of bots, stand-ins at deadlines; one timer a room.
import { openStep, seatView } from '../../shared-engine/index.ts';
import type { Pace } from '../config.ts';
import { errorFacts, type Log } from '../log.ts';
import type { Bots, Clock, Entropy, Nodes, PlayingCard, Undo } from '../ports.ts';
import { newSeed } from '../secrets.ts';
import { type Duty, nextDue } from './agenda.ts';
import type { Answer } from './answers.ts';
import { turnDown } from './decision.ts';
import type { Room } from './room.ts';
import type { Play } from './state.ts';

/** Pause after a duty that could not be done, so that a store that is away is not asked in a circle. */
const RETRY_MS = 1000;

export interface KeeperPorts {
  readonly bots: Bots;
  readonly clock: Clock;
  readonly entropy: Entropy;
  readonly nodes: Nodes;
  readonly pace: Pace;
  readonly log: Log;
}

export class Keeper {
  readonly #room: Room;
  readonly #card: PlayingCard;
  readonly #ports: KeeperPorts;
  #callOff: Undo = () => {};
  #busy = false;
  #stopped = false;

  constructor(room: Room, card: PlayingCard, ports: KeeperPorts) {
    this.#room = room;
    this.#card = card;
    this.#ports = ports;
    room.onChange(() => this.wake());
  }

  /** Looks at the agenda anew; to be called whenever something changed. */
  wake(): void {
    this.#callOff();
    if (this.#busy || this.#stopped) return;
    const { clock, pace, nodes } = this.#ports;
    const due = nextDue(this.#room.state, { node: nodes.id, stepSince: this.#room.stepSince }, pace);
    if (due === null) return;
    const wait = due.at - clock.now();
    if (wait > 0) this.#callOff = clock.after(wait, () => this.wake());
    else void this.#run(due.duty);
  }

  stop(): void {
    this.#stopped = true;
    this.#callOff();
  }

  async #run(duty: Duty): Promise<void> {
    this.#busy = true;
    const before = this.#room.state.seq;
    const answer = await this.#perform(duty).catch((error: unknown) => {
      this.#ports.log.error({ duty: duty.kind, ...errorFacts(error) }, 'a duty of the house failed');
      return turnDown('try-later');
    });
    this.#busy = false;
    // A refusal after a change means that somebody was quicker; without one it would come again at once.
    if (answer.ok || this.#room.state.seq !== before) return this.wake();
    const { clock, log } = this.#ports;
    log.warn({ duty: duty.kind, code: answer.code }, 'a duty of the house was refused');
    if (!this.#stopped) this.#callOff = clock.after(RETRY_MS, () => this.wake());
  }

  async #perform(duty: Duty): Promise<Answer> {
    const { state } = this.#room;
    const { entropy, nodes } = this.#ports;
    switch (duty.kind) {
      case 'deal': {
        const id = `house/deal ${(state.play?.number ?? 0) + 1} after ${state.seq}`;
        return this.#room.submit({ kind: 'deal', seed: newSeed(entropy) }, id);
      }
      case 'take-in-hand': {
        const gone = await nodes.gone(state.inHandOf);
        return this.#room.submit({ kind: 'take-in-hand', node: nodes.id, gone });
      }
      case 'choose':
        return state.play === null ? { ok: true } : this.#choose(duty, state.play);
    }
  }

  async #choose({ seat, by, style }: Duty & { kind: 'choose' }, play: Play): Promise<Answer> {
    const view = seatView(play.round, seat);
    const { seed } = play.round.deal;
    const choice = await this.#ports.bots.choose({ style, view, card: this.#card, seed });
    // Named after the question, so that several servers that answer it at once answer it once.
    const id = `house/${play.number} ${openStep(view.stage)}:${seat} ${play.takenBack[seat]}`;
    return this.#room.submit({ kind: 'choose-for', seat, by, round: play.number, choice }, id);
  }
}
