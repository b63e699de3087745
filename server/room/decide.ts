// (room, command) → the events it causes, or one rejection; nothing else decides what may happen in a room.
import {
  type Actor,
  type Choice,
  decide,
  nextDealer,
  openRound,
  type RoundEvent,
  roundIdOf,
  SEATS,
  type Seat,
  stream,
} from '../../shared-engine/index.ts';
import { isAllowed } from '../aggregate/allowance.ts';
import { accept, type Decision, reject } from '../aggregate/decision.ts';
import { decideExternalBot, decideInvitation } from './bot-invitations.ts';
import { botName, FILL_IN_STYLE } from './bot-name.ts';
import { decideForClass, decidePreparedDeal } from './class-commands.ts';
import type { Opening, RoomCommand } from './command.ts';
import {
  decideConnecting,
  decideDisconnecting,
  decideSecret,
  decideTimer,
  isOvertaken,
} from './connection-commands.ts';
import type { RoomEvent } from './event.ts';
import { isUsedUp, MAX_WITHDRAWALS, SITTINGS } from './growth.ts';
import { distinctName } from './name.ts';
import type { TablePolicy } from './policy.ts';
import { heldAt, isHeldBy, isRoundRunning, nameAt, namesAt, type RoomState, seatOf } from './state.ts';
import { decideAction } from './table-action.ts';
import { isHeld } from './teacher-controls.ts';

/** The first events of a room: its host sits on seat 0, the bots where they were asked for. */
export function openingEvents({ host, ...opening }: Opening): RoomEvent[] {
  const opened: RoomEvent = { kind: 'opened', ...opening };
  if (host === null) return [opened];
  const { name, secretHash, bots } = host;
  const seated = SEATS.slice(1).flatMap((seat): RoomEvent[] => {
    const style = bots[seat - 1];
    return style ? [{ kind: 'bot-seated', seat, name: botName(seat, [name]), style }] : [];
  });
  return [opened, { kind: 'seat-taken', seat: 0, name, secretHash }, ...seated];
}

/** `at` is the time of the events, in milliseconds since 1970. */
export function decideRoom(
  state: RoomState,
  command: RoomCommand,
  policy: TablePolicy,
  at: number,
): Decision<RoomEvent> {
  if (state.closed) return reject('no-such-room');
  if (isUsedUp(state, command)) return reject('used-up');
  if (cameTooLate(state, command)) return reject('newer-connection');
  return decideOpen(state, fromCurrentSeat(state, command), policy, at);
}

function cameTooLate(state: RoomState, command: RoomCommand): boolean {
  if (command.kind !== 'choose' && command.kind !== 'action') return false;
  return command.over !== undefined && isOvertaken(state, command.holder, command.over);
}

/** Whoever has changed places speaks from the new one, over a connection that was opened at the old one too. */
function fromCurrentSeat(state: RoomState, command: RoomCommand): RoomCommand {
  if (!('holder' in command)) return command;
  const seat = seatOf(state, command.holder);
  return seat === null ? command : { ...command, holder: { ...command.holder, seat } };
}

function decideOpen(
  state: RoomState,
  command: RoomCommand,
  policy: TablePolicy,
  at: number,
): Decision<RoomEvent> {
  switch (command.kind) {
    case 'take-seat':
      return policy.isOpen ? decideSeat(state, command, at) : reject('no-such-room');
    case 'invite-bot':
      return policy.hasHost ? decideInvitation(state, command, at) : reject('teacher-controlled');
    case 'seat-external-bot':
      return decideExternalBot(state, command, at);
    case 'choose':
      return decideChoice(state, command);
    case 'choose-for': {
      const { seat, by, round, choice } = command;
      return inRound(state, round, { seat, by, choice });
    }
    case 'connect':
      return decideConnecting(state, command);
    case 'disconnect':
      return decideDisconnecting(state, command);
    case 'issue-secret':
    case 'confirm-secret':
    case 'report-old-secret':
      return decideSecret(state, command, at);
    case 'claim-timer':
      return decideTimer(state, command);
    case 'action':
      return isHeldBy(state, command.holder)
        ? decideAction(state, command, policy, at)
        : reject('not-seated');
    case 'deal':
      return decideDeal(state, command);
    case 'deal-prepared':
      return decidePreparedDeal(state, command);
    case 'set-controls':
    case 'more-time':
    case 'seat-player':
    case 'vacate-seat':
    case 'rename-seat':
    case 'advance':
      return decideForClass(state, command);
    case 'close':
      return accept([{ kind: 'closed' }]);
  }
}

