// The notices that the build places beside the page, against the packages that ship with server and page.
import { existsSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { productionFolders } from '../../client/tools/third-party-notices.ts';

const root = new URL('../../', import.meta.url);
const notices = readFileSync(new URL('dist/client/third-party-notices.txt', root), 'utf8');

function manifestAt(folder: string): { readonly name: string; readonly version: string } {
  return JSON.parse(readFileSync(new URL(`${folder}/package.json`, root), 'utf8'));
}

function hasNotice(folder: string): boolean {
  const { name, version } = manifestAt(folder);
  return notices.includes(`\n${name} ${version}\nLicense: `);
}

test('every package that the server needs to run has its license in the built third-party notices', () => {
  const { dependencies }: { dependencies: Record<string, string> } = JSON.parse(
    readFileSync(new URL('package.json', root), 'utf8'),
  );
  const folders = productionFolders();
  expect(folders).toEqual(
    expect.arrayContaining(Object.keys(dependencies).map((name) => `node_modules/${name}`)),
  );
  expect(folders.filter((folder) => !hasNotice(folder))).toEqual([]);
});

test('every package bundled into the page or the WebAssembly module has its license in the third-party notices', () => {
  const bundled = [
    'preact',
    '@preact/signals',
    '@preact/signals-core',
    'qrcode-generator',
    'idb',
    'assemblyscript',
  ];
  expect(bundled.filter((name) => !hasNotice(`node_modules/${name}`))).toEqual([]);
});

test('packages that only build or test the product are not in the third-party notices', () => {
  const tools = ['node_modules/vitest', 'node_modules/typescript', 'node_modules/playwright-core'];
  expect(tools.filter((folder) => existsSync(new URL(folder, root)) && hasNotice(folder))).toEqual([]);
});
