// flatwise_wasm.cc: the core for the page, as a WebAssembly module with a small C interface. Text goes in and out as
// UTF-8 in the module's memory: the caller allocates, writes, calls, reads the answer, frees both.
//
//   answer = flatwise_figure(text, length, units)   text: "press-force\ninterference=20 µm\n..."; units: 0 metric, 1 inch
//   answer = flatwise_catalogue(units)
//
// An answer points to its length (four bytes, little-endian) and then that many bytes of JSON, the same that the shell
// prints with --json: a working, or {"problems": [...]}.
#include <cstdint>
#include <cstdlib>
#include <cstring>
#include <nlohmann/json.hpp>
#include <string>
#include <string_view>
#include <vector>

#include "core/doubt/doubt.h"
#include "core/figures/catalogue.h"
#include "wire/json.h"

#ifdef __wasm__
#define FLATWISE_EXPORT(name) extern "C" __attribute__((export_name(#name)))
// Debian's builtins ask for these two as soon as 128-bit numbers are divided.
extern "C" {
extern const std::uintptr_t __stack_chk_guard;
const std::uintptr_t __stack_chk_guard = 0x5f1a7b3d;
[[noreturn]] void __stack_chk_fail();
void __stack_chk_fail() { __builtin_trap(); }
}
#else
#define FLATWISE_EXPORT(name) extern "C"
#endif

namespace flatwise {
namespace {

Voice voice_of(std::int32_t units) {
  Voice voice;
  voice.units = units == 1 ? UnitSystem::inch : UnitSystem::metric;
  return voice;
}

void* answer_of(const std::string& text) {
  const auto length = static_cast<std::uint32_t>(text.size());
  auto* bytes = static_cast<unsigned char*>(std::malloc(sizeof length + text.size()));
  if (bytes == nullptr) return nullptr;
  std::memcpy(bytes, &length, sizeof length);
  std::memcpy(bytes + sizeof length, text.data(), text.size());
  return bytes;
}

std::vector<std::string> lines_of(std::string_view text) {
  std::vector<std::string> lines;
  while (!text.empty()) {
    const std::size_t end = text.find('\n');
    if (end != 0) lines.emplace_back(text.substr(0, end));
    text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
  }
  return lines;
}

std::string figure_json(std::string_view request, const Voice& voice) {
  std::vector<std::string> lines = lines_of(request);
  const std::string name = lines.empty() ? std::string{} : lines.front();
  const FigureSpec* spec = find_figure(name);
  if (spec == nullptr) {
    Args args{{"near", std::string{nearest_figure(name)}}};
    const std::vector<Problem> unknown{{Code{"figure.unknown"}, "figure", name, std::move(args), std::nullopt}};
    return wire::problems_text(unknown, voice);
  }
  lines.erase(lines.begin());
  const Results<doubt::Doubted> answer = doubt::ask_with_doubt(*spec, lines);
  return answer ? wire::dump(wire::to_json(*answer, voice)) : wire::problems_text(answer.error(), voice);
}

std::string catalogue_json(const Voice& voice) {
  wire::Json list = wire::Json::array();
  for (const FigureSpec* spec : catalogue()) list.push_back(wire::to_json(*spec, voice));
  return wire::dump(wire::Json{{"figures", std::move(list)}});
}

}  // namespace
}  // namespace flatwise

FLATWISE_EXPORT(flatwise_allocate) void* flatwise_allocate(std::uint32_t size) { return std::malloc(size); }
FLATWISE_EXPORT(flatwise_free) void flatwise_free(void* pointer) { std::free(pointer); }

FLATWISE_EXPORT(flatwise_figure) void* flatwise_figure(const char* text, std::uint32_t length, std::int32_t units) {
  return flatwise::answer_of(flatwise::figure_json({text, length}, flatwise::voice_of(units)));
}

FLATWISE_EXPORT(flatwise_catalogue) void* flatwise_catalogue(std::int32_t units) {
  return flatwise::answer_of(flatwise::catalogue_json(flatwise::voice_of(units)));
}
