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
  setNear(room: number, sets: number): void;
  setWeight(level: number, weight: number, further: number): void;
  setCare(noiseWeight: number, spareShare: number): void;
  letGoMany(racks: number, count: number, noise: number, gone: number, spare: number): void;
  usesOf(rack: number, out: number): void;
  setQuantiles(at: number): void;
  roomForPlaces(steps: number): number;
  setSchedule(table: number, steps: number, vote: number, ask: number, room: number): void;
  setReach(room: number, weights: number, stretches: number, count: number, extra: number): void;
  reachOf(rack: number): number;
  setOutlook(
    wanted: number,
    copiesOf: number,
    fitted: number,
    knots: number,
    centre: number,
    spread: number,
  ): void;
  outlookOf(rack: number, place: number): number;
  playMany(
    seed: number,
    seat: number,
    dealer: number,
    step: number,
    agreed: number,
    count: number,
    alternatives: number,
    keys: number,
    worlds: number,
    acts: number,
    out: number,
  ): void;
}

declare const WebAssembly: WasmHost;

/** This host's WebAssembly, or null where it has none. */
export function wasmHost(): WasmHost | null {
  return typeof WebAssembly === 'undefined' ? null : WebAssembly;
}
