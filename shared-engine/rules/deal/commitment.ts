// The commitment to a deal: the root of a hash tree, public before the first pass; what opens it comes at the close (rule D4).
import { hmac } from '@noble/hashes/hmac.js';
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, hexToBytes, utf8ToBytes } from '@noble/hashes/utils.js';
import { facesOf, sortFaces } from '../tiles/bag.ts';
import type { Face } from '../tiles/face.ts';
import { type Deal, dealTiles, type RandomDeal } from './deal.ts';
import { leafHashFrom, rootByPath, treePath, treeRoot } from './hash-tree.ts';
import { SEATS, type Seat } from './seat.ts';

/** Stands in each leaf, so that a leaf of another format never passes for one of this. */
export const DEAL_FORMAT = 'quadrille-deal/3' as const;

/** The racks of seats 0 to 3, the wall, the seed of later draws. */
const LEAVES = 6;

/** What each leaf says besides its own tiles, all of it public from the deal on. */
export interface DealHead {
  readonly roundId: string;
  readonly dealer: Seat;
  /** The ways to play; each is in the leaf by its name. */
  readonly terms: object;
}

/** What proves to a seat that its rack is the one that was committed to, without a word about the others. */
export interface LeafProof {
  /** 64 hexadecimal digits. */
  readonly salt: string;
  /** The hashes from the leaf to the root, the one nearest to the leaf first. */
  readonly path: readonly string[];
}

/** Names a round of a room for good. */
export function roundIdOf(code: string, number: number): string {
  return `${code}/${number}`;
}

/** The seed from which blind passes are drawn. It follows from the deal's seed and does not lead back to it. */
export function laterSeed({ seed }: Pick<Deal, 'seed'>): string {
  return bytesToHex(keyed(hexToBytes(seed), 'later draws'));
}

/** The root, 64 hexadecimal digits; null where a teacher prepared the racks (rule D4). */
export function commitmentOf(deal: Deal, head: DealHead): string | null {
  return 'prepared' in deal ? null : treeOf(deal, head).root;
}

/** To be given to this seat alone. */
export function leafProof(deal: RandomDeal, head: DealHead, seat: Seat): LeafProof {
  const { salts, leaves, proofs } = treeOf(deal, head);
  proofs[seat] ??= { salt: salts[seat]!, path: treePath(leaves, seat).map(bytesToHex) };
  return proofs[seat];
}

/** Whether `commitment` was made for this rack, dealt to this seat of this round. */
export function isCommittedRack(
  commitment: string,
  head: DealHead,
  dealt: { readonly seat: Seat; readonly rack: readonly Face[] },
  { salt, path }: LeafProof,
): boolean {
  const leaf = leavesOf(head)(dealt.seat, salt, sortFaces(dealt.rack));
  const root = rootByPath(leaf, { index: dealt.seat, size: LEAVES }, path.map(hexToBytes));
  return root !== null && bytesToHex(root) === commitment;
}

interface DealTree {
  readonly root: string;
  readonly salts: readonly string[];
  readonly leaves: readonly Uint8Array[];
  /** By seat, made when first asked for. */
  readonly proofs: LeafProof[];
}

/** Each seat's view of a closed round needs the tree, so it is made once and cached as long as the deal lives. */
const cache = new WeakMap<Deal, { readonly head: DealHead; readonly tree: DealTree }>();

function treeOf(deal: RandomDeal, head: DealHead): DealTree {
  const known = cache.get(deal);
  if (known && isSameHead(known.head, head)) return known.tree;
  const leafOf = leavesOf(head);
  const { racks, wall } = dealTiles(deal);
  const contents = [...SEATS.map((seat) => facesOf(racks[seat])), wall, [laterSeed(deal)]];
  const secret = keyed(hexToBytes(deal.seed), 'salts');
  const salting = hmac.create(sha256, secret);
  const salts = contents.map((_, index) => bytesToHex(salting.clone().update(Uint8Array.of(index)).digest()));
  const leaves = contents.map((content, index) => leafOf(index, salts[index]!, content));
  const tree = { root: bytesToHex(treeRoot(leaves)), salts, leaves, proofs: [] };
  cache.set(deal, { head, tree });
  return tree;
}

/** A round has one object of terms from its deal to its close; for another, equal one the tree is made anew. */
function isSameHead(one: DealHead, other: DealHead): boolean {
  return one.roundId === other.roundId && one.dealer === other.dealer && one.terms === other.terms;
}

type LeafOf = (index: number, salt: string, content: readonly string[]) => Uint8Array;

/** The hash of a leaf: of the UTF-8 of one JSON array, so that no two different leaves are the same bytes. */
function leavesOf(head: DealHead): LeafOf {
  // All leaves of a deal begin alike, up to the bracket that ends the list.
  const hash = leafHashFrom(utf8ToBytes(JSON.stringify(headFields(head)).slice(0, -1)));
  return (index, salt, content) => hash(utf8ToBytes(`,${JSON.stringify([index, salt, content]).slice(1)}`));
}

function headFields({ roundId, dealer, terms }: DealHead): readonly unknown[] {
  const ways = Object.entries(terms).sort(([a], [b]) => (a < b ? -1 : 1));
  return [DEAL_FORMAT, roundId, dealer, ways];
}

function keyed(key: Uint8Array, text: string): Uint8Array {
  return hmac(sha256, key, utf8ToBytes(text));
}
