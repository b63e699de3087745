// The teacher's keys of a published drill or a club's page: made and taken back, as for a class (rules TK1 to TK3).
import { CLASS_LIMITS } from '../../shared-engine/index.ts';
import { accept, type Decision, reject } from '../aggregate/decision.ts';
import type { TeacherKey } from '../class/state.ts';

export type KeyCommand =
  | { readonly kind: 'make-key'; readonly secretHash: string }
  | { readonly kind: 'revoke-key'; readonly key: number };

export type KeyEvent =
  | { readonly kind: 'key-made'; readonly secretHash: string }
  | { readonly kind: 'key-revoked'; readonly key: number };

/** Keys are counted for good, because each stays in the log. */
export function decideKey(keys: readonly TeacherKey[], command: KeyCommand): Decision<KeyEvent> {
  if (command.kind === 'make-key') {
    const { keys: atOnce, allKeys } = CLASS_LIMITS;
    const isFull = keys.filter(({ isRevoked }) => !isRevoked).length >= atOnce || keys.length >= allKeys;
    return isFull ? reject('too-many-keys') : accept([{ kind: 'key-made', secretHash: command.secretHash }]);
  }
  const key = keys[command.key];
  if (key === undefined) return reject('wrong-key');
  return accept(key.isRevoked ? [] : [{ kind: 'key-revoked', key: key.id }]);
}

export function keysAfter(keys: readonly TeacherKey[], event: KeyEvent, at: number): readonly TeacherKey[] {
  if (event.kind === 'key-made') {
    return [...keys, { id: keys.length, secretHash: event.secretHash, at, isRevoked: false }];
  }
  return keys.map((one) => (one.id === event.key ? { ...one, isRevoked: true } : one));
}
