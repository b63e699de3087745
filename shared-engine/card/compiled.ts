// The type of a compiled card: its patterns, and every hand that can be made of them.

/**
 * One way to make a pattern: 14 concrete tiles, every variable chosen. Both arrays have length 36, by face index; a face
 * that is wanted in a pair and in a pung has counts in both.
 */
export interface Hand {
  /** Index into `CompiledCard.patterns`. */
  readonly pattern: number;
  /** Tiles wanted in singles and pairs, where no joker may stand. */
  readonly singles: readonly number[];
  /** Tiles wanted in groups of three or more, where jokers may stand. */
  readonly groups: readonly number[];
}

export interface CompiledPattern {
  readonly id: string;
  /** Index into `CompiledCard.sections`. */
  readonly section: number;
  readonly points: number;
  readonly concealed: boolean;
}

export interface CompiledCard {
  readonly id: string;
  readonly name: string;
  readonly sections: readonly { readonly id: string; readonly name: string }[];
  readonly patterns: readonly CompiledPattern[];
  /** Without duplicates inside a pattern, ordered by pattern. */
  readonly hands: readonly Hand[];
}
