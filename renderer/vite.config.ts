import path from 'node:path';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

export default defineConfig({
  root: import.meta.dirname,
  base: './',
  plugins: [react()],
  build: {
    outDir: path.join(import.meta.dirname, '../dist/renderer'),
    emptyOutDir: true,
    target: 'es2023',
    // The content security policy allows only files of the program's own origin: nothing may be inlined as data.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    // The figure's drawing library is the one large chunk; it is loaded where a figure is shown only.
    chunkSizeWarningLimit: 700,
  },
});
