// What the engine asks of its host's WebAssembly, and what its own module answers.

/** The part in use of the WebAssembly JavaScript Interface (W3C), which pages, workers and Node share. */
export interface WasmHost {
  compile(bytes: Uint8Array): Promise<WasmModule>;
  readonly Instance: new (module: WasmModule) => { readonly exports: VectorExports };
}

/** A compiled module; only the host looks into it. */
export type WasmModule = object;

/** Numbers are addresses or counts; see `assembly/index.ts`. */
export interface VectorExports {
  readonly memory: { readonly buffer: ArrayBuffer };
  reserve(bytes: number): number;
  setCard(rowBytes: number, startRow: number, zeroRow: number, rows: number): void;
  setLines(room: number, ends: number, lines: number, targets: number): void;
  toGo(rack: number): number;
  toGoMany(racks: number, count: number, out: number): void;
  toGoByLine(rack: number, out: number): void;
  histogram(rack: number, out: number): void;
}

declare const WebAssembly: WasmHost;

/** This host's WebAssembly, or null where it has none. */
export function wasmHost(): WasmHost | null {
  return typeof WebAssembly === 'undefined' ? null : WebAssembly;
}
