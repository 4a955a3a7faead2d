// template.h: one sentence of a dictionary with its gaps. Shared by the dictionary compiler, which refuses bad ones at
// build time, and by words.cc, which fills good ones.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace flatwise::words {

/// "Turn {flats|one flat|# flats}{towards? towards {towards}}.": plain text, and gaps in braces.
struct Piece {
  enum class Form {
    text,      ///< As it stands.
    number,    ///< '#': the number that chose this alternative.
    value,     ///< {x}
    both,      ///< {x+}: a quantity with the other unit system in brackets.
    percent,   ///< {x%}: a ratio as a whole percentage, a tenth under ten
    any_of,    ///< {x or}: a list said as "1, 2 or 5".
    choice,    ///< {x|one|many} or {x|one|many|none}
    if_there,  ///< {x?text} or {x?text|otherwise}
  } form = Form::text;
  std::string_view text;               ///< For text: itself; else the argument's name.
  std::vector<std::string_view> ways;  ///< Of choice and if_there: templates themselves.
};

struct Template {
  std::vector<Piece> pieces;
  std::string_view fault;  ///< Not empty: why it is no template, in English, for the maker of the dictionary.
};

/// `in_choice`: '#' stands for the number.
[[nodiscard]] Template read_template(std::string_view text, bool in_choice = false);

/// The fault of a template or of any template in it; empty when it is good.
[[nodiscard]] std::string_view fault_of(std::string_view text, bool in_choice = false);

/// Names of all arguments of a template, in order, repeats included.
void collect_names(std::string_view text, std::vector<std::string_view>& names, bool in_choice = false);

}  // namespace flatwise::words
