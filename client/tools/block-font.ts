// A font in which every letter is the same box, so that a picture of a page is the same on every machine, whatever fonts
// it has. Tables and their order follow the OpenType specification, version 1.9 (https://learn.microsoft.com/typography/opentype/spec).

const UNITS = 1000;
const ADVANCE = 520;
const ASCENT = 760;
const DESCENT = 240;

/** Letters, digits, signs and arrows that the page uses; a missing one would be drawn in the machine's own font. */
const RANGES: readonly (readonly [number, number])[] = [
  [0x20, 0x7e],
  [0xa0, 0x17f],
  [0x2010, 0x2044],
  [0x2190, 0x21ff],
  [0x2200, 0x22ff],
  [0x2500, 0x27bf],
];

/** The font as an address for a style sheet. */
export function blockFont(): string {
  return `data:font/ttf;base64,${Buffer.from(fontFile()).toString('base64')}`;
}

class Bytes {
  readonly bytes: number[] = [];
  u8(...values: number[]): this {
    for (const value of values) this.bytes.push(value & 0xff);
    return this;
  }
  u16(...values: number[]): this {
    for (const value of values) this.u8(value >> 8, value);
    return this;
  }
  u32(...values: number[]): this {
    for (const value of values) this.u16(value >>> 16, value & 0xffff);
    return this;
  }
  text(text: string): this {
    return this.u8(...Buffer.from(text, 'latin1'));
  }
}

/** Glyph 0 is for what is missing, 1 the space, 2 the box. */
const GLYPHS = 3;

function fontFile(): Uint8Array {
  const tables: readonly (readonly [string, Bytes])[] = [
    ['OS/2', os2()],
    ['cmap', cmap()],
    ['glyf', glyf()],
    ['head', head()],
    ['hhea', hhea()],
    ['hmtx', new Bytes().u16(ADVANCE, 0, ADVANCE, 0, ADVANCE, 60)],
    ['loca', new Bytes().u32(0, 0, 0, BOX.bytes.length)],
    ['maxp', new Bytes().u32(0x00010000).u16(GLYPHS, 4, 1, 0, 0, 1, 0, 0, 0, 0, 0, 0, 0, 0)],
    ['name', name()],
    ['post', new Bytes().u32(0x00030000, 0).u16(0, 0).u32(0, 0, 0, 0, 0)],
  ];
  const font = new Bytes().u32(0x00010000).u16(tables.length, 128, 3, tables.length * 16 - 128);
  let offset = 12 + tables.length * 16;
  const body = new Bytes();
  for (const [tag, { bytes }] of tables) {
    font.text(tag).u32(checksum(bytes), offset, bytes.length);
    const padded = [...bytes, ...Array.from({ length: -bytes.length & 3 }, () => 0)];
    body.u8(...padded);
    offset += padded.length;
  }
  return Uint8Array.from([...font.bytes, ...body.bytes]);
}

function checksum(bytes: readonly number[]): number {
  let sum = 0;
  for (let at = 0; at < bytes.length; at += 4)
    for (let byte = 0; byte < 4; byte++) sum += (bytes[at + byte] ?? 0) * 2 ** (24 - 8 * byte);
  return sum % 2 ** 32;
}

/** One contour of four points, drawn with gaps to the letters beside it. */
const BOX = new Bytes()
  .u16(1, 60, 0, ADVANCE - 60, 560)
  .u16(3, 0)
  .u8(1, 1, 1, 1)
  .u16(60, 0, ADVANCE - 120, 0)
  .u16(0, 560, 0, -560)
  .u8(0, 0);

function glyf(): Bytes {
  return new Bytes().u8(...BOX.bytes);
}

function head(): Bytes {
  return new Bytes()
    .u32(0x00010000, 0x00010000, 0, 0x5f0f3cf5)
    .u16(0, UNITS)
    .u32(0, 0, 0, 0)
    .u16(0, -DESCENT, ADVANCE, ASCENT, 0, 8, 2, 1, 0);
}

function hhea(): Bytes {
  return new Bytes()
    .u32(0x00010000)
    .u16(ASCENT, -DESCENT, 0, ADVANCE, 0, 0, ADVANCE, 1, 0, 0, 0, 0, 0, 0, 0, GLYPHS);
}

function os2(): Bytes {
  return new Bytes()
    .u16(4, ADVANCE, 400, 5, 0)
    .u16(650, 600, 0, 75, 650, 600, 0, 350, 50, 300, 0)
    .u8(0, 0, 0, 0, 0, 0, 0, 0, 0, 0)
    .u32(1, 0, 0, 0)
    .text('NONE')
    .u16(0x40, 0x20, 0x27bf, ASCENT, -DESCENT, 0, ASCENT, DESCENT)
    .u32(1, 0)
    .u16(560, 560, 0, 0x20, 1);
}

/** Format 12: groups of characters that all have the same glyph would need format 13, so each is a group of its own. */
function cmap(): Bytes {
  const groups = RANGES.flatMap(([from, to]) =>
    Array.from({ length: to - from + 1 }, (_, nth) => from + nth).map((code) => ({
      code,
      glyph: code === 0x20 || code === 0xa0 ? 1 : 2,
    })),
  );
  const table = new Bytes().u16(0, 1, 3, 10).u32(12);
  table.u16(12, 0).u32(16 + groups.length * 12, 0, groups.length);
  for (const { code, glyph } of groups) table.u32(code, code, glyph);
  return table;
}

function name(): Bytes {
  const records = [
    [1, 'Blocks'],
    [2, 'Regular'],
    [4, 'Blocks'],
    [6, 'Blocks'],
  ] as const;
  const table = new Bytes().u16(0, records.length, 6 + records.length * 12);
  let at = 0;
  for (const [id, text] of records) {
    table.u16(3, 1, 0x409, id, text.length * 2, at);
    at += text.length * 2;
  }
  for (const [, text] of records) for (const letter of text) table.u16(letter.charCodeAt(0));
  return table;
}
