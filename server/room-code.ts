// The room code: eight letters that a person can read out on the phone.

/** 31 letters and digits that are not mistaken for one another: no I, L, O, 0 or 1. */
export const CODE_ALPHABET = '23456789ABCDEFGHJKMNPQRSTUVWXYZ';
export const CODE_LENGTH = 8;

const SHAPE = new RegExp(`^[${CODE_ALPHABET}]{${CODE_LENGTH}}$`);

/** The code a person meant, whatever its case and spacing, or null when it cannot be one. */
export function parseCode(text: string): string | null {
  const code = tidied(text);
  return SHAPE.test(code) ? code : null;
}

/** As codes are written, without the blanks and dashes that people put between their letters. */
export function tidied(text: string): string {
  return text.toUpperCase().replace(/[\s-]/g, '');
}
