// The SIMD module, where this host can run it; everything it does has an implementation in TypeScript with the same results.
import { decodeBase64 } from './base64.ts';
import { type SimdInstance, type WasmHost, wasmHost } from './host.ts';

export type SimdModule =
  | {
      readonly kind: 'ready';
      /** A new instance with a memory of its own: one a card. */
      readonly instance: () => SimdInstance;
    }
  | {
      readonly kind: 'unavailable';
      /** One sentence for a log. */
      readonly reason: string;
    };

/** For hosts and tests that want TypeScript alone. */
export const NO_SIMD: SimdModule = { kind: 'unavailable', reason: 'TypeScript alone was asked for.' };

/** Compiles the module. Never fails: where it cannot run, the answer says why and TypeScript does the work. */
export async function loadSimd(
  host: WasmHost | null = wasmHost(),
  readModule: () => Promise<string> = builtModule,
): Promise<SimdModule> {
  if (host === null) return unavailable('This host has no WebAssembly');
  let text: string;
  try {
    text = await readModule();
  } catch {
    return unavailable('The SIMD module has not been built (npm run build:wasm)');
  }
  try {
    const module = await host.compile(decodeBase64(text));
    const instance = () => new host.Instance(module).exports;
    // Once for the trial: a host may compile what it then cannot run.
    instance();
    return { kind: 'ready', instance };
  } catch (error) {
    return unavailable(
      `This host does not run the SIMD module (${error instanceof Error ? error.message : 'no reason given'})`,
    );
  }
}

async function builtModule(): Promise<string> {
  return (await import('./built.ts')).MODULE;
}

function unavailable(why: string): SimdModule {
  return {
    kind: 'unavailable',
    reason: `${why}; TypeScript does the work, slower and with the same results.`,
  };
}
