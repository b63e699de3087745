// A page that draws the same random bytes in every run, and with them the same deals.

/** To be run in the page before its own script. */
export function seedRandomBytes(): void {
  let state = 1;
  crypto.getRandomValues = (bytes) => {
    if (!(bytes instanceof Uint8Array)) throw new Error('The page draws bytes.');
    // A generator of Park and Miller (1988), good enough to tell one seed from the next.
    for (let place = 0; place < bytes.length; place++) {
      state = (state * 48271) % 2147483647;
      bytes[place] = state % 256;
    }
    return bytes;
  };
}