/** A person may sit where no person sits; bots make room, but not while they hold tiles. */
function decideSeat(
  state: RoomState,
  { seat: wanted, name, secretHash }: RoomCommand & { kind: 'take-seat' },
  at: number,
): Decision<RoomEvent> {
  // Whoever does not mind where leaves the seats that bots are invited to for the last, but for tired ones.
  const isTired = (one: Seat) => !isAllowed(state.sittings[one], SITTINGS, at);
  const rank = (one: Seat) =>
    4 * Number(isTired(one)) + 2 * Number(isInvitedTo(state, one)) + Number(state.seats[one].kind === 'bot');
  const free = SEATS.filter((one) => heldAt(state, one) === null).sort((a, b) => rank(a) - rank(b));
  const seat = wanted ?? free[0];
  if (seat === undefined || heldAt(state, seat) !== null) return reject('seat-taken');
  if (isRoundRunning(state)) return reject('round-running');
  if (isTired(seat)) return reject('too-often');
  // A bot that makes room takes its name with it.
  const others = SEATS.filter((one) => one !== seat).flatMap((one) => nameAt(state, one) ?? []);
  return accept([{ kind: 'seat-taken', seat, name: distinctName(name, others), secretHash }]);
}

function decideChoice(state: RoomState, command: RoomCommand & { kind: 'choose' }): Decision<RoomEvent> {
  const { holder, round, seat, choice } = command;
  if (!isHeldBy(state, holder)) return reject('not-seated');
  if (seat !== holder.seat) return reject('not-your-seat');
  if (state.play !== null && isHeld(state.play.round, state.controls)) return reject('held');
  if (choice.kind === 'withdraw' && (state.play?.withdrawals[seat] ?? 0) >= MAX_WITHDRAWALS) {
    return reject('too-many-withdrawals');
  }
  const by = state.seats[seat].kind === 'external-bot' ? 'bot' : 'player';
  return inRound(state, round, { seat, by, choice });
}

function inRound(
  state: RoomState,
  number: number,
  { seat, by, choice }: { seat: Seat; by: Actor; choice: Choice },
): Decision<RoomEvent> {
  if (state.play === null) return reject('no-round');
  if (state.play.number !== number) return reject('wrong-round');
  const decision = decide(state.play.round, { ...choice, seat, by });
  if (!decision.ok) return decision;
  // A guided deal closes for the whole class at once (rule L1).
  const events = state.controls.guided
    ? decision.events.filter(({ kind }) => kind !== 'closed')
    : decision.events;
  return accept(events.map(inRoom));
}

/** Bots fill the empty seats, then the tiles are dealt; the deal moves to the right each round (rules D3, W1). */
function decideDeal(state: RoomState, { code, seed }: RoomCommand & { kind: 'deal' }): Decision<RoomEvent> {
  if (isRoundRunning(state)) return reject('round-running');
  const names = namesAt(state);
  const filled = SEATS.filter((seat) => state.seats[seat].kind === 'empty').map((seat): RoomEvent => {
    const name = botName(seat, names);
    return { kind: 'bot-seated', seat, name, style: FILL_IN_STYLE };
  });
  const last = state.play?.round.deal.dealer ?? null;
  const { whoIsEast } = state.terms;
  const dealer = nextDealer({ whoIsEast, player: state.host ?? 0, last }, stream(seed, 'first dealer'));
  const roundId = roundIdOf(code, (state.play?.number ?? 0) + 1);
  return accept([...filled, inRoom(openRound({ seed, dealer }, state.terms, roundId))]);
}

function isInvitedTo({ invitations }: RoomState, seat: Seat): boolean {
  return invitations[seat] !== null;
}

function inRoom(event: RoundEvent): RoomEvent {
  return { kind: 'round', event };
}
