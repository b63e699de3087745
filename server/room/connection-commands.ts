// Decisions about connections, secrets and the servers that watch a room's clock.
import { accept, type Decision, reject } from '../aggregate/decision.ts';
import type { RoomCommand } from './command.ts';
import type { RoomEvent } from './event.ts';
import { personAt, type RoomState } from './state.ts';

/** One page may reach two servers, one of them slowly: its newer connection stays, whichever is heard of first. */
export function decideConnecting(
  state: RoomState,
  { holder, node, connection, from }: RoomCommand & { kind: 'connect' },
): Decision<RoomEvent> {
  const person = personAt(state, holder.seat, holder.since);
  if (person === null) return reject('not-seated');
  const there = person.presence.kind === 'connected' ? person.presence.from : undefined;
  if (there && from && there.page === from.page && there.nth > from.nth) return accept([]);
  return accept([{ kind: 'connected', seat: holder.seat, node, connection, ...(from && { from }) }]);
}

/** Only the newest connection's end counts. */
export function decideDisconnecting(
  state: RoomState,
  { seat, connection }: RoomCommand & { kind: 'disconnect' },
): Decision<RoomEvent> {
  const held = state.seats[seat];
  const present =
    held.kind === 'person' && held.presence.kind === 'connected' && held.presence.connection === connection;
  return accept(present ? [{ kind: 'disconnected', seat, connection }] : []);
}

/** A secret that was changed, and the new one used, is worth nothing any more, whoever brings it. */
export function decideSecret(
  state: RoomState,
  { holder, shown, secretHash }: RoomCommand & { kind: 'change-secret' },
): Decision<RoomEvent> {
  const person = personAt(state, holder.seat, holder.since);
  const good = person?.secretHashes.includes(shown) === true;
  return good
    ? accept([{ kind: 'secret-changed', seat: holder.seat, secretHash, before: shown }])
    : reject('not-seated');
}

export function decideTimer(
  { timerOwners }: RoomState,
  { node, gone }: RoomCommand & { kind: 'claim-timer' },
): Decision<RoomEvent> {
  if (timerOwners.includes(node)) return accept([]);
  const others = timerOwners.filter((other) => !gone.includes(other));
  return accept([{ kind: 'timer-claimed', node, others }]);
}
