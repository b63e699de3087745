// Which screen of a room is due, from the table alone.

import type { Table } from '../../shared-engine/index.ts';
import type { LinkState } from '../connection/connection.ts';
import { type Seated, seatedAt } from './room.ts';

export type Screen =
  | { readonly kind: 'opening' }
  | { readonly kind: 'gone' }
  | { readonly kind: 'lobby'; readonly table: Table }
  | { readonly kind: 'playing'; readonly seated: Seated }
  | { readonly kind: 'closed'; readonly seated: Seated }
  | { readonly kind: 'watching'; readonly table: Table };

export function screenOf(table: Table | null, link: LinkState): Screen {
  if (table === null) {
    return link.kind === 'ended' && link.why === 'no-room' ? { kind: 'gone' } : { kind: 'opening' };
  }
  if (table.view === null) return { kind: 'lobby', table };
  const seated = seatedAt(table);
  if (seated === null) return { kind: 'watching', table };
  return { kind: seated.view.stage.phase === 'closed' ? 'closed' : 'playing', seated };
}
