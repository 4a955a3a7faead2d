import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  plugins: [svelte()],
  build: {
    outDir: '../build/web',
    emptyOutDir: true,
    target: 'es2022',
    // A style or a script inside the page would be kept out by the server's content security policy.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    reportCompressedSize: false,
  },
  server: { proxy: { '/api': process.env['FLATWISE_SERVER'] ?? 'http://127.0.0.1:7311' } },
  test: { include: ['src/**/*.test.ts'], environment: 'node' },
});
