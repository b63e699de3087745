// The last table that came, so that the server has to send only what has changed.
import { applyDelta, type Resume, type ServerMessage, type Table } from '../../shared-engine/index.ts';

export interface LastTable {
  /** The part of a `hello` about it. */
  resume(): { readonly resume?: Resume };
  /** The message as if the whole table had come; null for a delta that does not fit the table that is here. */
  expand(message: ServerMessage): ServerMessage | null;
}

export function trackLastTable(): LastTable {
  let last: { readonly seq: number; readonly table: Table } | null = null;
  return {
    resume: () => (last === null ? {} : { resume: { seq: last.seq, you: last.table.you } }),
    expand(message) {
      if (message.kind === 'table') last = { seq: message.seq, table: message.table };
      if (message.kind !== 'delta') return message;
      if (last?.seq !== message.after) return null;
      const table = applyDelta(last.table, message.table);
      if (table === null) return null;
      last = { seq: message.seq, table };
      return { kind: 'table', seq: message.seq, table };
    },
  };
}
