// How the page is built and, in development, served: static files only, so that a strict content policy can hold.
import { defineConfig } from 'vite';

const server = process.env.QUADRILLE_SERVER ?? 'http://127.0.0.1:8080';

export default defineConfig({
  root: import.meta.dirname,
  build: {
    outDir: '../dist/client',
    emptyOutDir: true,
    // Data URIs would need a wider content policy.
    assetsInlineLimit: 0,
    // The list of files that the page keeps for times without a network.
    manifest: 'files.json',
    modulePreload: { polyfill: false },
    target: 'es2022',
    rolldownOptions: {
      // The engine's modules only define things: what a page does not use at first is fetched when it does.
      treeshake: { moduleSideEffects: (id) => !id.includes('/shared-engine/') },
    },
  },
  server: { host: '127.0.0.1', proxy: { '/api': { target: server, ws: true } } },
});
