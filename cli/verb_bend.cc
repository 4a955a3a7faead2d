#include <algorithm>
#include <nlohmann/json.hpp>
#include <ostream>

#include "cli/doubts.h"
#include "cli/files.h"
#include "cli/render.h"
#include "cli/text.h"
#include "cli/verbs.h"
#include "view/shaft_bend.h"

namespace flatwise::cli {
namespace {

/// A shaft with all that is shown of it.
struct Bend {
  Shaft shaft;
  view::ShaftBend bend;
};

Results<Bend> bend_of(const Context& context, const std::string& file) {
  Results<Shaft> shaft = load_shaft(context, file);
  if (!shaft) return tl::unexpected(std::move(shaft.error()));
  auto bend = view::bend_of(*shaft);
  if (bend) return Bend{*std::move(shaft), *std::move(bend)};
  for (Problem& problem : bend.error())
    if (problem.place) problem.place->file = file;
  return tl::unexpected(std::move(bend.error()));
}

std::optional<std::vector<Problem>> write_response(const Bend& b, const BendOptions& options) {
  if (options.csv.empty()) return std::nullopt;
  view::ResponseAsked asked{.from = options.from, .to = options.to};
  if (!options.speeds.empty()) asked.speeds = std::stoi(options.speeds);  // Digits only: the command line saw to it.
  const Result<std::string> csv = view::response_csv(b.shaft, b.bend, asked);
  if (!csv) return as_options({csv.error()}, {"from", "to", "speeds"});
  const auto written = write_file(options.csv, *csv);
  return written ? std::nullopt : std::optional{std::vector{written.error()}};
}

// --- As text -----------------------------------------------------------------------------------------------------------

class Text {
 public:
  Text(const Context& context, const Bend& bend) : c_{context}, shaft_{bend.shaft}, b_{bend.bend} {}

  std::string all() const {
    std::string out = toned(printable(shaft_.spec().name), Tone::strong, c_.colour) + "\n";
    if (shaft_.spec().invented) out += word("cli.invented", c_.voice) + "\n";
    out += lay_out(hangers()) + "\n" + lay_out(stations()) + "\n" + lay_out(criticals()) + "\n" + lay_out(shares()) +
           "\n" + wrap(word("cli.bend_note", c_.voice), c_.width) + "\n\n" + doubts_text(c_, b_.doubts);
    for (const auto* list : {&b_.bending.findings, &b_.bending.of.taken})
      for (const Finding& f : *list) out += render(c_, f);
    for (const Working& w : b_.workings)
      if (c_.why) out += "\n" + render(c_, w);
    return out;
  }

 private:
  std::string q(AnyQuantity v) const { return render_value(c_, v, {}); }
  std::string w(std::string_view id) const { return word(id, c_.voice); }

  Table hangers() const {
    Table t{.head = {w("cli.head.hanger"), w("cli.head.at"), w("cli.head.rest"), w("cli.head.towards"),
                     w("cli.head.turning"), w("cli.head.azimuth")},
            .rows = {},
            .right = "lrrrrr"};
    for (std::size_t i = 0; i < b_.bending.of.hangers.size(); ++i) {
      const beam::Reaction &rest = b_.bending.at_rest.reactions[i], &turning = b_.bending.turning.reactions[i];
      const std::string key = "hangers[" + std::to_string(i) + "].";
      t.rows.push_back({printable(b_.bending.of.hangers[i].label), q(any(rest.at)),
                        with_doubt(c_, any(rest.size), b_.doubts, key + "rest"), q(any(rest.direction)),
                        with_doubt(c_, any(turning.size), b_.doubts, key + "turning"), q(any(turning.direction))});
    }
    return t;
  }

  Table stations() const {
    Table t{.head = {w("cli.head.station"), w("cli.head.at"), w("cli.head.bends_rest"), w("cli.head.bends_turning"),
                     w("cli.head.stress_rest"), w("cli.head.stress_turning"), w("cli.head.torsion"),
                     w("cli.head.together")},
            .rows = {},
            .right = "lrrrrrrr"};
    for (std::size_t i = 0; i < shaft_.stations().size(); ++i) {
      const beam::StressAt& s = b_.bending.stresses[i];
      t.rows.push_back({printable(shaft_.stations()[i].label), q(any(s.at)), q(any(b_.bending.rest_of_station[i].out)),
                        q(any(b_.bending.turning_of_station[i].out)), q(any(s.at_rest)), q(any(s.turning)),
                        b_.bending.of.torques.empty() ? "–" : q(any(s.torsion)), q(any(s.equivalent))});
    }
    return t;
  }

  Table criticals() const {
    Table t{
        .head = {w("cli.head.critical"), w("cli.head.forward"), w("cli.head.backward")}, .rows = {}, .right = "rrr"};
    const auto &f = b_.bending.forward.speeds, &back = b_.bending.backward.speeds;
    const auto cell = [&](const std::vector<AngularSpeed>& speeds, std::size_t i, std::string_view key) {
      if (i >= speeds.size()) return std::string{"–"};
      return i == 0 ? with_doubt(c_, any(speeds[i]), b_.doubts, key) : q(any(speeds[i]));
    };
    for (std::size_t i = 0; i < std::max(f.size(), back.size()); ++i)
      t.rows.push_back({std::to_string(i + 1), cell(f, i, "forward"), cell(back, i, "backward")});
    return t;
  }

  /// What each rotor alone turns each hanger with.
  Table shares() const {
    Table t{.head = {w("cli.head.rotor")}, .rows = {}, .right = "r"};
    for (const beam::Named& h : b_.bending.of.hangers) {
      t.head.push_back(printable(h.label));
      t.right += 'r';
    }
    for (int r = 0; r < shaft_.rotor_count(); ++r) {
      t.rows.push_back({std::to_string(r + 1)});
      for (const beam::Share& s : b_.bending.effects.shares[static_cast<std::size_t>(r)])
        t.rows.back().push_back(q(any(s.size)));
    }
    return t;
  }

  const Context& c_;
  const Shaft& shaft_;
  const view::ShaftBend& b_;
};

}  // namespace

Status bend_shaft(const Context& context, const BendOptions& options) {
  const Results<Bend> b = bend_of(context, options.shaft_file);
  if (!b) return refuse(context, b.error());
  if (const auto problems = write_response(*b, options)) return refuse(context, *problems);
  *context.out << (context.json ? wire::dump(view::bend_json(b->shaft, b->bend, context.voice))
                                : Text{context, *b}.all());
  Severity worst = Severity::note;
  for (const Finding& f : b->bend.bending.findings) worst = std::max(worst, f.severity);
  return status_of(worst);
}

}  // namespace flatwise::cli
