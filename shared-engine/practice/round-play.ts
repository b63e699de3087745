// What happened in a round, as one short text: its record and what the close has opened, a digit for each tile.
import { z } from 'zod';
import { leafProofSchema, openedRoundSchema, recordSchema } from '../protocol/index.ts';
import {
  addTo,
  bagOf,
  FACES,
  type Face,
  faceIndex,
  four,
  hexSchema,
  isFace,
  type SeatRecord,
  sizeOf,
  takeFrom,
  tilesSchema,
} from '../rules/index.ts';

const playSchema = z.strictObject({
  record: recordSchema.refine(isPlayable),
  closing: z.strictObject({
    commitment: hexSchema.nullable(),
    ownLeaf: leafProofSchema.nullable(),
    opened: openedRoundSchema.nullable(),
    racks: four(tilesSchema).nullable(),
  }),
});
export type RoundPlay = z.infer<typeof playSchema>;

/** Stands before the digits of some tiles; no other text of a round begins with it. */
const TILES = '~';

/** About two thirds of it would be names of tiles, so each is written as its place among the faces, in base 36. */
export function packPlay(play: RoundPlay): string {
  return JSON.stringify(play, (_, value: unknown) =>
    Array.isArray(value) && value.length > 0 && value.every(isFaceText)
      ? TILES + value.map((face) => faceIndex(face).toString(36)).join('')
      : value,
  );
}

/** Null for a text that is no round. */
export function unpackPlay(text: string): RoundPlay | null {
  try {
    const parsed = playSchema.safeParse(JSON.parse(text.replace(PACKED, unpacked)));
    return parsed.success ? parsed.data : null;
  } catch {
    return null;
  }
}

const PACKED = new RegExp(`"${TILES}([0-9a-z]+)"`, 'g');

/** Ten times as fast as to look at every value while it is parsed. */
function unpacked(_: string, digits: string): string {
  return JSON.stringify([...digits].map((digit) => FACES[Number.parseInt(digit, 36)]));
}

function isFaceText(value: unknown): value is Face {
  return typeof value === 'string' && isFace(value);
}

/** Whether each pass gives only what the seat held; a record from a file may claim anything. */
function isPlayable({ start, steps }: SeatRecord): boolean {
  let rack = bagOf(start);
  if (steps.length > 9 || sizeOf(rack) < 13) return false;
  for (const step of steps) {
    if (step.kind !== 'move') continue;
    const rest = takeFrom(rack, step.gave);
    if (rest === null) return false;
    rack = addTo(rest, step.received);
  }
  return true;
}
