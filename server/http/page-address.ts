// Addresses of the page: which there are, and which one somebody meant whose letters, dots or slashes are not quite right.
import {
  CLASS_PAGES,
  classLink,
  clubLink,
  drillLink,
  PREPARE_PATH,
  tablePath,
} from '../../shared-engine/index.ts';
import { parseCode } from '../room-code.ts';

/** A letter for a table, a class or a published drill, or a word for a club's page, what should be its code, and a page of a class; what stands behind them does not count. */
const LINK = /^\/+(t|c|d|club)\/+([^/]+)(?:\/+([a-z-]+)[^a-z-]*)?\/*$/i;
const PREPARE = /^\/+lead[^a-z-]*$/i;

/**
 * As links are typed and pasted: capitals, a slash or a full stop behind the link, blanks or dashes within the code.
 * `path` is as it came, without a query. Null where it leads to no page.
 */
export function meantPath(path: string): string | null {
  const text = decoded(path);
  if (text === null) return null;
  if (PREPARE.test(text)) return PREPARE_PATH;
  const [, letter, typed = '', page] = LINK.exec(text) ?? [];
  const code = parseCode(typed.replace(/[^0-9a-z]/gi, ''));
  if (letter === undefined || code === null) return null;
  if (letter.toLowerCase() === 't') return page === undefined ? tablePath(code) : null;
  if (letter.toLowerCase() === 'd') return page === undefined ? drillLink(code) : null;
  if (letter.toLowerCase() === 'club') return page === undefined ? clubLink(code) : null;
  if (page === undefined) return classLink(code);
  const known = CLASS_PAGES.find((one) => one === page.toLowerCase());
  return known === undefined ? null : classLink(code, known);
}

function decoded(path: string): string | null {
  try {
    return decodeURIComponent(path);
  } catch {
    return null;
  }
}
