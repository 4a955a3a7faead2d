// words.h: codes and arguments to sentences, one dictionary a language, compiled in. Shell, paper and page all speak
// through this; nothing else holds a sentence.
//
// {x%} shows a ratio as a percentage.
// A dictionary is words/<language>/*.toml: "code" = "Turn half {half} of rotor {rotor} {flats|one flat|# flats} towards
// {towards}." {x} fills an argument (a quantity is shown in the voice's units, with the other system in brackets by
// {x+}; a list as "1, 2 and 5", by {x or} as "1, 2 or 5"); {x|one|many} or {x|one|many|none} chooses by a number or by how
// many are in a list, # stands for it; {x?text} gives the text only when the argument is there and not empty,
// {x?text|otherwise} the other text when it is not.
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "core/units/code.h"
#include "core/units/format.h"
#include "core/working/working.h"

namespace flatwise {

enum class Language { english };

struct Voice {
  Language language = Language::english;
  UnitSystem units = UnitSystem::metric;
  std::string currency;
};

/// The sentence of a code. An unknown code is a bug (a test reads all sources for them).
[[nodiscard]] std::string say(std::string_view code, const Args& args, const Voice& voice);
[[nodiscard]] std::string say(const Message& message, const Voice& voice);
/// With the rotor it is about, also where its own sentence does not name one ("Rotor 3: ...").
[[nodiscard]] std::string say(const Message& message, const Where& where, const Voice& voice);
/// Without its instruction; with its rotor.
[[nodiscard]] std::string say(const Finding& finding, const Voice& voice);
/// A single word or phrase: "half.b" → "half B".
[[nodiscard]] std::string word(std::string_view id, const Voice& voice);
/// With its first letter a capital: for what begins a line. English letters; others are left as they are.
[[nodiscard]] std::string capital(std::string text);
/// The bare figure of a quantity as it is shown: "1.25" of 1.25 mm.
[[nodiscard]] std::string figure_only(AnyQuantity value, const Voice& voice);
/// "0.50 to 1.25 mm"; where the two are shown in different units each has its own.
[[nodiscard]] std::string range_words(AnyQuantity least, AnyQuantity greatest, const Voice& voice);
[[nodiscard]] bool has_words(std::string_view code, Language language = Language::english);

/// What a figure rests on, for people: a book, a standard, a rule. A key that is in plain words already, "common practice", as it is.
[[nodiscard]] std::string source_words(std::string_view key, const Voice& voice);
/// All that a figure rests on in one line; names hold commas themselves: "ISO 76, static load ratings of rolling bearings; common practice".
[[nodiscard]] std::string sources_words(std::span<const std::string_view> keys, const Voice& voice);

/// Where an input came from, as it stands; the key of a source that something is assumed from or was published in in its words.
[[nodiscard]] std::string source_words(const Origin& origin, const Voice& voice);
/// Where an input came from, for people: a line of the definition as "Looseners 2, line 15", a source in its words.
[[nodiscard]] std::string where_words(const Origin& origin, const Voice& voice);

/// A problem in its three parts.
struct SaidProblem {
  std::string read, allowed, mend;
};
[[nodiscard]] SaidProblem say(const Problem& problem, const Voice& voice);

/// All codes of a language, sorted: for the test that every one is used.
[[nodiscard]] std::vector<std::string_view> all_codes(Language language);

}  // namespace flatwise
