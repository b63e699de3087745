// Commands that the server has not answered yet: kept in order, over a reload too, and sent again with the same id.
import type { ClientMessage } from '../../shared-engine/index.ts';
import { clientMessageSchema } from '../../shared-engine/index.ts';

import type { TextStorage } from '../storage/browser-storage.ts';

export type ClientRequest = Exclude<ClientMessage, { kind: 'hello' }>;

export interface PendingRequests {
  all(): readonly ClientRequest[];
  add(order: ClientRequest): void;
  /** True when this id was waiting. */
  complete(id: string): boolean;
}

export function openPendingRequests(memory: TextStorage, key: string): PendingRequests {
  let orders: readonly ClientRequest[] = recall(memory.read(key));
  const save = (next: readonly ClientRequest[]) => {
    orders = next;
    if (next.length === 0) memory.remove(key);
    else memory.write(key, JSON.stringify(next));
  };
  return {
    all: () => orders,
    add: (order) => save([...orders, order]),
    complete(id) {
      const left = orders.filter((order) => order.id !== id);
      const found = left.length < orders.length;
      if (found) save(left);
      return found;
    },
  };
}

function recall(text: string | null): readonly ClientRequest[] {
  if (text === null) return [];
  try {
    const json: unknown = JSON.parse(text);
    if (!Array.isArray(json)) return [];
    return json.flatMap((item) => {
      const parsed = clientMessageSchema.safeParse(item);
      return parsed.success && parsed.data.kind !== 'hello' ? [parsed.data] : [];
    });
  } catch {
    return [];
  }
}
