// A hash tree as RFC 6962 section 2.1 defines it: a root for a list of entries, and short proofs for single entries.
import { sha256 } from '@noble/hashes/sha2.js';
import { concatBytes } from '@noble/hashes/utils.js';

/** A SHA-256 hash: 32 bytes. */
type Hash = Uint8Array;

const LEAF = Uint8Array.of(0x00);
const NODE = Uint8Array.of(0x01);

/** The hash of an entry that begins with `start`, as a function of its rest: that beginning is hashed once for all. */
export function leafHashFrom(start: Uint8Array): (rest: Uint8Array) => Hash {
  const begun = sha256.create().update(LEAF).update(start);
  return (rest) => begun.clone().update(rest).digest();
}

/** The root over the hashes of the leaves, in order; of no leaves at all it is the hash of nothing. */
export function treeRoot(leaves: readonly Hash[]): Hash {
  if (leaves.length === 0) return sha256(new Uint8Array());
  if (leaves.length === 1) return leaves[0]!;
  const left = leftSize(leaves.length);
  return nodeHash(treeRoot(leaves.slice(0, left)), treeRoot(leaves.slice(left)));
}

/** The hashes that lead from leaf `index` to the root, the one nearest to the leaf first. */
export function treePath(leaves: readonly Hash[], index: number): readonly Hash[] {
  if (leaves.length === 1) return [];
  const left = leftSize(leaves.length);
  return index < left
    ? [...treePath(leaves.slice(0, left), index), treeRoot(leaves.slice(left))]
    : [...treePath(leaves.slice(left), index - left), treeRoot(leaves.slice(0, left))];
}

/** The root that this leaf and its path lead to in a tree of `size` leaves; null for a path of another length. */
export function rootByPath(
  leaf: Hash,
  { index, size }: { readonly index: number; readonly size: number },
  path: readonly Hash[],
): Hash | null {
  if (size === 1) return path.length === 0 ? leaf : null;
  const beside = path.at(-1);
  if (beside === undefined) return null;
  const left = leftSize(size);
  const inner = path.slice(0, -1);
  if (index < left) {
    const below = rootByPath(leaf, { index, size: left }, inner);
    return below && nodeHash(below, beside);
  }
  const below = rootByPath(leaf, { index: index - left, size: size - left }, inner);
  return below && nodeHash(beside, below);
}

function nodeHash(left: Hash, right: Hash): Hash {
  return sha256(concatBytes(NODE, left, right));
}

/** The largest power of two below `size`, which is at least 2. */
function leftSize(size: number): number {
  let left = 1;
  while (left * 2 < size) left *= 2;
  return left;
}
