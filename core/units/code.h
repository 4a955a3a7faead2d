// code.h: what the core says, without words. A code names a sentence, arguments fill it; words/ makes the sentence.
//
//   Finding f{Code{"timing.half_out"}, Severity::out, {{"rotor", 4}, {"half", Word{"half.b"}}, {"flats", 1}}};
//
// A test reads every Code{"..."} and Word{"..."} in the sources and demands its entry in each dictionary.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include "core/units/any_quantity.h"

namespace flatwise {

/// Key of a sentence in the dictionaries: "folder.what_is_so". Only made from a literal.
class Code {
 public:
  template <std::size_t N>
  consteval explicit Code(const char (&id)[N]) : id_{id, N - 1} {}
  [[nodiscard]] constexpr std::string_view id() const { return id_; }
  friend constexpr bool operator==(Code a, Code b) { return a.id_ == b.id_; }

 private:
  std::string_view id_;
};

/// Key of a single word or short phrase in the dictionaries ("half.b", "end.a", "material.steel").
struct Word {
  std::string id;
  friend bool operator==(const Word&, const Word&) = default;
};

/// One argument. Text is what a person typed or named (never translated); lists are said as "1, 2 and 5".
using ArgValue = std::variant<std::int64_t, AnyQuantity, std::string, Word, std::vector<std::int64_t>,
                              std::vector<std::string>, std::vector<Word>>;

struct Arg {
  std::string_view name;  ///< Always a literal.
  ArgValue value;

  Arg(std::string_view n, int v) : name{n}, value{static_cast<std::int64_t>(v)} {}
  Arg(std::string_view n, std::int64_t v) : name{n}, value{v} {}
  Arg(std::string_view n, AnyQuantity v) : name{n}, value{v} {}
  Arg(std::string_view n, const char* v) : name{n}, value{std::string{v}} {}
  Arg(std::string_view n, std::string v) : name{n}, value{std::move(v)} {}
  Arg(std::string_view n, Word v) : name{n}, value{std::move(v)} {}
  Arg(std::string_view n, std::vector<std::int64_t> v) : name{n}, value{std::move(v)} {}
  Arg(std::string_view n, std::vector<std::string> v) : name{n}, value{std::move(v)} {}
  Arg(std::string_view n, std::vector<Word> v) : name{n}, value{std::move(v)} {}
  friend bool operator==(const Arg&, const Arg&) = default;
};
using Args = std::vector<Arg>;

/// A code with its arguments: anything that can be said.
struct Message {
  Code code;
  Args args;
  friend bool operator==(const Message&, const Message&) = default;
};

}  // namespace flatwise
