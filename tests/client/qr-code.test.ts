// The square code of an invitation, read back by a decoder that shares nothing with the code that drew it.
import jsQR from 'jsqr';
import { describe, expect, it } from 'vitest';
import { QUIET, qrCodeOf } from '../../client/ui/qr-code.ts';

/** Pixels along the side of one square. */
const SCALE = 4;

/** Black on white, as the page shows it, in the form a decoder takes. */
function pixels({ side, path }: { readonly side: number; readonly path: string }) {
  const width = side * SCALE;
  const image = new Uint8ClampedArray(width * width * 4).fill(255);
  for (const [, x, y] of path.matchAll(/M(\d+) (\d+)h1v1h-1z/g)) {
    for (let dy = 0; dy < SCALE; dy++) {
      const start = ((Number(y) * SCALE + dy) * width + Number(x) * SCALE) * 4;
      for (let dx = 0; dx < SCALE; dx++) image.set([0, 0, 0], start + dx * 4);
    }
  }
  return { image, width };
}

// Source: jsQR 1.4.0, a decoder after ISO/IEC 18004; the quiet zone of four squares is the same standard's.
describe('the code for a camera', () => {
  it.each([
    'https://table.example/t/W2M9H67G',
    'http://192.168.178.20:8080/t/EGARRG2D',
    'https://a-rather-long-name-of-a-club.example.org:8443/t/ZZZZ2222',
  ])('a decoder reads the square code of %s', (link) => {
    const { image, width } = pixels(qrCodeOf(link));
    expect(jsQR.default(image, width, width)?.data).toBe(link);
  });

  it('the margin of the square code stays white', () => {
    const { side, path } = qrCodeOf('https://table.example/t/W2M9H67G');
    const places = [...path.matchAll(/M(\d+) (\d+)/g)].flatMap(([, x, y]) => [Number(x), Number(y)]);
    expect(Math.min(...places)).toBe(QUIET);
    expect(Math.max(...places)).toBe(side - QUIET - 1);
  });
});
