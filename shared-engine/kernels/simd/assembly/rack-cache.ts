// Results cached by rack while one sampled deal lasts: most alternatives leave most racks as they are.

/** The address behind the entry of this rack's 36 bytes, among `count` entries of `size` bytes, or 0. */
export function findRack(entries: usize, count: u32, size: usize, rack: usize): usize {
  const first = v128.load(rack);
  const second = v128.load(rack, 16);
  const third = load<u32>(rack, 32);
  for (let nth: u32 = 0, at = entries; nth < count; nth++, at += size) {
    const differing = v128.or(v128.xor(v128.load(at), first), v128.xor(v128.load(at, 16), second));
    if (!v128.any_true(differing) && load<u32>(at, 32) === third) return at + 36;
  }
  return 0;
}

/** Writes a rack to an entry; the address behind it. */
export function cacheRack(entry: usize, rack: usize): usize {
  v128.store(entry, v128.load(rack));
  v128.store(entry, v128.load(rack, 16), 16);
  store<u32>(entry, load<u32>(rack, 32), 32);
  return entry + 36;
}
