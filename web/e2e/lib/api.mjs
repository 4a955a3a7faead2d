// api.mjs: what another program tells the record, past the page.
let made = 0;

/** A new id as a device makes it: RFC 9562 UUID, version 7. */
export function freshId() {
  const time = Date.now().toString(16).padStart(12, '0');
  made = (made + 1) % 0x1000;
  const rest = Math.floor(Math.random() * 2 ** 47).toString(16).padStart(12, '0');
  return `${time.slice(0, 8)}-${time.slice(8)}-7${made.toString(16).padStart(3, '0')}-8000-${rest}`;
}

/** The reply as it is: its status and, where there is one, its JSON. */
export async function send(server, path, body) {
  const reply = await fetch(server.base + path, { method: 'POST', headers: { 'Content-Type': 'application/json', Origin: server.base }, body: JSON.stringify(body) });
  return { status: reply.status, json: await reply.json().catch(() => undefined) };
}

/** The same where nothing else than 'done' will do. */
export async function put(server, path, body) {
  const { status, json } = await send(server, path, body);
  if (status >= 300) throw new Error(`${path}: ${status} ${JSON.stringify(json)}`);
  return json;
}

/** Bodies as entries behind all that is there. `on`: the device. */
export async function tell(server, job, by, bodies, on = 'another program') {
  let follows = (await server.entries(job).catch(() => [])).at(-1)?.id ?? null;
  const entries = bodies.map((body) => {
    const entry = { id: freshId(), by, on, at: new Date().toISOString(), follows, corrects: [], body };
    follows = entry.id;
    return entry;
  });
  return send(server, `/api/jobs/${job}/entries`, { entries });
}
