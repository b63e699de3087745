// Checks an unknown value before it is parsed as a drill: its size, depth and version, and names that could do harm.
import { DRILL_FORMAT } from './format.ts';
import { type DrillProblem, drillProblem } from './problem.ts';

const MAX_VALUES = 30_000;
const MAX_DEPTH = 8;

/** Why this value, as JSON.parse returned it, is not parsed at all; null where it may be. */
export function boundsProblem(json: unknown): DrillProblem | null {
  let values = 0;
  let layer: unknown[] = [json];
  for (let depth = 0; layer.length > 0; depth++) {
    values += layer.length;
    if (depth > MAX_DEPTH || values > MAX_VALUES) {
      const words = 'the file is too large or nested too deeply; a drill has at most 60 deals.';
      return drillProblem('too-large', null, words);
    }
    const next: unknown[] = [];
    for (const value of layer) {
      if (typeof value !== 'object' || value === null) continue;
      if (Object.hasOwn(value, '__proto__')) {
        return drillProblem('unsafe-name', null, '"__proto__" is not allowed; remove it.');
      }
      for (const child of Object.values(value)) {
        // The limit is checked while a layer grows, so that a huge one is never copied as a whole.
        if (next.push(child) + values > MAX_VALUES) break;
      }
    }
    layer = next;
  }
  return versionProblem(json);
}

function versionProblem(json: unknown): DrillProblem | null {
  if (typeof json !== 'object' || json === null || !('format' in json)) return null;
  const { format } = json;
  const version = typeof format === 'string' && /^quadrille-drill\/(\d{1,9})$/.exec(format)?.[1];
  if (!version || format === DRILL_FORMAT) return null;
  const words = `the file uses version ${version} of the drill format, but this program reads version 1. Save it as version 1 or use a newer program.`;
  return drillProblem('unknown-version', null, words);
}
