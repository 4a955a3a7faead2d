// of_shaft.h: what the doubtful fields of a shaft's definition make of figures that the whole shaft goes into, whichever they are.
//
//   const auto told = of_shaft(shaft, [](const Shaft& s) { return Row{couple_of(s).si()}; });
//   if (told[0]) told[0]->u.expanded_si, told[0]->shares[0].field          // "rotor.mass" doubts it most
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "core/doubt/doubt.h"
#include "core/shaft/shaft.h"

namespace flatwise::doubt {

/// Figures of one shaft in SI, always as many and in one order; not a number where one cannot be worked out there.
using FiguresOf = std::function<std::vector<double>(const Shaft& shaft)>;

/// What one field does to one figure.
struct FieldShare {
  std::string field;     ///< Its path in the file: "rotor.mass".
  std::string meaning;   ///< Word of what it is.
  double moves_si = 0;   ///< What the figure moves by for one standard uncertainty of the field, signed.
  double part = 0;       ///< Of the figure's variance, 0 to 1.
  double halved_si = 0;  ///< Expanded uncertainty if the field were known half as loosely.
};

struct FigureDoubt {
  Uncertainty u;
  std::vector<FieldShare> shares;  ///< Greatest part first; fields without part are left out.
  std::optional<Drawn> drawn;      ///< Where the plain sum of squares does not hold: U is half of this interval.
  bool one_sided =
      false;  ///< A field could be moved to one side only: beyond the other the shaft or the figure does not hold.
};

/// One for each figure; none where the figure has no value as defined, or no doubtful field moves it.
///
/// Model      Every doubtful field alone is moved by its standard uncertainty to either side, all else as defined, and the whole shaft
///            worked out again. Where both steps are alike the figure is taken as straight: root sum of squares (GUM 5.1.3, note 2),
///            U = 1.96 u. Where they are not, or a field lies anywhere between two ends, 20 000 draws of all fields together go
///            through straight lines between the three known points of each (JCGM 101 upon a surrogate): what fields do to each
///            other is not in it.
/// Inputs     Fields are independent of each other. One key of the file is one field, however many rotors it holds for: they move
///            together, as they do when one was weighed for all.
/// Returns    `u` without degrees of freedom.
/// Accuracy   The same draws everywhere; their ends to about 2 % of U.
/// Source     [GUM] 5.1.3; [JCGM101] 6.4, 7.7.
[[nodiscard]] std::vector<std::optional<FigureDoubt>> of_shaft(const Shaft& shaft, const FiguresOf& figures);

/// A figure of a shaft as it is told.
struct NamedFigure {
  std::string key;      ///< For programs: "couple", "rows[0].couple".
  Word name;            ///< What it is called.
  std::string of = {};  ///< Of which part: "hanger A"; empty: of the shaft.
  AnyQuantity value;    ///< Not a number where it cannot be worked out.
};
struct ToldDoubt {
  NamedFigure figure;
  FigureDoubt doubt;
};
/// The same for figures with their names: those that a doubtful field moves, in their order. `figures` must give as many, in one order,
/// for every shaft.
[[nodiscard]] std::vector<ToldDoubt> told_of_shaft(
    const Shaft& shaft, const std::function<std::vector<NamedFigure>(const Shaft& shaft)>& figures);

/// What is said of one: figure ± U with the three fields that make most of it; where it bends, between what it lies; what to measure
/// better, where one field carries a quarter or more.
[[nodiscard]] std::vector<Message> says(const ToldDoubt& told);
/// The last of them alone.
[[nodiscard]] std::optional<Message> measure_better(const ToldDoubt& told);

}  // namespace flatwise::doubt
