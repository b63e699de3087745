// Does in a room what nobody does by hand: deals, moves of bots, stand-ins at deadlines; one timer a room.
import { seatView } from '../../shared-engine/index.ts';
import type { Pace } from '../config.ts';
import { errorFacts, type Log } from '../log.ts';
import type { Bots, Clock, Entropy, PlayingCard, Undo } from '../ports.ts';
import { newSeed } from '../secrets.ts';
import { type Duty, nextDue } from './agenda.ts';
import type { Answer } from './answers.ts';
import { turnDown } from './decision.ts';
import type { Room } from './room.ts';
import type { Table } from './table.ts';

/** Pause after a duty that could not be done, so that a store that is away is not asked in a circle. */
const RETRY_MS = 1000;

export interface KeeperPorts {
  readonly bots: Bots;
  readonly clock: Clock;
  readonly entropy: Entropy;
  readonly pace: Pace;
  readonly log: Log;
}

export class Keeper {
  readonly #room: Room;
  readonly #table: Table;
  readonly #card: PlayingCard;
  readonly #ports: KeeperPorts;
  #callOff: Undo = () => {};
  #busy = false;
  #stopped = false;

  constructor(room: Room, table: Table, card: PlayingCard, ports: KeeperPorts) {
    this.#room = room;
    this.#table = table;
    this.#card = card;
    this.#ports = ports;
    room.onChange(() => this.wake());
    table.onPresence(() => this.wake());
  }

  /** Looks at the agenda anew; to be called whenever something changed. */
  wake(): void {
    this.#callOff();
    if (this.#busy || this.#stopped) return;
    const { clock, pace } = this.#ports;
    const due = nextDue(this.#room.state, this.#table.watch, pace);
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
    if (duty.kind === 'deal') {
      return this.#room.submit({ kind: 'deal', seed: newSeed(this.#ports.entropy) });
    }
    const { play } = this.#room.state;
    if (play === null) return { ok: true };
    const { seat, by, style } = duty;
    const choice = await this.#ports.bots.choose({
      style,
      view: seatView(play.round, seat),
      card: this.#card,
      seed: play.round.deal.seed,
    });
    return this.#room.submit({ kind: 'choose-for', seat, by, round: play.number, choice });
  }
}
