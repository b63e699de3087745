// Commands that the server has not answered yet: kept in order, over a reload too, and sent again with the same id.
import type { ClientMessage } from '../../shared-engine/index.ts';
import { clientMessageSchema } from '../../shared-engine/index.ts';

import type { Memory } from '../storage/browser-storage.ts';

export type Order = Exclude<ClientMessage, { kind: 'hello' }>;

export interface Pending {
  all(): readonly Order[];
  add(order: Order): void;
  /** True when this id was waiting. */
  settle(id: string): boolean;
}

export function keepPending(memory: Memory, key: string): Pending {
  let orders: readonly Order[] = recall(memory.read(key));
  const save = (next: readonly Order[]) => {
    orders = next;
    if (next.length === 0) memory.forget(key);
    else memory.write(key, JSON.stringify(next));
  };
  return {
    all: () => orders,
    add: (order) => save([...orders, order]),
    settle(id) {
      const left = orders.filter((order) => order.id !== id);
      const found = left.length < orders.length;
      if (found) save(left);
      return found;
    },
  };
}

function recall(text: string | null): readonly Order[] {
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
