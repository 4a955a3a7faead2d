// server.mjs: a stand-in for the server, for looking at screens: bench screens from a folder of JSON files, everything it is
// sent kept in memory. Never built in.
//   node dev/server.mjs FOLDER [PORT]      FOLDER holds *.json, each a BenchView; ../build/web is the page
import { createServer } from 'node:http';
import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { extname, join, resolve } from 'node:path';

const [folder = '.', port = '7399'] = process.argv.slice(2);
const page = resolve(import.meta.dirname, '../../build/web');
const types = { '.html': 'text/html', '.js': 'text/javascript', '.css': 'text/css', '.svg': 'image/svg+xml', '.woff2': 'font/woff2', '.webmanifest': 'application/manifest+json' };
const id = (n) => `00000000-0000-7000-8000-${String(n).padStart(12, '0')}`;
const screens = readdirSync(folder).filter((name) => name.endsWith('.json')).map((name) => [name, JSON.parse(readFileSync(join(folder, name), 'utf8'))]).filter(([, view]) => view.strip);
const entries = [];
const listeners = new Set();
let sequence = 0;
let refuse = 0;

const people = [['Bench 1', 'bench'], ['Bench 2', 'bench'], ['Lead', 'lead'], ['Owner', 'owner']].map(([name, role], i) => ({ id: id(900001 + i), name, role, active: true }));
const workshop = () => ({ name: 'Tarn Hollow Growers', invented: true, people, gauges: [], own_shafts: false, demo_job: id(700001) });
const strip = screens[0]?.[1].strip.list ?? { width: 186, height: 50, items: [] };
const shafts = ['nine, hexagon', 'five, hexagon'].map((name, i) => ({ id: id(800 + i), shaft: id(810 + i), version: 1, name, toml: '[shaft]\nname = "nine"\nspacer = 92\n', invented: true, strip }));
const stages = screens[0]?.[1].stages ?? [];
const board = () => ({ workshop: 'Tarn Hollow Growers', invented: true, head: '2 jobs, 1 stopped', rows: [['stopped', 'out', 'stopped'], ['waits', 'plain', 'waits'], ['goes on', 'plain', 'none'], ['ready', 'in', 'done']].map(([state, tone, flag], i) => ({
  job: id(700001 + i), number: String(31 + i), name: `Looseners ${2 + i}, long nine`, state, flag, tone, stages, strip, next: 'Turn half B of rotor 4 back one flat.', stage: 'timing', because: 'Stacking waits for it. 11 min.', due: 'due Thu', customer: 'Growers' })) });

const screen = (asked) => {
  const named = screens.filter(([, view]) => (!asked.has('stage') || view.stage === asked.get('stage')));
  const best = named.find(([, view]) => String(view.station) === asked.get('station')) ?? named[0] ?? screens[0];
  return best?.[1];
};
const answers = {
  '/api/workshop': workshop, '/api/people': () => ({ people }), '/api/board': board, '/api/shafts': () => ({ shafts }), '/api/customers': () => ({ customers: [{ id: id(1), name: 'Growers' }] }),
  '/api/machines': () => ({ machines: [{ id: id(800001), customer: id(1), name: 'Looseners 2', shaft: id(810) }] }), '/api/jobs': () => ({ jobs: [] }),
};
const body = (request) => new Promise((done) => { let text = ''; request.on('data', (part) => (text += part)); request.on('end', () => done(text)); });

createServer(async (request, reply) => {
  const url = new URL(request.url, 'http://x');
  const json = (status, value, type = 'application/json') => { reply.writeHead(status, { 'Content-Type': type }); reply.end(JSON.stringify(value)); };
  if (url.pathname === '/api/events') {
    reply.writeHead(200, { 'Content-Type': 'text/event-stream' });
    reply.write(': here\n\n');
    listeners.add(reply);
    request.on('close', () => listeners.delete(reply));
  } else if (request.method === 'POST' && url.pathname.endsWith('/entries')) {
    const sent = JSON.parse(await body(request));
    if (refuse-- > 0) return json(422, { type: 'x', title: 'Not possible', status: 422, problems: [{ code: 'c', field: 'diameter', given: '4 in', read: '4 in', allowed: '3.8 to 3.95 in', mend: 'Read it again.' }] }, 'application/problem+json');
    entries.push(...sent.entries.filter((one) => !entries.some((old) => old.id === one.id)));
    json(201, { saved: sent.entries.map((one, i) => ({ id: one.id, number: i, hash: '', fresh: true })), head: '', sequence: (sequence += 1) });
    for (const one of listeners) one.write(`id: ${sequence}\nevent: job\ndata: {"id":"${url.pathname.split('/')[3]}"}\n\n`);
  } else if (url.pathname === '/dev/entries') json(200, entries);
  else if (url.pathname === '/dev/refuse') { refuse = 1; json(200, {}); }
  else if (url.pathname === '/api/shafts/check') json(200, { problems: [{ code: 'x', field: 'spacer between rotors', given: '92', read: '92, with no unit', allowed: 'a length with its unit: "92 mm"', mend: 'Write "92 mm" or "92 in".', place: { file: '', line: 3, column: 10 } }], facts: [{ caption: 'Couple left over', value: '10.0 ft·lb' }], lines: [{ line: 2, number: 1, state: 'done' }, { line: 3, number: 4, state: 'wrong' }], strip: screens[0]?.[1].strip, name: 'nine' });
  else if (request.method === 'PUT') json(201, { hash: url.pathname.split('/').at(-1), bytes: 1 });
  else if (url.pathname.endsWith('/bench')) json(200, screen(url.searchParams));
  else if (/^\/api\/shafts\/./.test(url.pathname)) json(200, shafts[0]);
  else if (/^\/api\/machines\/./.test(url.pathname)) json(200, { id: id(800001), name: 'Looseners 2', customer: 'Growers', workshop: 'Tarn Hollow Growers', invented: true, facts: [{ caption: 'Hour meter', value: '2 104 h' }], drawing: strip, says: 'Long nine', stations: [], jobs: [{ job: id(700001), number: '31', day: '12 Feb', hours: '1 862 h', says: 'Rotor 3 renewed' }], blocks: [] });
  else if (answers[url.pathname]) json(200, answers[url.pathname]());
  else if (url.pathname.startsWith('/api/')) json(404, { type: 'x', title: 'Not there', status: 404 }, 'application/problem+json');
  else {
    const file = join(page, url.pathname);
    const there = url.pathname !== '/' && existsSync(file);
    reply.writeHead(200, { 'Content-Type': types[there ? extname(file) : '.html'] ?? 'text/plain', 'Content-Security-Policy': "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' blob: data:; font-src 'self'; connect-src 'self'; manifest-src 'self'; worker-src 'self'" });
    reply.end(readFileSync(there ? file : join(page, 'index.html')));
  }
}).listen(Number(port), '127.0.0.1', () => console.log(`http://127.0.0.1:${port}`));
