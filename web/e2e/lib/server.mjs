// server.mjs: a server of our own on a free port, with a fresh folder that holds the invented demo.
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = join(dirname(fileURLToPath(import.meta.url)), '../../..');
export const build = process.env['FLATWISE_BUILD'] ?? join(root, 'build');
export const program = process.env['FLATWISE_PROGRAM'] ?? join(build, 'release/cli/flatwise');

const freePort = () => new Promise((found, failed) => {
  const probe = createServer().once('error', failed);
  probe.listen(0, '127.0.0.1', () => {
    const { port } = probe.address();
    probe.close(() => found(port));
  });
});
const pause = (ms) => new Promise((done) => setTimeout(done, ms));

export class Server {
  /** Made and answering. `webRoot`: the page from there, not the one compiled in; `demo`: the files the record is made from. */
  static async start({ webRoot = process.env['FLATWISE_WEB_ROOT'], demo = join(root, 'demo') } = {}) {
    const server = new Server();
    server.folder = mkdtempSync(join(tmpdir(), 'flatwise-page-'));
    server.data = join(server.folder, 'data');
    server.port = await freePort();
    server.base = `http://127.0.0.1:${server.port}`;
    Object.assign(server, { webRoot, demo });
    await server.run();
    return server;
  }
  async run() {
    const args = ['serve', '--data', this.data, '--port', String(this.port), '--demo', this.demo];
    if (this.webRoot) args.push('--web-root', this.webRoot);
    this.said = '';
    this.child = spawn(program, args, { stdio: ['ignore', 'pipe', 'pipe'] });
    const child = this.child;
    this.ended = new Promise((done) => child.once('exit', (code, signal) => done({ code, signal })));
    for (const stream of [child.stdout, child.stderr]) stream.on('data', (chunk) => (this.said += chunk));
    const until = Date.now() + 120_000;
    for (;;) {
      if (child.exitCode !== null || child.signalCode !== null) throw new Error(`the server ended: ${this.said}`);
      const reply = await fetch(`${this.base}/api/workshop`).catch(() => undefined);
      if (reply?.ok) return;
      if (Date.now() > until) throw new Error(`the server does not answer: ${this.said}`);
      await pause(50);
    }
  }
  /** As if the power had gone. */
  async kill() {
    this.child.kill('SIGKILL');
    await this.ended;
  }
  async stop() {
    this.child.kill('SIGTERM');
    const ended = await Promise.race([this.ended, pause(10_000)]);
    if (!ended) await this.kill();
    if (!process.env['FLATWISE_KEEP']) rmSync(this.folder, { recursive: true, force: true });
    return ended;
  }
  async get(path, as = 'json') {
    const reply = await fetch(`${this.base}${path}`);
    if (!reply.ok) throw new Error(`${path}: ${reply.status} ${await reply.text()}`);
    return as === 'json' ? reply.json() : as === 'bytes' ? Buffer.from(await reply.arrayBuffer()) : reply.text();
  }
  /** What the record of a job holds, oldest first. */
  async entries(job) {
    return (await this.get(`/api/jobs/${job}/entries`)).entries;
  }
}
