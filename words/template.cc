#include "words/template.h"

#include <algorithm>

namespace flatwise::words {
namespace {

bool is_name(std::string_view s) {
  const auto good = [](char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '_'; };
  return !s.empty() && s[0] >= 'a' && s[0] <= 'z' && std::ranges::all_of(s, good);
}

/// Where the brace that opens at `open` closes; npos when it does not.
std::size_t closing(std::string_view s, std::size_t open) {
  int depth = 0;
  for (std::size_t i = open; i < s.size(); ++i) {
    if (s[i] == '{') ++depth;
    if (s[i] == '}' && --depth == 0) return i;
  }
  return std::string_view::npos;
}

std::vector<std::string_view> split_ways(std::string_view s) {
  std::vector<std::string_view> ways;
  int depth = 0;
  std::size_t from = 0;
  for (std::size_t i = 0; i < s.size(); ++i) {
    if (s[i] == '{') ++depth;
    if (s[i] == '}') --depth;
    if (s[i] != '|' || depth != 0) continue;
    ways.push_back(s.substr(from, i - from));
    from = i + 1;
  }
  ways.push_back(s.substr(from));
  return ways;
}

/// The inside of one pair of braces.
Piece read_gap(std::string_view inside, std::string_view& fault) {
  Piece piece;
  constexpr std::string_view kOr = " or";
  const bool any_of = inside.ends_with(kOr) && inside.find_first_of("+|?") == std::string_view::npos;
  if (any_of) inside.remove_suffix(kOr.size());
  const bool percent = inside.ends_with('%') && inside.find_first_of("+|?") == std::string_view::npos;
  if (percent) inside.remove_suffix(1);
  const std::size_t mark = inside.find_first_of("+|?");
  piece.text = inside.substr(0, mark);
  piece.form = any_of ? Piece::Form::any_of : percent ? Piece::Form::percent : Piece::Form::value;
  if (!is_name(piece.text)) fault = "a name in braces is small letters, digits and _";
  if (mark == std::string_view::npos) return piece;
  if (inside[mark] == '+') {
    piece.form = Piece::Form::both;
    if (mark + 1 != inside.size()) fault = "nothing may stand after + in braces";
    return piece;
  }
  piece.ways = split_ways(inside.substr(mark + 1));
  piece.form = inside[mark] == '|' ? Piece::Form::choice : Piece::Form::if_there;
  if (piece.form == Piece::Form::choice && (piece.ways.size() < 2 || piece.ways.size() > 3))
    fault = "a choice is {x|one|many} or {x|one|many|none}";
  if (piece.form == Piece::Form::if_there && piece.ways.size() > 2)
    fault = "a condition is {x?text} or {x?text|otherwise}";
  return piece;
}

}  // namespace

Template read_template(std::string_view s, bool in_choice) {
  Template t;
  std::size_t from = 0;
  const auto end_text = [&](std::size_t to) {
    if (to > from) t.pieces.push_back({Piece::Form::text, s.substr(from, to - from), {}});
  };
  for (std::size_t i = 0; i < s.size(); ++i) {
    if (s[i] == '}') t.fault = "a brace closes that was not opened";
    if (s[i] == '#' && in_choice) {
      end_text(i);
      t.pieces.push_back({Piece::Form::number, {}, {}});
      from = i + 1;
    }
    if (s[i] != '{') continue;
    const std::size_t end = closing(s, i);
    if (end == std::string_view::npos) {
      t.fault = "a brace opens and is not closed";
      return t;
    }
    end_text(i);
    t.pieces.push_back(read_gap(s.substr(i + 1, end - i - 1), t.fault));
    i = end;
    from = end + 1;
  }
  end_text(s.size());
  return t;
}

std::string_view fault_of(std::string_view text, bool in_choice) {
  const Template t = read_template(text, in_choice);
  if (!t.fault.empty()) return t.fault;
  for (const Piece& piece : t.pieces)
    for (const std::string_view way : piece.ways) {
      const bool numbered = in_choice || piece.form == Piece::Form::choice;
      if (const std::string_view fault = fault_of(way, numbered); !fault.empty()) return fault;
    }
  return {};
}

void collect_names(std::string_view text, std::vector<std::string_view>& names, bool in_choice) {
  for (const Piece& piece : read_template(text, in_choice).pieces) {
    if (piece.form != Piece::Form::text && piece.form != Piece::Form::number) names.push_back(piece.text);
    for (const std::string_view way : piece.ways)
      collect_names(way, names, in_choice || piece.form == Piece::Form::choice);
  }
}

}  // namespace flatwise::words
