// study.h: ways of one shaft side by side: the table, what the plots show, which way is best and why. The one function behind the
// verb, the page and the sheet.
//
//   const Results<Study> study = study::study(shaft, {.ways = typed});
//   for (const Row& row : study->rows) ... said(row.cells[0], voice)
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/doubt/of_shaft.h"
#include "study/outcome.h"
#include "words/words.h"

namespace flatwise::study {

/// One cell. A figure has `value` (and `to` where it is a range) and its working; else the sentences stand.
struct Cell {
  std::vector<Message> says{};
  std::optional<AnyQuantity> value{}, to{};
  std::optional<Uncertainty> u{};  ///< Of the value, where the definition's doubts move it.
  std::optional<Message> detail{};
  WorkingPtr working{};
  bool bad = false;  ///< Keeps the way from being advised.
};

/// A row of the table; its words are word_of() and that with ".detail" where there is one.
enum class RowKey {
  couples,
  flats,
  couple,
  hanger,
  gap,
  say,
  build,
  speed,
  lean,
  clearance,
  interference,
  press,
  play,
  life,
  stress,
  critical,
  words
};
enum class Form { drawing, large, figure, words };
[[nodiscard]] std::string_view name_of(RowKey key);
[[nodiscard]] std::string_view name_of(Form form);
struct Row {
  RowKey key;
  Form form = Form::figure;
  std::vector<Cell> cells;  ///< One a way.
  bool ends = false;  ///< The hanger's row of a shaft without two hangers: at its ends, and nothing is advised by it.
};
/// "study.row.hanger", "study.row.ends".
[[nodiscard]] std::string word_of(const Row& row);

/// One way's curve; with low and high where there is a band: what friction or the cage leave open, with y in its middle; of a life what
/// lubricant and dirt make of y, which may lie wholly under it.
struct Trace {
  int way = 0;
  std::vector<double> x, y, low{}, high{};
};
/// A place on the plot: where a way stands.
struct Spot {
  int way = 0;
  double x = 0, y = 0;
};
struct Stretch {
  double from = 0, to = 0;
};
enum class PlotKey { hanger, couple, response, life, press, play, balls };
[[nodiscard]] std::string_view name_of(PlotKey key);
/// Load of one ball, seen from end A: azimuth clockwise from straight up.
struct BallAt {
  Angle azimuth;
  Force load;
  Angle contact;
};
struct PlotData {
  PlotKey key;
  Kind x = Kind::angular_speed, y = Kind::force;
  std::vector<Trace> traces{};
  std::vector<Spot> spots{};                 ///< Where each way works.
  std::vector<double> floor_x{}, floor{};    ///< What stated errors leave anyway.
  std::vector<Stretch> keep_out{};           ///< Of x.
  std::optional<double> end{};               ///< Of x: where something ends ("home").
  std::vector<std::vector<BallAt>> balls{};  ///< One a way; empty where its bearing has no answer.
  double ball_share = 0.2;
  bool differs = false;  ///< The ways differ in it.
};

/// Which way is best: as places among the ways.
struct Advice {
  std::optional<int> way{};
  Message because{Code{"study.because_alike"}, {}};
  std::string lines{};  ///< For the definition, where the way is another than what stands there.
};

struct Order {
  std::string name{};             ///< Of the study; empty: made from the shaft and the count of ways.
  std::vector<TypedWay> ways{};   ///< Empty: usual_ways().
  std::optional<Typed> ground{};  ///< Force that the ground lifts each rotor with, besides the definition's loads.
  /// How far mass, inertia and lean of each rotor may be from what is said, together, as a share of its couple ("3 %"); and the play
  /// of the halves on the shaft ("0.5°"). Not there: 2 % and half a degree, assumed.
  std::optional<Typed> error_share{}, error_azimuth{};
};

struct Study {
  std::string name;
  Shaft shaft;  ///< As defined, with the ground's force.
  std::vector<Way> ways;
  Errors errors{};
  std::vector<Outcome> outcomes{};  ///< One a way.
  std::vector<Row> rows{};
  std::vector<PlotData> plots{};  ///< Those in which the ways differ first.
  Advice advice{};
  std::vector<Message> notes{};  ///< What was assumed, what is not in it; what makes the figures uncertain.
  /// What the definition's doubts make of each way's "couple", "hanger", "life" and "critical" ("ways[0].couple").
  std::vector<doubt::ToldDoubt> doubts{};
  [[nodiscard]] int count() const { return static_cast<int>(ways.size()); }
  [[nodiscard]] bool is_best(int way) const { return advice.way == way; }
};

/// The study.
///
/// Refuses    As read_ways() and outcome_of(); a ground force that cannot be read or is outside 0 to 1 MN: field "ground"; errors that
///            cannot be read or are outside 0 to 100 % and 0 to 30°: fields "error_share", "error_azimuth".
[[nodiscard]] Results<Study> study(const Shaft& shaft, const Order& order, const Voice& voice = {});

/// As defined, facing, an even third (where the profile has it) and the quietest, as far as they differ; a shaft of one rotor: its
/// own speed and a tenth less.
[[nodiscard]] std::vector<TypedWay> usual_ways(const Shaft& shaft, const Voice& voice,
                                               const dynamics::StatedErrors& errors = {});

/// A quantity as a table of ways shows it: three figures that count, lives two.
[[nodiscard]] std::string figure_text(AnyQuantity value, const Voice& voice);
/// Mass, lean and how the rotors turn, for a cell of a title block; of rotor 1.
[[nodiscard]] std::string rotor_text(const Shaft& shaft, const Voice& voice);
/// A message with its quantities so.
[[nodiscard]] std::string said(const Message& message, const Voice& voice);
[[nodiscard]] std::string said(const Cell& cell, const Voice& voice);
/// The value in the other system; empty where there is none or it is the same.
[[nodiscard]] std::string said_otherwise(const Cell& cell, const Voice& voice);
/// The advice in words: what to do, why, and what it waits for.
struct AdviceSaid {
  std::string does, because, waits;
};
[[nodiscard]] AdviceSaid said(const Study& study, const Voice& voice);
/// "Facing", "Facing and Thirds": the ways by these places.
[[nodiscard]] std::string names_of(const Study& study, const std::vector<int>& ways, const Voice& voice);

// Parts of it, each in its own file.
[[nodiscard]] std::vector<Row> rows_of(const std::vector<Way>& ways, const std::vector<Outcome>& outcomes);
[[nodiscard]] std::vector<PlotData> plots_of(const std::vector<Way>& ways, const std::vector<Outcome>& outcomes);
/// What keeps a way from being advised, whatever else it has; "other", its name, is left to whoever tells it.
[[nodiscard]] std::optional<Message> must_not_be(const Outcome& outcome);
/// The same study done with every doubtful field to either side, put into `study`'s rows and notes. `shaft` is as defined, without the
/// study's ground; `ways_of` does the ways of such a shaft, with nothing where they cannot be done.
using OutcomesOf = std::function<std::optional<std::vector<Outcome>>(const Shaft& shaft)>;
void add_doubts(const Shaft& shaft, const OutcomesOf& outcomes_of, Study& study);
[[nodiscard]] Advice advice_of(const std::vector<Way>& ways, const std::vector<Outcome>& outcomes);

}  // namespace flatwise::study
