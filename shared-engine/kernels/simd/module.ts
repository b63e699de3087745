// The vector module, where this host can run it; everything it does has a plain twin with the same results.
import { bytesOfBase64 } from './base64.ts';
import { type VectorExports, type WasmHost, wasmHost } from './host.ts';

export type Vectors =
  | {
      readonly kind: 'ready';
      /** A new instance with a memory of its own: one a card. */
      readonly instance: () => VectorExports;
    }
  | {
      readonly kind: 'missing';
      /** One sentence for a log. */
      readonly why: string;
    };

/** For hosts and tests that want the plain twins. */
export const NO_VECTORS: Vectors = { kind: 'missing', why: 'The plain twins were asked for.' };

/** Compiles the module. Never fails: where it cannot be had, the answer says why and the plain twins stand in. */
export async function loadVectors(
  host: WasmHost | null = wasmHost(),
  readModule: () => Promise<string> = builtModule,
): Promise<Vectors> {
  if (host === null) return missing('This host has no WebAssembly');
  let text: string;
  try {
    text = await readModule();
  } catch {
    return missing('The vector module has not been built (npm run build:wasm)');
  }
  try {
    const module = await host.compile(bytesOfBase64(text));
    const instance = () => new host.Instance(module).exports;
    // Once for the trial: a host may compile what it then refuses to run.
    instance();
    return { kind: 'ready', instance };
  } catch (error) {
    return missing(
      `This host does not run the vector module (${error instanceof Error ? error.message : 'no reason given'})`,
    );
  }
}

async function builtModule(): Promise<string> {
  return (await import('./built.ts')).MODULE;
}

function missing(why: string): Vectors {
  return { kind: 'missing', why: `${why}; the plain code stands in, slower and with the same results.` };
}
