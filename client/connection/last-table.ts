// The last table that came, so that after a cut the server has to tell only what is new.
import type { Resume, ServerMessage, Table, TableNews } from '../../shared-engine/index.ts';

export interface LastTable {
  /** What a `hello` says of it. */
  resume(): { readonly resume?: Resume };
  /** The message as if the whole table had come; null for news of a table that is not here. */
  whole(message: ServerMessage): ServerMessage | null;
}

export function keepLastTable(): LastTable {
  let last: { readonly seq: number; readonly table: Table } | null = null;
  return {
    resume: () => (last === null ? {} : { resume: { seq: last.seq, you: last.table.you } }),
    whole(message) {
      if (message.kind === 'table') last = { seq: message.seq, table: message.table };
      if (message.kind !== 'news') return message;
      if (last?.seq !== message.after) return null;
      const table = brought(last.table, message.table);
      last = { seq: message.seq, table };
      return { kind: 'table', seq: message.seq, table };
    },
  };
}

function brought(table: Table, news: TableNews): Table {
  const { you = table.you, seats = table.seats, round = table.round } = news;
  const { remaining = table.remaining, view = table.view } = news;
  return { ...table, you, seats, round, remaining, view };
}
