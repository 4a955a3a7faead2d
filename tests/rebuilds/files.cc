#include "tests/rebuilds/files.h"

#include "definition/read.h"
#include "job/judge.h"

namespace rebuilds {

std::optional<Files> files_of(const Rebuild& rebuild) {
  Texts texts = texts_of(rebuild);
  const auto shaft = flatwise::definition::read_shaft(texts.shaft, "shaft.toml");
  const auto shop = flatwise::definition::read_workshop(texts.workshop, "workshop.toml");
  if (!shaft || !shop) return std::nullopt;
  const auto bench_of = [&] {
    return flatwise::definition::read_bench(texts.readings, "readings.toml", *shaft, *shop,
                                            flatwise::job::question_ids());
  };
  auto bench = bench_of();
  const bool refused = !bench;
  for (const Mistake& m : rebuild.mistakes) {
    const std::size_t at = m.typed.empty() ? std::string::npos : texts.readings.find("\"" + m.typed + "\"");
    if (bench || at == std::string::npos) continue;
    texts.readings.replace(at + 1, m.typed.size(), m.right);
    bench = bench_of();
  }
  if (!bench) return std::nullopt;
  return Files{texts, *shaft, *shop, *bench, refused};
}

}  // namespace rebuilds
