// A teacher's key as a link and as a file. The secret stands behind the `#`, which no server is sent.
import { classLink, teacherLink } from '../../../shared-engine/index.ts';

const FORMAT = 'quadrille-teacher-key/1';

/** Behind the `#` of the page's address; null where there is none. */
export function keyIn(hash: string): string | null {
  return /^#key=([\w-]{20,100})$/.exec(hash)?.[1] ?? null;
}

/** The key in the address of this page, which is taken out of it: whoever looks at the screen or the history finds none. */
export function takeKey(place: Location, history: History): string | null {
  const key = keyIn(place.hash);
  if (key !== null) history.replaceState(history.state, '', `${place.pathname}${place.search}`);
  return key;
}

export function keyLink(origin: string, code: string, key: string): string {
  return teacherLink(`${origin}${classLink(code)}`, key);
}

export function keyFileText(title: string, link: string): string {
  return `${JSON.stringify({ format: FORMAT, class: title, link }, null, 2)}\n`;
}

/** The path that the link in this file leads to, at whichever address the server is reached; null for another file. */
export function pathInKeyFile(text: string): string | null {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    return null;
  }
  if (typeof json !== 'object' || json === null || !('format' in json) || json.format !== FORMAT) return null;
  if (!('link' in json) || typeof json.link !== 'string') return null;
  const [, path] = /^https?:\/\/[^/]+(\/(?:[cd]|club)\/[^#?]+#key=[\w-]{20,100})$/.exec(json.link) ?? [];
  return path ?? null;
}
