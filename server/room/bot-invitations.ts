// Decisions about bots that run elsewhere: the host invites one to a seat, and it sits down with what the link holds.
import { SEATS } from '../../shared-engine/index.ts';
import { isAllowed } from '../aggregate/allowance.ts';
import { accept, type Decision, reject } from '../aggregate/decision.ts';
import { isSameHash } from '../secrets.ts';
import type { RoomCommand } from './command.ts';
import type { RoomEvent } from './event.ts';
import { CHANGES, SITTINGS } from './growth.ts';
import { distinctName } from './name.ts';
import { heldAt, isHeldBy, isRoundRunning, nameAt, type RoomState } from './state.ts';

/** A newer invitation to a seat takes the place of the one before, whose link is worth nothing then (rule BT2). */
export function decideInvitation(
  state: RoomState,
  { holder, seat, secretHash }: RoomCommand & { kind: 'invite-bot' },
  at: number,
): Decision<RoomEvent> {
  if (!isHeldBy(state, holder)) return reject('not-seated');
  if (state.host !== holder.seat) return reject('not-the-host');
  if (heldAt(state, seat) !== null) return reject('seat-taken');
  if (!isAllowed(state.changes, CHANGES, at)) return reject('too-often');
  return accept([{ kind: 'bot-invited', seat, secretHash }]);
}

/** A bot of the server makes room, but not while it holds tiles. */
export function decideExternalBot(
  state: RoomState,
  { name, shown, secretHash }: RoomCommand & { kind: 'seat-external-bot' },
  at: number,
): Decision<RoomEvent> {
  const seat = SEATS.find((one) => {
    const invited = state.invitations[one];
    return invited !== null && isSameHash(invited, shown);
  });
  if (seat === undefined) return reject('invitation-over');
  if (isRoundRunning(state)) return reject('round-running');
  if (!isAllowed(state.sittings[seat], SITTINGS, at)) return reject('too-often');
  const others = SEATS.filter((one) => one !== seat).flatMap((one) => nameAt(state, one) ?? []);
  return accept([{ kind: 'external-bot-seated', seat, name: distinctName(name, others), secretHash }]);
}
