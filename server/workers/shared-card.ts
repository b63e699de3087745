// A compiled card in memory that all threads share: compiled once, read by every worker that needs it.
import { type CompiledCard, countsAt, FACES, type Hand } from '../../shared-engine/index.ts';

/** Everything of a compiled card; the hands lie in shared memory, so that sending the card copies none of them. */
export interface SharedCard extends Omit<CompiledCard, 'hands'> {
  /** For each hand the index of its pattern in two bytes, the higher one first, then its singles and its groups by face. */
  readonly hands: SharedArrayBuffer;
}

const SIDE = FACES.length;
const HAND_BYTES = 2 + 2 * SIDE;

export function shareCard({ hands, ...outline }: CompiledCard): SharedCard {
  const shared = new SharedArrayBuffer(hands.length * HAND_BYTES);
  const bytes = new Uint8Array(shared);
  for (const [nth, { pattern, singles, groups }] of hands.entries()) {
    bytes.set([pattern >> 8, pattern & 255, ...singles, ...groups], nth * HAND_BYTES);
  }
  return { ...outline, hands: shared };
}

/** The card as it was compiled, with hands of this thread's own. */
export function cardFromShared({ hands: shared, ...outline }: SharedCard): CompiledCard {
  const bytes = new Uint8Array(shared);
  const hands = Array.from({ length: bytes.length / HAND_BYTES }, (_, nth): Hand => {
    const at = nth * HAND_BYTES;
    return {
      pattern: (bytes[at]! << 8) | bytes[at + 1]!,
      singles: countsAt(bytes, at + 2),
      groups: countsAt(bytes, at + 2 + SIDE),
    };
  });
  return { ...outline, hands };
}
