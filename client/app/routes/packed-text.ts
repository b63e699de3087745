// A text packed into letters that a link takes behind the #: compressed, with a check sum and the number of the packing.

/** Of the packing; a link with another number is of a later version. */
const VERSION = '1';
/** Bytes that a text may unpack to: the largest card that is allowed takes a third of it. */
const MAX_BYTES = 2_000_000;

/** `1.` and the text, compressed. */
export async function packText(text: string): Promise<string> {
  const bytes = await through(new TextEncoder().encode(text), new CompressionStream('gzip'));
  return `${VERSION}.${base64Url(bytes)}`;
}

export type UnpackedText =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly why: 'foreign' | 'later' | 'torn' };

/** What comes into a link on its way through messages: breaks, and the end of a sentence or of brackets around it. */
const NOT_PACKED = /%20|\s|[.,;:!?)>\]"'”’]+$/gu;

/** Never throws. */
export async function unpackText(packed: string): Promise<UnpackedText> {
  const [, version, body] = /^(\d+)\.([\w-]+)$/.exec(packed.replace(NOT_PACKED, '')) ?? [];
  if (version === undefined || body === undefined) return { ok: false, why: 'foreign' };
  if (version !== VERSION) return { ok: false, why: 'later' };
  try {
    const bytes = await through(bytesOf(body), new DecompressionStream('gzip'));
    return { ok: true, text: new TextDecoder().decode(bytes) };
  } catch {
    return { ok: false, why: 'torn' };
  }
}

async function through(
  bytes: Uint8Array<ArrayBuffer>,
  pipe: GenericTransformStream,
): Promise<Uint8Array<ArrayBuffer>> {
  const reader = new Blob([bytes]).stream().pipeThrough<Uint8Array<ArrayBuffer>>(pipe).getReader();
  const parts: Uint8Array<ArrayBuffer>[] = [];
  let size = 0;
  for (let read = await reader.read(); !read.done; read = await reader.read()) {
    parts.push(read.value);
    size += read.value.length;
    // A few letters can unpack to gigabytes.
    if (size > MAX_BYTES) throw new Error('larger than any text that is packed');
  }
  return new Uint8Array(await new Blob(parts).arrayBuffer());
}

function base64Url(bytes: Uint8Array): string {
  const letters = Array.from(bytes, (byte) => String.fromCharCode(byte)).join('');
  return btoa(letters).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}

function bytesOf(letters: string): Uint8Array<ArrayBuffer> {
  const binary = atob(letters.replaceAll('-', '+').replaceAll('_', '/'));
  return Uint8Array.from(binary, (letter) => letter.charCodeAt(0));
}
