// The commitment to a fair deal: a hash published before the first pass; the seed is revealed at the close (rule D4).
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, hexToBytes } from '@noble/hashes/utils.js';
import { type Bag, sizeOf } from '../tiles/bag.ts';
import { type Deal, dealTiles, isSeed, type RandomDeal } from './deal.ts';
import type { Seat } from './seat.ts';

/** SHA-256 of the 32 seed bytes, as 64 hexadecimal digits. */
export function commitmentTo(seed: string): string {
  return bytesToHex(sha256(hexToBytes(seed)));
}

/** The hash that is published with a deal; null where a teacher prepared the racks (rule D4). */
export function commitmentOf(deal: Deal): string | null {
  return 'prepared' in deal ? null : commitmentTo(deal.seed);
}

export type DealCheck =
  | { readonly ok: true }
  | { readonly ok: false; readonly reason: 'bad-seed' | 'wrong-commitment' | 'wrong-rack' };

/** Whether the seed of `deal` has this hash and, where a rack as dealt is given, whether it deals that rack. */
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
