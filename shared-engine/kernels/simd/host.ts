// The part of the host's WebAssembly that the engine uses, and the exports of the SIMD module.

/** The part in use of the WebAssembly JavaScript Interface (W3C), which pages, workers and Node share. */
export interface WasmHost {
  compile(bytes: Uint8Array): Promise<WasmModule>;
  readonly Instance: new (module: WasmModule) => { readonly exports: SimdInstance };
}

/** A compiled module; only the host looks into it. */
export type WasmModule = object;

/** Numbers are addresses or counts; see `assembly/index.ts`. */
export interface SimdInstance {
  readonly memory: { readonly buffer: ArrayBuffer };
  reserve(bytes: number): number;
  setCard(rowBytes: number, startRow: number, zeroRow: number, rows: number): void;
  setPatterns(matched: number, ends: number, patterns: number, hands: number): void;
  toGo(rack: number): number;
  toGoMany(racks: number, count: number, out: number): void;
  toGoByPattern(rack: number, out: number): void;
  histogram(rack: number, out: number): void;
  setNearHands(room: number, sets: number): void;
  setWeight(level: number, weight: number, further: number): void;
  setHandWeights(room: number, added: number, tables: number, places: number): void;
  setWeightSteps(inGroup: number, inSingle: number): void;
  setPassSelection(noiseScale: number, spareShare: number): void;
  selectPasses(racks: number, count: number, noise: number, tiles: number, spare: number): void;
  tileValues(rack: number, out: number): void;
  setQuantiles(at: number): void;
  scheduleBytes(steps: number): number;
  setSchedule(table: number, steps: number, room: number): void;
  setFeatures(room: number, wanted: number, copiesOf: number): void;
  setReach(weights: number, spans: number, count: number): void;
  reach(rack: number): number;
  setWinModel(fitted: number, powers: number): void;
  setScale(center: number, spread: number): void;
  weightOfRack(rack: number, place: number): number;
  setBatch(header: number): void;
  rollOut(keys: number, deals: number, actions: number, out: number): void;
}

declare const WebAssembly: WasmHost;

/** This host's WebAssembly, or null where it has none. */
export function wasmHost(): WasmHost | null {
  return typeof WebAssembly === 'undefined' ? null : WebAssembly;
}
