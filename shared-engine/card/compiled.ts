// A card as the engine uses it: every line under every choice of numbers, suits and dragons it allows.

/**
 * One concrete finished rack of 14 tiles. Both arrays have length 36, by face index.
 * A face wanted in a pair and in a pung has its counts in both.
 */
export interface Target {
  /** Index into `CompiledCard.lines`. */
  readonly line: number;
  /** Tiles wanted in singles and pairs, where no joker may stand. */
  readonly singles: readonly number[];
  /** Tiles wanted in groups of three or more, where jokers may stand. */
  readonly groups: readonly number[];
}

export interface CompiledLine {
  readonly id: string;
  /** Index into `CompiledCard.families`. */
  readonly family: number;
  readonly points: number;
  readonly concealed: boolean;
}

export interface CompiledCard {
  readonly id: string;
  readonly name: string;
  readonly families: readonly { readonly id: string; readonly name: string }[];
  readonly lines: readonly CompiledLine[];
  /** Without duplicates inside a line, ordered by line. */
  readonly targets: readonly Target[];
}
