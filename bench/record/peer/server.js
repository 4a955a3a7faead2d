// The peer: the same three requests on the same database with fastify and better-sqlite3, as somebody writes it who knows them
// well: statements prepared once, replies by a schema (which compiles the writer of the JSON), no logging, a FULL commit for an
// entry.
//
//   node server.js FOLDER PORT
import Database from 'better-sqlite3';
import { createHash } from 'node:crypto';
import Fastify from 'fastify';

const [folder, port] = process.argv.slice(2);
const db = new Database(`${folder}/record.db`);
db.pragma('synchronous = full');
db.pragma('cache_size = -32000');
const workshop = db.prepare('select workshop from workshops').pluck().get();

const columns =
  'id, number, machine, shaft_version, present as stage, waiting, booked, changed, released, entries, head, due from jobs';
const one = db.prepare(`select ${columns} where workshop = ? and id = ?`);
const newest = db.prepare(
  `select ${columns} where workshop = ? and machine = ? order by booked desc, id desc limit 50`,
);

const text = { type: 'string' };
const properties = {
  id: text, number: text, machine: text, shaft_version: text, stage: text, waiting: text, booked: text, changed: text,
  released: { type: 'boolean' }, entries: { type: 'integer' }, head: text, due: text,
};
const card = { type: 'object', properties };

function shown(row) {
  row.booked = new Date(row.booked).toISOString();
  row.changed = new Date(row.changed).toISOString();
  row.released = row.released === 1;
  if (row.due === null) row.due = undefined;
  return row;
}

const app = Fastify({ logger: false });

app.get('/api/jobs/:id', { schema: { response: { 200: card } } }, (request, reply) => {
  const row = one.get(workshop, request.params.id);
  if (!row) return reply.code(404).send();
  reply.header('etag', `"${row.head}"`);
  reply.send(shown(row));
});

const list = { type: 'object', properties: { jobs: { type: 'array', items: card } } };
app.get('/api/machines/:id/jobs', { schema: { response: { 200: list } } }, (request, reply) => {
  reply.send({ jobs: newest.all(workshop, request.params.id).map(shown) });
});

// An entry: checked by a schema, numbered, chained by its hash, the row of the job and the list of changes brought along, one
// transaction. It knows no rule of a job and folds nothing: the least that a record of the same form asks for.
const job = db.prepare('select entries, head from jobs where workshop = ? and id = ?');
const twin = db.prepare('select number, hash from entries where workshop = ? and id = ?');
const put = db.prepare(`
  insert into entries (workshop, job, number, id, author, device, at, follows, corrects, kind, body, previous, hash)
  values (?, ?, ?, ?, ?, ?, ?, ?, '[]', ?, ?, ?, ?)`);
const moved = db.prepare('update jobs set changed = ?, entries = ?, head = ? where workshop = ? and id = ?');
const last = db.prepare('select coalesce(max(sequence), 0) from changes where workshop = ?').pluck();
const change = db.prepare("insert into changes values (?, ?, 'job', ?, ?)");
const take = db.transaction((id, entries) => {
  let { entries: number, head } = job.get(workshop, id);
  let sequence = last.get(workshop);
  const saved = [];
  for (const e of entries) {
    const known = twin.get(workshop, e.id);
    if (known) {
      saved.push({ id: e.id, ...known, fresh: false });
      continue;
    }
    const kind = e.body.kind, kept = JSON.stringify(e.body), at = Date.parse(e.at), before = head;
    number += 1;
    const whole = JSON.stringify({ at: e.at, before, body: e.body, by: e.by, id: e.id, job: id, kind, number, on: e.on });
    head = createHash('sha256').update(whole).digest('hex');
    put.run(workshop, id, number, e.id, e.by, e.on, at, e.follows ?? '', kind, kept, before, head);
    change.run(workshop, ++sequence, id, e.id);
    moved.run(at, number, head, workshop, id);
    saved.push({ id: e.id, number, hash: head, fresh: true });
  }
  return { saved, head, sequence };
});
const entry = {
  type: 'object',
  required: ['id', 'by', 'on', 'at', 'body'],
  properties: { id: text, by: text, on: text, at: text, follows: text, body: { type: 'object', required: ['kind'] } },
};
const sent = { type: 'object', required: ['entries'], properties: { entries: { type: 'array', items: entry } } };
app.post('/api/jobs/:id/entries', { schema: { body: sent } }, (request, reply) => {
  reply.code(201).send(take.immediate(request.params.id, request.body.entries));
});

await app.listen({ host: '127.0.0.1', port: Number(port) });
