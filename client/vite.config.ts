// How the page is built and, in development, served: static files only, so that a strict content policy can hold.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { brotliCompressSync, gzipSync } from 'node:zlib';
import { defineConfig, type Plugin } from 'vite';
import { thirdPartyNotices } from './tools/third-party-notices.ts';

const server = process.env.QUADRILLE_SERVER ?? 'http://127.0.0.1:8080';
const built = path.resolve(import.meta.dirname, '../dist/client');

/** Writes each text file a second and third time, packed, so that the server need not pack while people wait. */
function packed(): Plugin {
  return {
    name: 'packed',
    apply: 'build',
    writeBundle() {
      for (const file of readdirSync(built, { recursive: true, encoding: 'utf8' })) {
        if (!/\.(html|js|css|svg|webmanifest)$/.test(file)) continue;
        const text = readFileSync(path.join(built, file));
        writeFileSync(path.join(built, `${file}.br`), brotliCompressSync(text));
        writeFileSync(path.join(built, `${file}.gz`), gzipSync(text));
      }
    },
  };
}

// The engine's modules only define things: what a page does not use at first is fetched when it does.
const treeshake = { moduleSideEffects: (id: string) => !id.includes('/shared-engine/') };

/**
 * Each file is a request, so what is fetched together is one file: the front page, the tables, playing without the
 * server, what is practiced alone and the cards of one's own; a class is the fifth. A wish (help, settings, camera code) comes with the tables, being small.
 */
const codeSplitting = {
  groups: [
    { name: 'index', test: /rolldown.runtime|client[\\/]main|node_modules[\\/]@?preact[\\/]/, priority: 3 },
    {
      name: 'rooms',
      test: /client[\\/](app[\\/](rooms|settings-sheet|help-sheet)|ui[\\/]qr-code|table[\\/]sound-synth|cards[\\/]load-card)/,
      priority: 2,
    },
    {
      name: 'history',
      test: /client[\\/](app[\\/](practice|cards|own-tiles)-part|practice[\\/][\w-]+[\\/]|cards[\\/](own|editor|check)[\\/]|storage[\\/]history)|node_modules[\\/](idb|ts-fsrs)[\\/]/,
      priority: 2,
    },
    {
      name: 'practice',
      test: /client[\\/](practice|workers[\\/](?!card-reach|reach)|coach[\\/]coach-session|review[\\/]deal-check-result|room[\\/]commitment-words)|simd[\\/]built/,
      priority: 1,
    },
  ],
};

const notices = thirdPartyNotices();

export default defineConfig({
  root: import.meta.dirname,
  plugins: [notices.page, packed()],
  build: {
    outDir: built,
    emptyOutDir: true,
    // Data URIs would need a wider content policy.
    assetsInlineLimit: 0,
    // The list of files that the page caches for times without a network.
    manifest: 'files.json',
    modulePreload: { polyfill: false },
    target: 'es2022',
    cssCodeSplit: false,
    // Packing each file takes most of a build, and says nothing that needs a warning.
    rolldownOptions: { treeshake, output: { codeSplitting }, checks: { bundlerTimings: false } },
  },
  worker: { format: 'iife', plugins: () => [notices.worker()], rolldownOptions: { treeshake } },
  server: { host: '127.0.0.1', proxy: { '/api': { target: server, ws: true } } },
});
