// The version of this server, as package.json says it.
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { z } from 'zod';

const described = z.object({ version: z.string() });

/** Of the nearest package.json above this file, for it lies deeper when the server is built. */
export const VERSION = described.parse(JSON.parse(readFileSync(above(import.meta.dirname), 'utf8'))).version;

function above(folder: string): string {
  const file = path.join(folder, 'package.json');
  const parent = path.dirname(folder);
  return existsSync(file) || parent === folder ? file : above(parent);
}
