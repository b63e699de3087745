// The address under which phones reach this server, where it is not the one that this browser has open.
import type { TextStorage } from './browser-storage.ts';

const KEY = 'public-address';

/** Names of a computer that mean itself, whoever asks. */
const OWN_NAMES = /^(localhost|.*\.localhost|127(\.\d{1,3}){3}|\[::1\]|0\.0\.0\.0)$/;

/** The origin that a text names, as in `http://192.168.0.12:8080`; null where it names none that another device can open. */
export function publicOrigin(text: string): string | null {
  const typed = text.trim();
  try {
    const { protocol, hostname, origin } = new URL(
      /^[a-z][a-z0-9+.-]*:\/\//i.test(typed) ? typed : `http://${typed}`,
    );
    return /^https?:$/.test(protocol) && !OWN_NAMES.test(hostname) && hostname !== '' ? origin : null;
  } catch {
    return null;
  }
}

export interface KnownAddresses {
  /** Of this page. */
  readonly own: string;
  /** As the operator of the server has set it; null where nobody has. */
  readonly server: string | null;
}

/**
 * What a phone can open: the address that the operator set, or else the one set in this browser, or else the one of this
 * page; null where that leads nowhere else.
 */
export function reachableOrigin(storage: TextStorage, { own, server }: KnownAddresses): string | null {
  return publicOrigin(server ?? '') ?? publicOrigin(storage.read(KEY) ?? '') ?? publicOrigin(own);
}

/** False where the text is no such address; an empty one takes the setting back. */
export function setPublicAddress(storage: TextStorage, text: string): boolean {
  if (text.trim() === '') {
    storage.remove(KEY);
    return true;
  }
  const origin = publicOrigin(text);
  if (origin !== null) storage.write(KEY, origin);
  return origin !== null;
}
