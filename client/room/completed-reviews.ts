// The reviews of a table at the server, completed by what this page analyzes itself while its player thinks.
import type { CompiledCard, ServerMessage, Table } from '../../shared-engine/index.ts';
import type { OwnAnalyses, StartOwnAnalyses } from '../workers/own-analyses.ts';
import { seatedAt } from './room.ts';

export interface CompletedReviewsPorts {
  /** The card of the table; null where it cannot be had just now. */
  readonly loadCard: () => Promise<CompiledCard | null>;
  /** Loaded when a round is played. */
  readonly loadStart: () => Promise<StartOwnAnalyses>;
  readonly onMessage: (message: ServerMessage) => void;
  /** Called once for each round that this page analyzes, and where it cannot after all (rule WK9). */
  readonly onAnalyzedBy: (round: number, by: 'page' | 'server') => void;
}

export interface CompletedReviews {
  /** Everything that the server says; it goes on to `onMessage`. */
  receive(message: ServerMessage): void;
  stop(): void;
}

/** The server analyzes the same; where this page cannot, its review comes as the server has it. */
export function completedReviews(ports: CompletedReviewsPorts): CompletedReviews {
  let opening: Promise<void> | null = null;
  let own: OwnAnalyses | null = null;
  let table: Table | null = null;
  let last: Extract<ServerMessage, { kind: 'review' }> | null = null;
  /** The last round that was said to be analyzed here. */
  let claimed = 0;

  async function open(): Promise<void> {
    const [card, start] = await Promise.all([ports.loadCard(), ports.loadStart()]);
    if (card !== null && table !== null) own ??= start({ card, onAnalysis: tell, onFailure: giveUp });
  }

  async function follow(): Promise<void> {
    // A round that is over when the page comes back was analyzed by the server.
    if (own === null && seatedAt(table)?.view.stage.phase === 'closed') return;
    opening ??= open();
    await opening;
    // The table may have changed meanwhile.
    const seated = seatedAt(table);
    if (seated === null || own === null) return;
    own.follow(seated.view);
    if (claimed === seated.table.round) return;
    claimed = seated.table.round;
    ports.onAnalyzedBy(claimed, 'page');
  }

  /** For good: the server has it all. */
  function giveUp(): void {
    if (own === null) return;
    own.stop();
    own = null;
    if (claimed > 0) ports.onAnalyzedBy(claimed, 'server');
    tell();
  }

  function tell(): void {
    if (last === null) return;
    const review = own?.into(last.review) ?? last.review;
    const isMissing = review.choices.some(({ analysis }) => analysis.depth === 'quick');
    ports.onMessage({ ...last, review, more: isMissing && (own !== null || last.more !== false) });
  }

  return {
    receive(message) {
      if (message.kind === 'table') {
        if (message.table.round !== table?.round) last = null;
        table = message.table;
        if (seatedAt(table) !== null) follow().catch((error: unknown) => console.warn(error));
      }
      if (message.kind !== 'review' || message.round !== table?.round) return ports.onMessage(message);
      last = message;
      tell();
    },
    stop() {
      own?.stop();
      own = null;
      opening = null;
      table = null;
      claimed = 0;
    },
  };
}
