// The hashes behind the commitment. Sources: FIPS 180-2, appendix B.1–B.3, and the hash of the empty message (NIST); RFC 6962
// and RFC 9162 print no tree, so the trees are those of the certificate-transparency reference tests, quoted from memory.
import { createHash } from 'node:crypto';
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, hexToBytes, utf8ToBytes } from '@noble/hashes/utils.js';
import { describe, expect, test } from 'vitest';
import { leafHashFrom, rootByPath, treePath, treeRoot } from '../../shared-engine/rules/deal/hash-tree.ts';

test.each([
  ['', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
  ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
  [
    'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
    '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
  ],
])('SHA-256 of "%s" is the published value', (message, published) => {
  expect(bytesToHex(sha256(utf8ToBytes(message)))).toBe(published);
});

/** The eight entries of the reference tests, and the root of the first 0 to 8 of them. */
const ENTRIES = [
  '',
  '00',
  '10',
  '2021',
  '3031',
  '40414243',
  '5051525354555657',
  '606162636465666768696a6b6c6d6e6f',
];
const ROOTS = [
  'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855',
  '6e340b9cffb37a989ca544e6bb780a2c78901d3fb33738768511a30617afa01d',
  'fac54203e7cc696cf0dfcb42c92a1d9dbaf70ad9e621f4bd8d98662f00e3c125',
  'aeb6bcfe274b70a14fb067a5e5578264db0fa9b51af5e0ba159158f329e06e77',
  'd37ee418976dd95753c1c73862b9398fa2a2cf9b4ff0fdfe8b30cd95209614b7',
  '4e3bbb1f7b478dcfe71fb631631519a3bca12c9aefca1612bfce4c13a86264d4',
  '76e67dadbcdf1e10e1b74ddc608abd2f98dfb16fbce75277b5232a127f2087ef',
  'ddb89be403809e325750d3d263cd78929c2942b7942a34b77e122c9594a74c8c',
  '5dc9da79a70659a9ad559cb701ded9a2ab9d823aad2f4960cfe370eff4604328',
];

const leafHash = leafHashFrom(utf8ToBytes(''));

const openssl = (...parts: Uint8Array[]) => {
  const hash = createHash('sha256');
  for (const part of parts) hash.update(part);
  return new Uint8Array(hash.digest());
};
const joined = (left: Uint8Array, right: Uint8Array) => openssl(Uint8Array.of(1), left, right);

/** The same root by another way: leaves come one by one, and equal trees are joined as in a binary counter. */
function rootByCounter(entries: readonly Uint8Array[]): Uint8Array {
  const trees: { size: number; root: Uint8Array }[] = [];
  for (const entry of entries) {
    let tree = { size: 1, root: openssl(Uint8Array.of(0), entry) };
    while (trees.at(-1)?.size === tree.size) {
      tree = { size: tree.size * 2, root: joined(trees.pop()!.root, tree.root) };
    }
    trees.push(tree);
  }
  const roots = trees.map(({ root }) => root);
  return roots.length === 0 ? openssl() : roots.reduceRight((right, left) => joined(left, right));
}

/** RFC 9162 section 2.1.3.2, step by step. */
function rootByRfc9162(leaf: Uint8Array, index: number, size: number, path: readonly Uint8Array[]) {
  let fn = index;
  let sn = size - 1;
  let root = leaf;
  for (const hash of path) {
    if (sn === 0) return null;
    if (fn % 2 === 1 || fn === sn) {
      root = joined(hash, root);
      while (fn % 2 === 0 && fn !== 0) {
        fn >>= 1;
        sn >>= 1;
      }
    } else root = joined(root, hash);
    fn >>= 1;
    sn >>= 1;
  }
  return sn === 0 ? root : null;
}

describe('the hash tree', () => {
  test.each(ROOTS.map((root, size) => [size, root] as const))(
    'D4 the root over the first %i entries of the reference tests is the known one',
    (size, root) => {
      const entries = ENTRIES.slice(0, size).map(hexToBytes);
      expect(bytesToHex(treeRoot(entries.map(leafHash)))).toBe(root);
      expect(bytesToHex(rootByCounter(entries))).toBe(root);
    },
  );

  test('D4 roots and paths of 1 to 33 leaves agree with a second way to compute them, by OpenSSL in Node', () => {
    for (let size = 1; size <= 33; size++) {
      const entries = Array.from({ length: size }, (_, n) => utf8ToBytes(`entry ${n}`));
      const leaves = entries.map(leafHash);
      const root = treeRoot(leaves);
      expect(root).toEqual(rootByCounter(entries));
      for (const [index, leaf] of leaves.entries()) {
        const path = treePath(leaves, index);
        expect(rootByRfc9162(leaf, index, size, path)).toEqual(root);
        expect(rootByPath(leaf, { index, size }, path)).toEqual(root);
      }
    }
  });

  test('D4 a path that is too long, too short or of another leaf does not lead to the root', () => {
    const leaves = Array.from({ length: 6 }, (_, n) => leafHash(utf8ToBytes(`entry ${n}`)));
    const root = treeRoot(leaves);
    const place = { index: 2, size: 6 };
    const path = treePath(leaves, 2);
    expect(rootByPath(leaves[2]!, place, path)).toEqual(root);
    expect(rootByPath(leaves[2]!, place, path.slice(1))).toBeNull();
    expect(rootByPath(leaves[2]!, place, [...path, root])).toBeNull();
    expect(rootByPath(leaves[2]!, { index: 3, size: 6 }, path)).not.toEqual(root);
    expect(rootByPath(leaves[1]!, place, path)).not.toEqual(root);
  });
});
