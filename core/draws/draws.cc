#include "core/draws/draws.h"

#include "core/draws/transforms.h"

namespace flatwise::draws {

std::uint64_t Stream::next() {
  if (has_word_) {
    has_word_ = false;
    return spare_word_;
  }
  const Words words = philox(place_);
  if (++place_.counter[0] == 0) ++place_.counter[1];
  spare_word_ = words[2] | std::uint64_t{words[3]} << 32U;
  has_word_ = true;
  return words[0] | std::uint64_t{words[1]} << 32U;
}

double Stream::uniform() { return uniform_of(next()); }

double Stream::normal() {
  if (has_normal_) {
    has_normal_ = false;
    return spare_normal_;
  }
  const std::uint64_t radius = next();
  const TwoNormals two = normals_of(radius, next());
  spare_normal_ = two.second;
  has_normal_ = true;
  return two.first;
}

void fill_uniforms(Stream& stream, std::span<double> values) {
  for (double& value : values) value = stream.uniform();
}

void fill_normals(Stream& stream, std::span<double> values) {
  for (double& value : values) value = stream.normal();
}

}  // namespace flatwise::draws
