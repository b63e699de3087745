// A link as a square code that a camera reads; the pattern comes from the package, the drawing is ours.
import qrcode from 'qrcode-generator';

/** Quiet margin around the pattern, in squares (ISO/IEC 18004 asks for four). */
export const QUIET = 4;

export interface QrCode {
  /** QrCode along one side, margin included. */
  readonly side: number;
  /** Path data of the dark squares, one unit each. */
  readonly path: string;
}

export function qrCodeOf(text: string): QrCode {
  const code = qrcode(0, 'M');
  code.addData(text);
  code.make();
  const count = code.getModuleCount();
  let path = '';
  for (let row = 0; row < count; row++) {
    for (let column = 0; column < count; column++) {
      if (code.isDark(row, column)) path += `M${column + QUIET} ${row + QUIET}h1v1h-1z`;
    }
  }
  return { side: count + 2 * QUIET, path };
}
