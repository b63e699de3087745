// The card that somebody opens a table or a class with: the house card, or a file of their own once it is checked.
import { parseCard } from '../../shared-engine/index.ts';
import type { CardChoice } from '../ports.ts';

type CardFromRequest =
  | { readonly ok: true; readonly choice: CardChoice }
  | { readonly ok: false; readonly problems: readonly string[] };

/** `file` is whatever was sent. */
export function cardFromRequest(file: unknown): CardFromRequest {
  if (file === null || file === undefined) return { ok: true, choice: { kind: 'house' } };
  const parsed = parseCard(file);
  return parsed.ok
    ? { ok: true, choice: { kind: 'file', file: parsed.card } }
    : { ok: false, problems: parsed.problems.map(({ message }) => message) };
}
