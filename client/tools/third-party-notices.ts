// The license texts of all packages that ship with the server or inside the page, as one text file of the build.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import type { Plugin } from 'vite';

const ROOT = path.resolve(import.meta.dirname, '../..');
const FILE_NAME = 'third-party-notices.txt';

/** Compiled into the WebAssembly module, which holds parts of its standard library. */
const COMPILED_IN = ['node_modules/assemblyscript'];

interface Lock {
  readonly packages: Readonly<Record<string, { readonly dev?: boolean; readonly devOptional?: boolean }>>;
}

interface Manifest {
  readonly name: string;
  readonly version: string;
  readonly license?: string;
}

/** Folders of the packages that the server needs to run and that are installed, relative to the project. */
export function productionFolders(): string[] {
  const { packages }: Lock = JSON.parse(readFileSync(path.join(ROOT, 'package-lock.json'), 'utf8'));
  return Object.entries(packages)
    .filter(([folder, { dev, devOptional }]) => folder !== '' && !dev && !devOptional)
    .map(([folder]) => folder)
    .filter((folder) => existsSync(path.join(ROOT, folder, 'package.json')));
}

/** Folder of the package that a bundled module belongs to, relative to the project; null for the project's own. */
function packageFolder(module: string): string | null {
  return (
    /^.*(node_modules\/(?:@[^/]+\/)?[^/]+)\//.exec(path.relative(ROOT, module))?.[0].slice(0, -1) ?? null
  );
}

/** One section for each package and version, sorted by name. */
function noticesFor(folders: Iterable<string>): string {
  const sections = [...new Set(folders)].map((folder) => {
    const home = path.join(ROOT, folder);
    const manifest: Manifest = JSON.parse(readFileSync(path.join(home, 'package.json'), 'utf8'));
    const { name, version, license = 'see below' } = manifest;
    return `${name} ${version}\nLicense: ${license}\n\n${licenseText(home)}\n`;
  });
  const rule = `\n${'-'.repeat(80)}\n\n`;
  const head = 'Quadrille ships with the following packages, each under its own license.\n';
  return [head, ...[...new Set(sections)].sort()].join(rule);
}

/** The license files of a package, or else what its read-me says under that heading. */
function licenseText(home: string): string {
  const read = (pattern: RegExp) =>
    readdirSync(home)
      .filter((file) => pattern.test(file))
      .map((file) => readFileSync(path.join(home, file), 'utf8').trim());
  const files = read(/^(licen[cs]e|copying|notice)\b/i);
  if (files.length > 0) return files.join('\n\n');
  const section = /^#*\s*licen[cs]e\b.*\n([\s\S]*?)(?=^#|(?![\s\S]))/im.exec(
    read(/^readme\b/i).join('\n'),
  )?.[1];
  return section?.trim() ?? 'The package carries no license text of its own.';
}

/** The plugin for the page's build and the one for its workers, whose bundles are made apart. */
export function thirdPartyNotices(): { readonly page: Plugin; readonly worker: () => Plugin } {
  const bundled = new Set<string>();
  const collect = (modules: Iterable<string>) => {
    for (const module of modules) {
      const folder = packageFolder(module);
      if (folder !== null) bundled.add(folder);
    }
  };
  return {
    page: {
      name: 'third-party-notices',
      apply: 'build',
      generateBundle(_, bundle) {
        for (const chunk of Object.values(bundle)) if (chunk.type === 'chunk') collect(chunk.moduleIds);
        const source = noticesFor([...productionFolders(), ...COMPILED_IN, ...bundled]);
        this.emitFile({ type: 'asset', fileName: FILE_NAME, source });
      },
    },
    worker: () => ({
      name: 'packages-of-workers',
      generateBundle(_, bundle) {
        for (const chunk of Object.values(bundle)) if (chunk.type === 'chunk') collect(chunk.moduleIds);
      },
    }),
  };
}
