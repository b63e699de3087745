// A text that is seldom read again, kept in a fifth of its size.
import { deflateRawSync, inflateRawSync } from 'node:zlib';

/** The quickest: the levels above it save little more of a review. */
const LEVEL = 1;

export class PackedText {
  /** As a string it lies in the heap and nowhere else; a small buffer holds on to a larger one. */
  readonly #packed: string;

  constructor(text: string) {
    this.#packed = deflateRawSync(text, { level: LEVEL }).toString('latin1');
  }

  get text(): string {
    return inflateRawSync(Buffer.from(this.#packed, 'latin1')).toString();
  }
}
