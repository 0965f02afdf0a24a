import { defineConfig } from 'vite';

// The page as files that the desk serves itself: nothing inline, so that the page's security policy can be strict.
// Paths are from this folder.
/** The build of the page; nothing of it reaches for a network. */
export default defineConfig({
  cacheDir: '../node_modules/.cache/vite-page',
  build: {
    outDir: '../dist/renderer',
    emptyOutDir: true,
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    target: 'chrome123',
  },
});
