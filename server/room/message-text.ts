// A message as text, written once however many people hear it.
import type { ServerMessage } from '../../shared-engine/index.ts';

const written = new WeakMap<ServerMessage, string>();

export function textOf(message: ServerMessage): string {
  const known = written.get(message);
  if (known !== undefined) return known;
  const text = JSON.stringify(message);
  written.set(message, text);
  return text;
}
