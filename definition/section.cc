#include <algorithm>

#include "core/units/near.h"
#include "core/units/parse.h"
#include "definition/tree.h"

namespace flatwise::definition {

std::optional<std::size_t> index_of(std::string_view text, std::span<const std::string_view> words) {
  const auto at = std::ranges::find(words, text);
  if (at == words.end()) return std::nullopt;
  return static_cast<std::size_t>(at - words.begin());
}

std::string_view meant(std::string_view typed, std::span<const std::string_view> names) {
  const auto small = [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; };
  for (const std::string_view name : names)
    if (std::ranges::equal(typed, name, {}, small, small)) return name;
  if (typed.size() <= 2) return {};
  const std::string_view near = nearest(typed, names);
  const auto letters = [](std::string_view text) {
    std::string out{text};
    std::erase_if(out, [](char c) { return c >= '0' && c <= '9'; });
    return out;
  };
  return near.size() > 2 && letters(near) != letters(typed) ? near : std::string_view{};
}

double assumed_number(std::string_view text) {
  if (text == "true") return 1;
  if (text == "false" || text.empty()) return 0;
  const Result<Entered> read = parse_quantity(text, Kind::ratio, "assumed");
  CORE_CHECK(read.has_value());
  return read->value.si;
}

Section::Section(File& file, std::string_view kind, const toml::table* table, std::string path)
    : file_{&file}, kind_{kind}, path_{std::move(path)} {
  if (table) layers_.push_back({table, path_});
}

Section Section::over(const Section& below) const {
  Section both = *this;
  both.kind_ = below.kind_;
  both.layers_.insert(both.layers_.end(), below.layers_.begin(), below.layers_.end());
  return both;
}

Section Section::first_with(std::initializer_list<std::string_view> keys) const {
  Section one = *this;
  for (const Layer& layer : layers_)
    if (std::ranges::any_of(keys, [&](std::string_view key) { return layer.table->contains(key); })) {
      one.layers_ = {layer};
      one.path_ = layer.path;
      return one;
    }
  // None has: problems then point at the table itself.
  if (layers_.size() > 1) one.layers_.resize(1);
  return one;
}

Section& Section::note_in(Origins* origins, std::string prefix) {
  origins_ = origins;
  prefix_ = std::move(prefix);
  return *this;
}

const Section::Layer* Section::layer_with(std::string_view key) const {
  const auto at = std::ranges::find_if(layers_, [&](const Layer& layer) { return layer.table->contains(key); });
  return at == layers_.end() ? nullptr : &*at;
}

const toml::node* Section::node(std::string_view key) const {
  const Layer* layer = layer_with(key);
  return layer ? layer->table->get(key) : nullptr;
}

const Field& Section::field(std::string_view key) const {
  const Field* found = find_field(file_->document(), kind_, key);
  CORE_CHECK(found != nullptr);
  return *found;
}

std::string Section::path(std::string_view key) const {
  const Layer* layer = layer_with(key);
  const std::string& at = layer ? layer->path : path_;
  return at.empty() ? std::string{key} : at + "." + std::string{key};
}

Place Section::place() const {
  return layers_.empty() || path_.empty() ? file_->whole() : file_->place(*layers_.front().table);
}

Place Section::place(std::string_view key) const {
  const toml::node* found = node(key);
  return found ? file_->place(*found) : place();
}

void Section::note(std::string_view key, Origin origin) const {
  if (origins_) (*origins_)[prefix_ + "." + std::string{key}] = std::move(origin);
}

// The node behind a key, with its origin noted; a default's origin too.
const toml::node* Section::noted(std::string_view key) const {
  const toml::node* found = node(key);
  if (!origins_) return found;
  if (found) {
    note(key, file_->given_at(*found));
  } else if (const Field& f = field(key); !f.assumed.empty()) {
    note(key, {OriginKind::assumed, std::string{f.assumed_from}});
  }
  return found;
}

std::optional<Entered> Section::quantity(std::string_view key) const {
  const Field& f = field(key);
  if (const toml::node* found = noted(key)) {
    Result<Entered> read = file_->quantity(*found, f, path(key));
    if (read) return *std::move(read);
    return std::nullopt;
  }
  if (f.assumed.empty()) return std::nullopt;
  Result<Entered> read = parse_quantity(f.assumed, f.kind, key);
  CORE_CHECK(read.has_value());
  read->typed.clear();
  return *std::move(read);
}

Length Section::length(std::string_view key) const {
  const auto read = quantity(key);
  return read ? read->length() : Length{};
}

double Section::si(std::string_view key) const {
  const Field& f = field(key);
  if (!f.is(takes::kNumber)) {
    const auto read = quantity(key);
    return read ? read->value.si : 0;
  }
  const toml::node* found = noted(key);
  if (!found) return assumed_number(f.assumed);
  if (const auto* text = found->as_string()) {
    const Result<Entered> read = doubt::has_doubt(text->get()) ? file_->quantity(*found, f, path(key))
                                                               : parse_quantity(text->get(), Kind::ratio, key);
    return read ? read->value.si : 0;
  }
  return found->value<double>().value_or(0);
}

std::int64_t Section::whole(std::string_view key) const {
  const toml::node* found = noted(key);
  return found ? found->value<std::int64_t>().value_or(0)
               : static_cast<std::int64_t>(assumed_number(field(key).assumed));
}

bool Section::flag(std::string_view key) const {
  const toml::node* found = noted(key);
  return found ? found->value<bool>().value_or(false) : field(key).assumed == "true";
}

std::string Section::text(std::string_view key) const {
  const toml::node* found = noted(key);
  return found ? found->value<std::string>().value_or("") : std::string{field(key).assumed};
}

std::size_t Section::word(std::string_view key) const { return index_of(text(key), field(key).words).value_or(0); }

Section Section::table(std::string_view key) const {
  Section inner{*file_, field(key).table, nullptr, path(key)};
  for (const Layer& layer : layers_)
    if (const toml::node* found = layer.table->get(key))
      if (const toml::table* below = found->as_table())
        inner.layers_.push_back({below, layer.path.empty() ? std::string{key} : layer.path + "." + std::string{key}});
  if (origins_) inner.note_in(origins_, prefix_ + "." + std::string{key});
  return inner;
}

std::vector<Section> Section::tables(std::string_view key) const {
  std::vector<Section> all;
  const toml::node* found = node(key);
  if (!found) return all;
  const std::string_view kind = field(key).table;
  if (const toml::table* one = found->as_table()) {
    all.emplace_back(*file_, kind, one, path(key));
  } else if (const toml::array* many = found->as_array()) {
    std::size_t number = 0;
    for (const toml::node& item : *many) {
      ++number;
      if (const toml::table* table = item.as_table())
        all.emplace_back(*file_, kind, table, path(key) + "[" + std::to_string(number) + "]");
    }
  }
  return all;
}

void Section::problem(Code code, std::string_view key, Args args) const {
  const toml::node* found = node(key);
  file_->add(code, path(key), found ? file_->typed(*found) : std::string{}, std::move(args), place(key));
}

}  // namespace flatwise::definition
