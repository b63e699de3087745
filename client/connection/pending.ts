// Requests that the server has not answered yet: stored in order, also over a reload, and sent again with the same id.

import { type ClientMessage, clientMessageSchema } from '../../shared-engine/index.ts';

import type { TextStorage } from '../storage/browser-storage.ts';

/** Something to be carried out once. What is said of a connection is said anew on each, and is no request. */
export type ClientRequest = Exclude<ClientMessage, { kind: 'hello' | 'analyzed-by' }>;

export interface PendingRequests {
  all(): readonly ClientRequest[];
  add(request: ClientRequest): void;
  /** True when this id was waiting. */
  complete(id: string): boolean;
}

export function openPendingRequests(storage: TextStorage, key: string): PendingRequests {
  let requests: readonly ClientRequest[] = restore(storage.read(key));
  const save = (next: readonly ClientRequest[]) => {
    requests = next;
    if (next.length === 0) storage.remove(key);
    else storage.write(key, JSON.stringify(next));
  };
  return {
    all: () => requests,
    add: (request) => save([...requests, request]),
    complete(id) {
      const left = requests.filter((request) => request.id !== id);
      const found = left.length < requests.length;
      if (found) save(left);
      return found;
    },
  };
}

function restore(text: string | null): readonly ClientRequest[] {
  if (text === null) return [];
  try {
    const json: unknown = JSON.parse(text);
    if (!Array.isArray(json)) return [];
    return json.flatMap((item) => {
      const parsed = clientMessageSchema.safeParse(item);
      return parsed.success && isRequest(parsed.data) ? [parsed.data] : [];
    });
  } catch {
    return [];
  }
}

function isRequest(message: ClientMessage): message is ClientRequest {
  return message.kind !== 'hello' && message.kind !== 'analyzed-by';
}
