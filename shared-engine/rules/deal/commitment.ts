// The promise of a fair deal: a hash published before the first pass, opened at the close (rule D4).
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, hexToBytes } from '@noble/hashes/utils.js';
import { type Bag, sizeOf } from '../tiles/bag.ts';
import { type Deal, dealTiles, isSeed, type RandomDeal } from './deal.ts';
import type { Seat } from './seat.ts';

/** SHA-256 of the 32 seed bytes, as 64 hexadecimal digits. */
export function commitmentTo(seed: string): string {
  return bytesToHex(sha256(hexToBytes(seed)));
}

/** The hash that goes with a deal, or null where a teacher prepared it and nothing was left to chance (rule D4). */
export function promiseOf(deal: Deal): string | null {
  return 'prepared' in deal ? null : commitmentTo(deal.seed);
}

export type DealCheck =
  | { readonly ok: true }
  | { readonly ok: false; readonly reason: 'bad-seed' | 'wrong-commitment' | 'wrong-rack' };

/** Whether `deal` is what `commitment` promised, and, where a first rack is given, whether it dealt that rack. */
export function checkDeal(
  deal: RandomDeal,
  commitment: string,
  first?: { readonly seat: Seat; readonly rack: Bag },
): DealCheck {
  if (!isSeed(deal.seed)) return { ok: false, reason: 'bad-seed' };
  if (commitmentTo(deal.seed) !== commitment) return { ok: false, reason: 'wrong-commitment' };
  if (first) {
    const dealt = dealTiles(deal).racks[first.seat];
    const same = sizeOf(dealt) === sizeOf(first.rack) && dealt.every((count, i) => count === first.rack[i]);
    if (!same) return { ok: false, reason: 'wrong-rack' };
  }
  return { ok: true };
}
