// Whether the built page is that of the source: what is measured or shown of an older one misleads.
import { existsSync, readdirSync, statSync } from 'node:fs';
import path from 'node:path';

const ROOT = path.resolve(import.meta.dirname, '../..');

/** What a page is built from; the tools beside it and the pictures of the README are not part of it. */
const SOURCE = /^(?!(?:tools|pictures)[\\/]).*\.(tsx?|css|html|json|js|mjs|png|svg|webmanifest)$/;

export function requireBuiltPage(): void {
  const folders = [path.join(ROOT, 'client'), path.join(ROOT, 'shared-engine')];
  const problem = builtPageProblem(path.join(ROOT, 'dist', 'client', 'index.html'), folders);
  if (problem !== null) throw new Error(problem);
}

/** Null where the page is newer than every file that it is built from. */
export function builtPageProblem(page: string, folders: readonly string[]): string | null {
  if (!existsSync(page)) return 'There is no built page; run `npm run build` first.';
  const { mtimeMs } = statSync(page);
  const newer = folders.flatMap((folder) =>
    readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((name) => SOURCE.test(name))
      .map((name) => path.join(folder, name))
      .filter((file) => statSync(file).mtimeMs > mtimeMs),
  );
  return newer.length > 0
    ? `The built page is older than ${path.relative(ROOT, newer[0]!)}; run \`npm run build\` first.`
    : null;
}
