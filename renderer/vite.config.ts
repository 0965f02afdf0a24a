import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';

// The page as files that the desk serves itself: nothing inline, so that the page's security policy can be strict.
export default defineConfig({
  root: fileURLToPath(new URL('.', import.meta.url)),
  cacheDir: '../node_modules/.cache/vite-page',
  build: {
    outDir: '../dist/renderer',
    emptyOutDir: true,
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    target: 'chrome120',
  },
});
