// Decisions about connections, secrets and the servers that watch a room's clock.

import { isAllowed } from '../aggregate/allowance.ts';
import { accept, type Decision, reject } from '../aggregate/decision.ts';
import type { CameOver, RoomCommand, SeatHolder } from './command.ts';
import type { RoomEvent } from './event.ts';
import { RETURNS } from './growth.ts';
import { isGood, retiredSecret } from './seat-secrets.ts';
import { heldAt, holderAt, newestConnection, type RoomState } from './state.ts';

/** One page may reach two servers, one of them slowly: its newer connection stays, whichever is heard of first. */
export function decideConnecting(
  state: RoomState,
  { holder, node, connection, from }: RoomCommand & { kind: 'connect' },
): Decision<RoomEvent> {
  const held = holderAt(state, holder);
  if (held === null) return reject('not-seated');
  const there = newestConnection(held)?.from;
  if (there && from && there.page === from.page && there.nth > from.nth) return accept([]);
  return accept([{ kind: 'connected', seat: holder.seat, node, connection, ...(from && { from }) }]);
}

/**
 * Whether the holder has connected anew since: what such a connection still brings was sent again over the newer one, and
 * may be so old that nobody remembers its id (rule ID6).
 */
export function isOvertaken(state: RoomState, holder: SeatHolder, { name, from, known }: CameOver): boolean {
  const held = holderAt(state, holder);
  const newest = held && newestConnection(held);
  if (!newest || newest.connection === name) return false;
  if (from && newest.from?.page === from.page) return newest.from.nth > from.nth;
  return known;
}

/** Only the newest connection's end counts. */
export function decideDisconnecting(
  state: RoomState,
  { seat, connection }: RoomCommand & { kind: 'disconnect' },
): Decision<RoomEvent> {
  const presence = heldAt(state, seat)?.presence;
  const present = presence?.kind === 'connected' && presence.connection === connection;
  return accept(present ? [{ kind: 'disconnected', seat, connection }] : []);
}

type SecretCommand = RoomCommand & { kind: 'issue-secret' | 'confirm-secret' | 'report-old-secret' };

/** A secret that was replaced does nothing to those that are good (rule RS4). */
export function decideSecret(state: RoomState, command: SecretCommand, at: number): Decision<RoomEvent> {
  const { holder, shown } = command;
  const held = holderAt(state, holder);
  if (held === null) return reject('not-seated');
  const { secrets } = held;
  const { seat } = holder;
  if (command.kind === 'report-old-secret') {
    // Once for each of them: whoever goes on bringing it must not fill the log.
    const isNew = retiredSecret(secrets, shown)?.shown === false;
    return accept(isNew ? [{ kind: 'old-secret-shown', seat, secretHash: shown }] : []);
  }
  if (!isGood(secrets, shown)) return reject('ask-again');
  if (command.kind === 'issue-secret') {
    if (!isAllowed(state.returns[seat], RETURNS, at)) return reject('too-often');
    const { secretHash } = command;
    return accept([{ kind: 'secret-issued', seat, secretHash, shown }]);
  }
  return accept(secrets.current === shown ? [] : [{ kind: 'secret-confirmed', seat, secretHash: shown }]);
}

export function decideTimer(
  { timerOwners }: RoomState,
  { node, gone }: RoomCommand & { kind: 'claim-timer' },
): Decision<RoomEvent> {
  if (timerOwners.includes(node)) return accept([]);
  const others = timerOwners.filter((other) => !gone.includes(other));
  return accept([{ kind: 'timer-claimed', node, others }]);
}
