// From the words of the command line to a checked copy of every room, or a message that says what to change.
import { parseArgs } from 'node:util';
import type { Store } from '../ports.ts';
import { openAddress, openExisting, parseAddress, type StoreAddress } from '../store/address.ts';
import { type CopyReport, copyLogs } from '../store/copying.ts';
import type { OpenedStore } from '../store/opened.ts';

const USAGE =
  'Use --from and --to, each sqlite:PATH or postgres:URL, and --add to copy into a store that has rooms.';

export type CopyOutcome =
  | { readonly kind: 'copied'; readonly report: CopyReport }
  /** Nothing was copied. */
  | { readonly kind: 'rejected'; readonly message: string };

interface Request {
  readonly from: StoreAddress;
  readonly to: StoreAddress;
  readonly add: boolean;
}

/** Rejects when a store fails on the way; the rooms copied until then are whole. */
export async function copyStores(args: readonly string[]): Promise<CopyOutcome> {
  const request = readRequest(args);
  if (request === null) return { kind: 'rejected', message: USAGE };
  return withStore('--from', await openExisting(request.from), async (from) =>
    // The target is opened only for a source that is there, or a wrong word would leave an empty file behind.
    withStore('--to', await openAddress(request.to), async (to) => {
      const there = await to.count();
      if (there === 0 || request.add) return { kind: 'copied', report: await copyLogs(from, to) };
      const message = `--to has ${there} rooms already; name an empty store, or say --add to keep both.`;
      return { kind: 'rejected', message };
    }),
  );
}

function readRequest(args: readonly string[]): Request | null {
  const options = { from: { type: 'string' }, to: { type: 'string' }, add: { type: 'boolean' } } as const;
  try {
    const { values } = parseArgs({ args: [...args], options });
    const [from, to] = [parseAddress(values.from ?? ''), parseAddress(values.to ?? '')];
    return from && to && { from, to, add: values.add ?? false };
  } catch {
    return null;
  }
}

async function withStore(
  side: '--from' | '--to',
  opened: OpenedStore,
  work: (store: Store) => Promise<CopyOutcome>,
): Promise<CopyOutcome> {
  if (!opened.ok) return { kind: 'rejected', message: `${side}: ${opened.message}` };
  try {
    return await work(opened.store);
  } finally {
    await opened.store.close();
  }
}
