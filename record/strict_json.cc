#include "record/strict_json.h"

#include <nlohmann/json.hpp>
#include <optional>
#include <vector>

namespace flatwise::record {
namespace {

using wire::Json;

constexpr std::size_t kMostMembers = 256;  // In one object; no shape of ours has as many.

/// Builds the value while reading; stops at the first thing that JSON leaves open and we do not.
class Builder : public nlohmann::json_sax<Json> {
 public:
  bool null() override { return put(nullptr); }
  bool boolean(bool value) override { return put(value); }
  bool number_integer(number_integer_t value) override { return put(value); }
  bool number_unsigned(number_unsigned_t value) override { return put(value); }
  bool number_float(number_float_t value, const string_t& /*text*/) override { return put(value); }
  bool string(string_t& value) override { return put(std::move(value)); }
  bool binary(binary_t& /*value*/) override { return false; }
  bool start_object(std::size_t /*size*/) override { return open(Json::object()); }
  bool start_array(std::size_t /*size*/) override { return open(Json::array()); }
  bool end_object() override { return close(); }
  bool end_array() override { return close(); }
  bool key(string_t& value) override {
    if (open_.back()->size() >= kMostMembers) {
      problem_ =
          Problem{Code{"record.too_many"}, {}, {}, {{"most", static_cast<std::int64_t>(kMostMembers)}}, std::nullopt};
      return false;
    }
    if (open_.back()->contains(value)) {
      problem_ = Problem{Code{"record.key_twice"}, value, {}, {}, std::nullopt};
      return false;
    }
    key_ = value;
    return true;
  }
  bool parse_error(std::size_t at, const std::string& /*token*/, const nlohmann::detail::exception& /*e*/) override {
    if (!problem_)
      problem_ = Problem{Code{"record.not_json"}, {}, {}, {{"byte", static_cast<std::int64_t>(at)}}, std::nullopt};
    return false;
  }

  std::optional<Problem> problem_;
  Json root_;

 private:
  Json* add(Json value) {
    if (open_.empty()) return &(root_ = std::move(value));
    if (open_.back()->is_array()) {
      open_.back()->push_back(std::move(value));
      return &open_.back()->back();
    }
    return &((*open_.back())[key_] = std::move(value));
  }
  bool put(Json value) { return add(std::move(value)) != nullptr; }
  // Pointers into a vector that grows stay good: only the innermost open one is ever added to.
  bool open(Json value) {
    if (open_.size() >= static_cast<std::size_t>(kDeepest)) {
      problem_ = Problem{Code{"record.too_deep"}, {}, {}, {{"most", kDeepest}}, std::nullopt};
      return false;
    }
    open_.push_back(add(std::move(value)));
    return true;
  }
  bool close() {
    open_.pop_back();
    return true;
  }

  std::vector<Json*> open_;
  std::string key_;
};

}  // namespace

Result<Json> strict_json(std::string_view text) {
  // A byte order mark is not JSON, though the reader below would pass it over.
  if (text.starts_with("\xEF\xBB\xBF"))
    return tl::unexpected(Problem{Code{"record.not_json"}, {}, {}, {{"byte", 1}}, std::nullopt});
  Builder builder;
  if (!Json::sax_parse(text, &builder) || builder.problem_)
    return tl::unexpected(builder.problem_.value_or(
        Problem{Code{"record.not_json"}, {}, {}, {{"byte", static_cast<std::int64_t>(text.size())}}, std::nullopt}));
  return std::move(builder.root_);
}

}  // namespace flatwise::record
