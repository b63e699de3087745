// Memory reserved once and never freed: an instance serves one card for as long as it lives.

let next: usize = (__heap_base + 63) & ~63;

/** The address of so many fresh zero bytes, a multiple of 64. */
export function reserve(bytes: u32): usize {
  const at = next;
  next = (at + bytes + 63) & ~63;
  const missing = <i32>((next + 0xffff) >>> 16) - memory.size();
  if (missing > 0) memory.grow(missing);
  return at;
}
