// Says of a bot that it is one, wherever its name stands.
import type { SeatInfo } from '../../shared-engine/index.ts';
import { ROOM } from './strings.ts';

export function BotTag({ info }: { readonly info: SeatInfo }) {
  return info.kind === 'bot' ? <span class="bot-tag">{ROOM.bot}</span> : null;
}
