// The one look of all screens: colors, spaces, sizes of type and corners stand in one file and nowhere else.
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';

const CLIENT = path.resolve(import.meta.dirname, '../../client');
const TOKENS = path.join('ui', 'tokens.css');

const read = (file: string) => readFileSync(path.join(CLIENT, file), 'utf8');
const files = readdirSync(CLIENT, { recursive: true, encoding: 'utf8' });
const tokens = withoutComments(read(TOKENS));
const sheets = files
  .filter((file) => file.endsWith('.css') && file !== TOKENS)
  .map((file) => ({ file, text: withoutComments(read(file)) }));
const components = files
  .filter((file) => /\.(tsx?|html)$/.test(file))
  .map(read)
  .join('\n');

/** What a token must be named for. Widths, heights, places and borders belong to one thing each and are no tokens. */
const TOKEN_PROPERTIES = /^(font|font-size|(margin|padding)(-\w+)*|(row-|column-)?gap|border(-\w+)*-radius)$/;
/** Lengths of their own; percent, em and the units of pages and containers measure what stands around. */
const LENGTH = /\d(rem|px|pt)\b/;
const COLOR = /#[0-9a-f]{3,8}\b|\b(rgb|hsl|lab|lch|oklab|oklch)a?\(/i;

interface Declaration {
  readonly property: string;
  readonly value: string;
}

describe('the tokens of the look', () => {
  it('no other style sheet has a length for type, space or corners, or a color, of its own', () => {
    const own = sheets.flatMap(({ file, text }) =>
      declarationsIn(text)
        .filter(({ property, value }) => isOfItsOwn(property, value))
        .map(({ property, value }) => `${file}: ${property}: ${value}`),
    );
    expect(own).toEqual([]);
  });

  it('the check finds a length of its own, and lets units through that measure what stands around', () => {
    const found = declarationsIn(
      '.a { gap: 3px 1em; padding: 2cqi; margin: calc(-1 * var(--space-16)); color: #fff; width: 3rem }',
    ).filter(({ property, value }) => isOfItsOwn(property, value));
    expect(found.map(({ property }) => property)).toEqual(['gap', 'color']);
  });

  it('each token is used, and nothing asks for one that does not exist', () => {
    const everything = [tokens, ...sheets.map(({ text }) => text)].join('\n');
    const asked = new Set([...everything.matchAll(/var\((--[\w-]+)/g)].map(([, name]) => name!));
    const defined = new Set([...everything.matchAll(/(--[\w-]+)\s*:/g)].map(([, name]) => name!));
    expect([...asked].filter((name) => !defined.has(name))).toEqual([]);
    expect([...defined].filter((name) => !asked.has(name))).toEqual([]);
  });

  it('the bar of the browser has the color of the page, by day and in the dark', () => {
    const papers = [...tokens.matchAll(/--paper:\s*(#\w+)/g)].map(([, color]) => color);
    const bars = [...read('index.html').matchAll(/name="theme-color" content="(#\w+)"/g)].map(
      ([, color]) => color,
    );
    expect(bars).toEqual(papers);
    expect(JSON.parse(read('public/manifest.webmanifest'))).toMatchObject({ background_color: papers[0] });
  });
});

describe('the names of classes', () => {
  it('no class gets its plain look in two style sheets', () => {
    const homes = new Map<string, string[]>();
    for (const { file, text } of sheets)
      for (const name of new Set(plainClassesIn(text))) homes.set(name, [...(homes.get(name) ?? []), file]);
    expect([...homes].filter(([, files]) => files.length > 1)).toEqual([]);
  });

  it('each class of a style sheet is one that some component names', () => {
    const words = new Set(components.match(/[a-z][\w-]*/g));
    // `at-${place}` names all classes that begin so.
    const isNamed = (name: string) => words.has(name) || words.has(name.replace(/-[^-]*$/, '-'));
    const unused = sheets.flatMap(({ file, text }) =>
      [...text.matchAll(/\.([a-z][\w-]*)/gi)]
        .map(([, name]) => name!)
        .filter((name) => !isNamed(name))
        .map((name) => `${file}: .${name}`),
    );
    expect(unused).toEqual([]);
  });
});

function withoutComments(text: string): string {
  return text.replace(/\/\*[\s\S]*?\*\//g, '');
}

function declarationsIn(text: string): Declaration[] {
  return [...text.matchAll(/([a-z-]+)\s*:\s*([^;{}]+)(?=[;}])/g)].map(([, property, value]) => ({
    property: property!,
    value: value!.trim(),
  }));
}

function isOfItsOwn(property: string, value: string): boolean {
  return COLOR.test(value) || (TOKEN_PROPERTIES.test(property) && LENGTH.test(value));
}

/** Classes that stand alone before a block outside every `@media` and `@container`. */
function plainClassesIn(text: string): string[] {
  const found: string[] = [];
  let depth = 0;
  for (const [, before, brace] of text.matchAll(/([^{}]*)([{}])/g)) {
    if (brace === '{' && depth === 0)
      for (const one of before!.split(',')) {
        const name = /^\.([\w-]+)$/.exec(one.split(';').at(-1)!.trim())?.[1];
        if (name) found.push(name);
      }
    depth += brace === '{' ? 1 : -1;
  }
  return found;
}
