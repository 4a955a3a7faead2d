// flatwise.mjs: loads the module and speaks to it in strings. Works in node and in a page: give it the bytes.
//
//   const core = await load(bytes);
//   core.figure('press-force', ['interference=20 µm'])   // the working as an object, or {problems: [...]}
//   core.catalogue()

const kNotSupported = 52; // ENOSYS of WASI: the core asks the system for nothing; its library only links these.

export async function load(bytes) {
  const module = await WebAssembly.compile(bytes);
  const imports = {};
  for (const { module: from, name } of WebAssembly.Module.imports(module)) {
    imports[from] ??= {};
    imports[from][name] = () => kNotSupported;
  }
  const { exports } = await WebAssembly.instantiate(module, imports);
  exports._initialize();
  return {
    catalogue: (units = 0) => JSON.parse(read(exports, exports.flatwise_catalogue(units))).figures,
    figure: (name, inputs, units = 0) => JSON.parse(ask(exports, [name, ...inputs].join('\n'), units)),
    exports,
  };
}

function ask(exports, text, units) {
  const bytes = new TextEncoder().encode(text);
  const place = exports.flatwise_allocate(bytes.length);
  if (place === 0) throw new Error('out of memory');
  new Uint8Array(exports.memory.buffer, place, bytes.length).set(bytes);
  const answer = exports.flatwise_figure(place, bytes.length, units);
  exports.flatwise_free(place);
  return read(exports, answer);
}

// The memory may have grown in the call: views are made anew after it.
function read(exports, answer) {
  if (answer === 0) throw new Error('out of memory');
  const memory = exports.memory.buffer;
  const length = new DataView(memory).getUint32(answer, true);
  const text = new TextDecoder('utf-8', { fatal: true }).decode(new Uint8Array(memory, answer + 4, length));
  exports.flatwise_free(answer);
  return text;
}
