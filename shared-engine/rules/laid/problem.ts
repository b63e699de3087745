// What cannot be so at a table with real tiles, in words for whoever lays them in.
import type { RoundRejectionCode } from '../exchange/rejection.ts';
import type { Face } from '../tiles/face.ts';

export type LaidProblemCode =
  | 'too-many-copies'
  | 'wrong-rack-size'
  | 'joker-arrived'
  | 'wrong-arrival-size'
  | 'wrong-blind'
  | 'wrong-votes'
  | 'wrong-asks'
  | 'not-now';

export interface LaidProblem {
  readonly ok: false;
  readonly code: LaidProblemCode | RoundRejectionCode;
  readonly message: string;
  /** The tile that it is about; null where it is about none alone. */
  readonly tile: Face | null;
}

export function laidProblem(
  code: LaidProblem['code'],
  message: string,
  tile: Face | null = null,
): LaidProblem {
  return { ok: false, code, message, tile };
}
