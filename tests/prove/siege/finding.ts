// What an attack found, as a row of the proof.

export interface Finding {
  readonly part: string;
  readonly what: string;
  readonly bar: string;
  readonly found: string;
  readonly holds: boolean;
}
