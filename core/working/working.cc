#include "core/working/working.h"

#include <algorithm>

namespace flatwise {

const Output* Working::output(std::string_view name) const {
  const auto it = std::ranges::find_if(outputs, [&](const Output& o) { return o.name == name; });
  return it == outputs.end() ? nullptr : &*it;
}

const Input* Working::input(std::string_view name) const {
  const auto it = std::ranges::find_if(inputs, [&](const Input& i) { return i.name == name; });
  return it == inputs.end() ? nullptr : &*it;
}

double Working::si(std::string_view name) const {
  const Output* out = output(name);
  CORE_CHECK(out != nullptr);
  const auto* quantity = std::get_if<AnyQuantity>(&out->value);
  CORE_CHECK(quantity != nullptr);
  return quantity->si;
}

}  // namespace flatwise
