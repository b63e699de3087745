// Finds the benchmarks and proofs by their file names, so that a new one needs no list to be edited.
import { readdirSync } from 'node:fs';

/** Names of the modules in a folder, sorted. */
export function moduleNames(folder: URL): string[] {
  return readdirSync(folder)
    .filter((file) => file.endsWith('.ts'))
    .map((file) => file.slice(0, -3))
    .sort();
}

/** The export `key` of the module `name`. The caller vouches for its type: the folder holds nothing else. */
export async function loadModule<T>(folder: URL, name: string, key: string): Promise<T> {
  const module: Record<string, T> = await import(new URL(`${name}.ts`, folder).href);
  const found = module[key];
  if (found === undefined) throw new Error(`${name}.ts exports no "${key}".`);
  return found;
}
