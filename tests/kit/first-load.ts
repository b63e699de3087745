// How many bytes of script a page takes before somebody sits at a table, from the list of files of the build.
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { gzipSync } from 'node:zlib';
import { z } from 'zod';
import { requireBuiltPage } from '../../client/tools/built-page.ts';

const BUILT = path.resolve(import.meta.dirname, '../../dist/client');

/**
 * Scripts up to a rack on the screen: those that the first document names, and the tables' own with all they import.
 * What is fetched on a wish (help, settings, card, camera code, playing in the page) is not part of it.
 */
export function firstLoadBytes(): { readonly front: number; readonly all: number } {
  requireBuiltPage();
  const files = builtFilesSchema.parse(JSON.parse(readFileSync(path.join(BUILT, 'files.json'), 'utf8')));
  const reached = (name: string, known: ReadonlySet<string> = new Set()): ReadonlySet<string> => {
    if (known.has(name)) return known;
    const imports = files[name]?.imports ?? [];
    return imports.reduce<ReadonlySet<string>>(
      (sofar, next) => reached(next, sofar),
      new Set([...known, name]),
    );
  };
  const size = (names: ReadonlySet<string>) =>
    [...names]
      .map((name) => files[name]?.file ?? '')
      .filter((file) => file.endsWith('.js'))
      .reduce((sum, file) => sum + gzipSync(readFileSync(path.join(BUILT, file))).length, 0);
  const document = readFileSync(path.join(BUILT, 'index.html'), 'utf8');
  const script = /<script [^>]*src="\/([^"]+)"/.exec(document)?.[1];
  const entry = Object.keys(files).find((name) => files[name]?.file === script);
  if (entry === undefined) throw new Error('The document names no script of the build.');
  const front = reached(entry);
  const rooms = Object.keys(files).find(
    (name) => /rooms[-.]/.test(name) && files[name]?.file.endsWith('.js'),
  );
  if (!rooms) throw new Error('The build has no part for the tables; has it been renamed?');
  return { front: size(front), all: size(reached(rooms, front)) };
}

const builtFilesSchema = z.record(
  z.string(),
  z.object({ file: z.string(), imports: z.array(z.string()).optional() }),
);
