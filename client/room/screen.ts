// Which screen of a room is due, from the table alone, and how another part of the page shows a room.
import type { ComponentChildren, FunctionComponent } from 'preact';
import type { AnswerChoice, PublishedDrill, Table } from '../../shared-engine/index.ts';
import type { App } from '../app/routes/app.ts';
import type { ConnectionState } from '../connection/connection.ts';
import { type Room, type Seated, seatedAt } from './room.ts';

export type Screen =
  | { readonly kind: 'opening' }
  | { readonly kind: 'gone' }
  | { readonly kind: 'lobby'; readonly table: Table }
  | { readonly kind: 'playing'; readonly seated: Seated }
  | { readonly kind: 'closed'; readonly seated: Seated }
  | { readonly kind: 'spectating'; readonly table: Table };

export function screenOf(table: Table | null, link: ConnectionState): Screen {
  if (table === null) {
    return link.kind === 'ended' && link.reason === 'no-room' ? { kind: 'gone' } : { kind: 'opening' };
  }
  if (table.view === null) return { kind: 'lobby', table };
  const seated = seatedAt(table);
  if (seated === null) return { kind: 'spectating', table };
  return { kind: seated.view.stage.phase === 'closed' ? 'closed' : 'playing', seated };
}

export interface RoomScreenProps {
  readonly app: App;
  /** Called once; another room is another screen. */
  readonly open: () => Room;
  /** Shown above the screen that is due: a guide's sentences or a teacher's. */
  readonly guide?: (screen: Screen) => ComponentChildren;
}

/** What tables need of a drill: of one that is published, or of a class whose deals were taken home. */
interface PlayedDrill extends Pick<PublishedDrill, 'code' | 'title' | 'tableTerms' | 'bots' | 'card'> {
  readonly terms: Pick<PublishedDrill['terms'], 'cardClosed'>;
  readonly deals: readonly Pick<PublishedDrill['deals'][number], 'deal' | 'script'>[];
}

/** What a table of a published drill is made of, and what is done with the player's answers. */
export interface PublishedTable {
  readonly drill: PlayedDrill;
  /** Place of the deal in the drill. */
  readonly place: number;
  /** By which the page keeps the order of its rack, aims and the like. */
  readonly key: string;
  /** Where its rounds stand among those of this device. */
  readonly keptAs: 'class' | 'page';
  readonly name: string;
  /** Given again when the page is opened anew. */
  readonly answers: readonly AnswerChoice[];
  readonly store: (answers: readonly AnswerChoice[]) => void;
  readonly onClosed: () => void;
  readonly onNext: () => void;
}

/** The page's way to a table of its own for a deal of a published drill. */
export interface PublishedTables {
  readonly RoomScreen: FunctionComponent<RoomScreenProps>;
  readonly publishedRoom: (table: PublishedTable) => Room;
}

/** The page's way to a table on the server, for a part of the page that has none of its own. */
export interface ServerTables {
  readonly RoomScreen: FunctionComponent<RoomScreenProps>;
  readonly serverRoom: (code: string) => Room;
}
