// How the SIMD module is loaded, and that TypeScript with the same results does the work where it cannot run.
import { spawnSync } from 'node:child_process';
import { expect, it, test } from 'vitest';
import { decodeBase64 } from '../../shared-engine/kernels/simd/base64.ts';
import { type WasmHost, wasmHost } from '../../shared-engine/kernels/simd/host.ts';
import { loadSimd, NO_SIMD } from '../../shared-engine/kernels/simd/module.ts';
import { createSimdKernel } from '../../shared-engine/kernels/tiles-to-go/simd.ts';
import { createSwarKernel } from '../../shared-engine/kernels/tiles-to-go/swar.ts';
import { drawn, stream } from '../../shared-engine/rules/deal/random.ts';
import { bagOf, FULL_SET, facesOf } from '../../shared-engine/rules/tiles/bag.ts';
import { flatRacks } from '../kit/racks.ts';
import { randomCard } from '../kit/random-card.ts';

const here = wasmHost()!;

/** The eight bytes that a module begins with, then a section that no host knows. */
const NONSENSE = 'AGFzbQEAAAD/AA==';

const noSimd: WasmHost = {
  compile: () => Promise.reject(new Error('invalid value type')),
  Instance: here.Instance,
};

const noInstance: WasmHost = {
  compile: (bytes) => here.compile(bytes),
  Instance: class {
    get exports(): never {
      throw new Error('out of memory');
    }
  },
};

const notBuilt = () => Promise.reject(new Error('no such file'));

const FAILING = [
  ['a host without WebAssembly', () => loadSimd(null), /no WebAssembly/],
  ['a host without SIMD', () => loadSimd(noSimd), /invalid value type/],
  ['a host that compiles but does not run it', () => loadSimd(noInstance), /out of memory/],
  ['a module that was not built', () => loadSimd(here, notBuilt), /npm run build:wasm/],
  ['a module that is none', () => loadSimd(here, async () => NONSENSE), /section/],
  ['a caller who asks for no SIMD', async () => NO_SIMD, /asked for/],
] as const;

it.each(FAILING)('%s gets TypeScript, the same results and a reason', async (_, load, reason) => {
  const simd = await load();
  if (simd.kind !== 'unavailable') throw new Error('The module was loaded after all.');
  expect(simd.reason).toMatch(reason);
  const card = randomCard('fallback', 20, 6);
  const [kernel, twin] = [createSimdKernel(simd, card), createSwarKernel(card)];
  const random = stream('fallback', 'racks');
  const racks = Array.from({ length: 50 }, () => bagOf(drawn(facesOf(FULL_SET), 13, random)));
  for (const rack of racks) {
    expect(kernel.toGo(rack)).toBe(twin.toGo(rack));
    expect(kernel.toGoByPattern(rack)).toEqual(twin.toGoByPattern(rack));
    expect(kernel.histogram(rack)).toEqual(twin.histogram(rack));
  }
  expect([...kernel.toGoMany(flatRacks(racks))]).toEqual(racks.map((rack) => twin.toGo(rack)));
});

it('this machine loads the SIMD module', async () => {
  expect((await loadSimd()).kind).toBe('ready');
});

test('the SIMD module is built from the sources as they are', () => {
  const build = new URL('../../shared-engine/kernels/simd/build.mjs', import.meta.url).pathname;
  expect(spawnSync(process.execPath, [build, '--check']).status).toBe(0);
});

test('base64 is decoded as the test vectors of RFC 4648, section 10, demand', () => {
  const vectors: readonly (readonly [string, string])[] = [
    ['', ''],
    ['Zg==', 'f'],
    ['Zm8=', 'fo'],
    ['Zm9v', 'foo'],
    ['Zm9vYg==', 'foob'],
    ['Zm9vYmE=', 'fooba'],
    ['Zm9vYmFy', 'foobar'],
  ];
  for (const [text, bytes] of vectors) expect(Buffer.from(decodeBase64(text)).toString('latin1')).toBe(bytes);
  const all = Buffer.from(Uint8Array.from({ length: 256 }, (_, byte) => byte));
  expect(Buffer.from(decodeBase64(all.toString('base64')))).toEqual(all);
});
