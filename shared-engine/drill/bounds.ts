// The first look at a drill from a stranger: how large, how deep, of which version, and no name that could harm.
import { DRILL_FORMAT } from './format.ts';
import { type DrillProblem, drillProblem } from './problem.ts';

const MAX_VALUES = 30_000;
const MAX_DEPTH = 8;

/** What forbids even reading this value, or null. Takes what JSON.parse gives. */
export function boundsProblem(json: unknown): DrillProblem | null {
  let values = 0;
  let layer: unknown[] = [json];
  for (let depth = 0; layer.length > 0; depth++) {
    values += layer.length;
    if (depth > MAX_DEPTH || values > MAX_VALUES) {
      const words = 'the file is too large or nested too deep; a drill has at most 60 deals.';
      return drillProblem('too-large', null, words);
    }
    const next: unknown[] = [];
    for (const value of layer) {
      if (typeof value !== 'object' || value === null) continue;
      if (Object.hasOwn(value, '__proto__')) {
        return drillProblem('unsafe-name', null, '"__proto__" is no name of the format; remove it.');
      }
      for (const child of Object.values(value)) {
        // The limit is looked at while a layer grows, so that a huge one is never copied in full.
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
  const words = `the file is of version ${version} of the drill format and this program reads version 1; save it again as version 1 or use a newer program.`;
  return drillProblem('unknown-version', null, words);
}
