import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { svelte } from '@sveltejs/vite-plugin-svelte';
import type { Plugin } from 'vite';
import { defineConfig } from 'vitest/config';

/** sw.js beside the page, told which files the page is made of. */
function serviceWorker(): Plugin {
  return {
    name: 'service-worker',
    apply: 'build',
    generateBundle(_, bundle) {
      const files = ['/', '/mark.svg', '/manifest.webmanifest', ...Object.keys(bundle).filter((name) => name !== 'index.html').map((name) => `/${name}`)].sort();
      const stamp = createHash('sha256').update(JSON.stringify([files, readFileSync('index.html', 'utf8')])).digest('hex').slice(0, 12);
      const source = readFileSync('worker/sw.js', 'utf8').replace('__FILES__', JSON.stringify(files)).replace('__STAMP__', stamp);
      this.emitFile({ type: 'asset', fileName: 'sw.js', source });
    },
  };
}

export default defineConfig({
  plugins: [svelte(), serviceWorker()],
  build: {
    outDir: '../build/web',
    emptyOutDir: true,
    target: 'es2022',
    // A style or a script inside the page would be kept out by the server's content security policy.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    reportCompressedSize: false,
    rolldownOptions: { checks: { pluginTimings: false } },
  },
  server: { proxy: { '/api': process.env['FLATWISE_SERVER'] ?? 'http://127.0.0.1:7311' } },
  test: { include: ['src/**/*.test.ts'], environment: 'node' },
});
