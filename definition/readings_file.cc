// read_bench: what was read and answered at the bench, checked against the shaft and the workshop it belongs to.
#include <algorithm>
#include <set>

#include "definition/bench_reader.h"

namespace flatwise::definition {
namespace {

using Use = Gauge::Use;

std::string use_name(Use use) {
  return std::string{find_field(Document::workshop, "gauge", "use")->words[static_cast<std::size_t>(use)]};
}

}  // namespace

Bench BenchReader::read() {
  const Section all{file_, "readings_file", &file_.root(), {}};
  bench_.file = file_.whole().file;
  read_head(all.table("readings"));
  std::set<std::int64_t> seen;
  for (const Section& s : all.tables("rotor")) {
    if (s.has("number") && !seen.insert(s.whole("number")).second)
      s.problem(Code{"definition.rotor_twice"}, "number", {{"number", s.whole("number")}});
    read_rotor(s);
  }
  for (const Section& s : all.tables("part")) read_part(s);
  for (const Section& s : all.tables("spacer")) read_spacer(s);
  for (const Section& s : all.tables("stack"))
    if (auto length = told(s, "length")) bench_.stack.push_back({*std::move(length), gauge(s, "gauge", {Use::length})});
  for (const Section& s : all.tables("feeler")) read_feeler(s);
  for (const Section& s : all.tables("torque")) read_torque(s);
  for (const Section& s : all.tables("second_pull")) read_second_pull(s);
  read_run(all.table("test_run"));
  if (const auto* node = all.node("answers"); node && node->is_table()) read_answers(*node->as_table(), {}, "answers");
  return std::move(bench_);
}

void BenchReader::read_head(const Section& s) {
  bench_.job = s.text("job");
  if (const auto* node = s.node("date"); node && node->is_date()) {
    const toml::date d = node->as_date()->get();
    bench_.date = {d.year, d.month, d.day};
  }
  bench_.came_off = rotor_list(s, "came_off");
  bench_.still_off = rotor_list(s, "still_off");
  bench_.new_set = rotor_list(s, "new_set");
  check_within(s, "still_off", bench_.still_off, bench_.came_off);
  check_within(s, "new_set", bench_.new_set, bench_.came_off);
  read_opening(s);
  read_labels_back(s);
}

void BenchReader::read_opening(const Section& s) {
  const int most = context_.shaft.rotor_count() - 1;
  const auto share = s.has("rotors_from_a") ? static_cast<int>(s.whole("rotors_from_a")) : 0;
  constexpr std::size_t kBoth = 2;
  const bool both = s.has("opened_from") && s.word("opened_from") == kBoth;
  if (s.has("rotors_from_a") && (!both || share > most))
    s.problem(Code{"definition.share_with_both"}, "rotors_from_a",
              {{"field", "rotors_from_a"}, {"greatest", std::max(1, most)}});
  if (s.has("opened_from"))
    bench_.opened = Opened{static_cast<teardown::OpenedFrom>(s.word("opened_from")), share, s.place("opened_from")};
  bench_.parts_off = part_list(s, "parts_off");
  bench_.parts_still_off = part_list(s, "parts_still_off");
  for (const int part : bench_.parts_still_off)
    if (std::ranges::find(bench_.parts_off, part) == bench_.parts_off.end())
      s.problem(
          Code{"definition.part_not_off"}, "parts_still_off",
          {{"label", context_.shaft.stations()[static_cast<std::size_t>(part) - 1].label}, {"key", "parts_still_off"}});
}

// Stations by their labels, index + 1, each once; rotors have lists of their own.
std::vector<int> BenchReader::part_list(const Section& s, std::string_view key) {
  std::vector<int> numbers;
  const toml::node* node = s.node(key);
  if (!node || !node->is_array()) return numbers;
  for (const toml::node& item : *node->as_array()) {
    const std::string label = item.value<std::string>().value_or("");
    const auto at = label.empty() ? std::nullopt : station(label, item, s.path(key));
    if (!at) continue;
    const int number = static_cast<int>(*at) + 1;
    if (context_.shaft.stations()[*at].kind == StationKind::rotor)
      file_.add(Code{"definition.part_is_a_rotor"}, s.path(key), label, {{"label", label}}, file_.place(item));
    else if (std::ranges::find(numbers, number) != numbers.end())
      file_.add(Code{"definition.part_listed_twice"}, s.path(key), label, {{"label", label}}, file_.place(item));
    else
      numbers.push_back(number);
  }
  return numbers;
}

void BenchReader::read_spacer(const Section& s) {
  const toml::node* place = s.node("place");
  if (!place || !place->is_string() || !s.has("found") || !s.has("count")) return;
  const auto is_spacer = [&](const std::string& label, const toml::node& node, std::string_view key) {
    const auto at = station(label, node, s.path(key));
    if (at && context_.shaft.stations()[*at].kind == StationKind::spacer) return at;
    if (at) s.problem(Code{"definition.not_a_spacer"}, key, {{"label", label}});
    return std::optional<std::size_t>{};
  };
  const auto at = is_spacer(s.text("place"), *place, "place");
  if (!at) return;
  SpacerSeen seen{s.word("found") == 0 ? Phase::teardown : Phase::assembly, static_cast<int>(*at), {}, {}};
  if (std::ranges::any_of(bench_.spacers_seen,
                          [&](const SpacerSeen& x) { return x.phase == seen.phase && x.station == seen.station; }))
    return s.problem(Code{"definition.spacer_twice"}, "place", {{"label", s.text("place")}});
  seen.count = told(*s.node("count"), static_cast<int>(s.whole("count")));
  const toml::node* label = s.node("label");
  if (label && label->is_string() && is_spacer(s.text("label"), *label, "label")) seen.label = s.text("label");
  if (!seen.label.empty() && seen.count.value == 0) s.problem(Code{"definition.label_of_none"}, "label", {});
  bench_.spacers_seen.push_back(std::move(seen));
}

std::vector<int> BenchReader::rotor_list(const Section& s, std::string_view key) {
  std::vector<int> numbers;
  const toml::node* node = s.node(key);
  if (!node || !node->is_array()) return numbers;
  for (const toml::node& item : *node->as_array()) {
    const auto number = item.value<std::int64_t>();
    if (!number || !rotor_there(item, *number, s.path(key))) continue;
    if (std::ranges::find(numbers, *number) != numbers.end())
      file_.add(Code{"definition.listed_twice"}, s.path(key), file_.typed(item), {{"number", *number}},
                file_.place(item));
    else
      numbers.push_back(static_cast<int>(*number));
  }
  return numbers;
}

// A rotor that never left the shaft cannot be still off it.
void BenchReader::check_within(const Section& s, std::string_view key, const std::vector<int>& inner,
                               const std::vector<int>& outer) {
  for (const int number : inner)
    if (std::ranges::find(outer, number) == outer.end())
      s.problem(Code{"definition.did_not_come_off"}, key, {{"number", number}, {"key", std::string{key}}});
}

void BenchReader::read_labels_back(const Section& s) {
  const toml::node* node = s.node("labels_back");
  if (!node || !node->is_array()) return;
  bench_.labels_back.emplace();
  for (const toml::node& item : *node->as_array()) {
    const std::string label = item.value<std::string>().value_or("");
    if (!label.empty()) (void)station(label, item, s.path("labels_back"));
    bench_.labels_back->push_back({label, file_.place(item)});
  }
}

bool BenchReader::rotor_there(const toml::node& node, std::int64_t number, const std::string& path) {
  const int most = context_.shaft.rotor_count();
  if (number >= 1 && number <= most) return true;
  if (number >= 1 && number <= 240)  // Anything else has its problem already.
    file_.add(Code{"definition.unknown_rotor"}, path, file_.typed(node),
              {{"number", number}, {"least", 1}, {"greatest", most}}, file_.place(node));
  return false;
}

std::optional<std::size_t> BenchReader::station(const std::string& label, const toml::node& node,
                                                const std::string& path) {
  if (const auto found = index_of(label, labels_)) return found;
  Args args{{"label", label}};
  if (const auto near = meant(label, labels_); !near.empty()) args.emplace_back("near", std::string{near});
  file_.add(Code{"definition.unknown_label"}, path, label, std::move(args), file_.place(node));
  return std::nullopt;
}

std::string BenchReader::gauge(const Section& s, std::string_view key, std::initializer_list<Use> uses) {
  const std::string id = s.text(key);
  if (!s.has(key) || id.empty()) return {};
  const auto found = index_of(id, gauge_ids_);
  if (!found) {
    Args args{{"gauge", id}, {"known", std::vector<std::string>{gauge_ids_.begin(), gauge_ids_.end()}}};
    if (const auto near = meant(id, gauge_ids_); !near.empty()) args.emplace_back("near", std::string{near});
    s.problem(Code{"definition.unknown_gauge"}, key, std::move(args));
    return id;
  }
  const Use use = context_.workshop.gauges[*found].use;
  if (std::ranges::find(uses, use) != uses.end()) return id;
  s.problem(Code{"definition.wrong_gauge"}, key,
            {{"gauge", id}, {"use", use_name(use)}, {"wanted", use_name(*uses.begin())}});
  return id;
}

std::optional<Told<Entered>> BenchReader::told(const Section& s, std::string_view key) {
  const toml::node* node = s.node(key);
  if (!node) return std::nullopt;
  auto read = s.quantity(key);
  if (!read) return std::nullopt;
  return told(*node, *std::move(read));
}

void BenchReader::read_part(const Section& s) {
  const std::string id = gauge(s, "gauge", {Use::length});
  const toml::node* label = s.node("label");
  if (!label || !label->is_string()) return;
  const auto at = station(s.text("label"), *label, s.path("label"));
  if (!at) return;
  if (context_.shaft.stations()[*at].kind == StationKind::rotor)
    return s.problem(Code{"definition.rotor_is_halves"}, "label", {});
  if (auto length = told(s, "length"))
    bench_.part_lengths.push_back({static_cast<int>(*at), std::nullopt, *std::move(length), id});
}

// Where two parts of the clamped stack meet: all but the nuts, a rotor being two halves. The nuts' faces are not joints.
int BenchReader::joints() const {
  int parts = 0;
  for (const Station& st : context_.shaft.stations())
    if (st.kind != StationKind::nut) parts += st.kind == StationKind::rotor ? 2 : 1;
  return std::max(1, parts - 1);
}

void BenchReader::read_feeler(const Section& s) {
  FeelerReading f;
  f.joint = static_cast<int>(s.whole("joint"));
  if (f.joint > joints() && f.joint <= 1000)
    s.problem(Code{"definition.joint_range"}, "joint", {{"least", 1}, {"greatest", joints()}});
  f.passed = s.flag("passed");
  f.blade = told(s, "blade");
  f.gauge = gauge(s, "gauge", {Use::feeler});
  f.place = s.place();
  bench_.feelers.push_back(std::move(f));
}

End BenchReader::nut_of(const Section& s) {
  const End end = s.word("nut") == 0 ? End::a : End::b;
  const auto& nuts = context_.shaft.spec().nuts;
  if (s.has("nut") && std::ranges::find(nuts, end, &Nut::end) == nuts.end())
    s.problem(Code{"definition.no_such_nut"}, "nut", {{"end", s.text("nut")}});
  return end;
}

void BenchReader::read_second_pull(const Section& s) {
  SecondPull pull{nut_of(s), {}, gauge(s, "gauge", {Use::wrench})};
  auto turned = told(s, "turned");
  if (!turned) return;
  pull.turned = *std::move(turned);
  bench_.second_pulls.push_back(std::move(pull));
}

void BenchReader::read_torque(const Section& s) {
  TorquePull t;
  t.nut = nut_of(s);
  const bool bar = s.word("with") == 1;
  t.with = bar ? TorquePull::With::bar : TorquePull::With::wrench;
  const std::string_view wanted = bar ? "pull" : "shown", other = bar ? "shown" : "pull";
  if (s.has(other))
    s.problem(Code{"definition.not_with_this_tool"}, other,
              {{"key", std::string{other}}, {"wanted", std::string{wanted}}});
  const auto need = [&](std::string_view key) {
    if (s.has(key) || !s.has("with")) return;
    s.problem(Code{"definition.needs_also"}, "with", {{"key", s.text("with")}, {"also", std::string{key}}});
  };
  need(wanted);
  if (!bar) need("gauge");
  if (bar || s.has("extension")) need("tool_length");
  t.gauge = gauge(s, "gauge", {bar ? Use::press_gauge : Use::wrench});
  t.tool_length = told(s, "tool_length");
  t.extension = told(s, "extension");
  t.extension_angle = radians(s.si("extension_angle"));
  t.pull_angle = radians(s.si("pull_angle"));
  t.multiplier = s.si("multiplier");
  t.turned = told(s, "turned");
  auto shown = told(s, wanted);
  if (!shown) return;
  t.shown = *std::move(shown);
  bench_.torques.push_back(std::move(t));
}

void BenchReader::read_run(const Section& s) {
  const std::string thermometer = gauge(s, "thermometer", {Use::thermometer});
  const std::string meter = gauge(s, "meter", {Use::vibration_meter});
  if (auto ran = told(s, "ran")) bench_.runs.push_back({RunQuantity::minutes, 0, *std::move(ran), {}});
  if (auto room = told(s, "room")) bench_.runs.push_back({RunQuantity::room, 0, *std::move(room), thermometer});
  for (const Section& hanger : s.tables("hanger")) read_run_hanger(hanger, thermometer, meter);
}

void BenchReader::read_run_hanger(const Section& s, const std::string& thermometer, const std::string& meter) {
  const toml::node* label = s.node("label");
  if (!label || !label->is_string()) return;
  const auto at = station(s.text("label"), *label, s.path("label"));
  if (!at) return;
  if (context_.shaft.stations()[*at].kind != StationKind::hanger)
    return s.problem(Code{"definition.no_hanger"}, "label", {{"label", s.text("label")}});
  const int number = static_cast<int>(*at) + 1;
  const bool twice = std::ranges::any_of(bench_.runs, [&](const RunReading& r) { return r.station == number; });
  if (twice) return s.problem(Code{"definition.hanger_twice"}, "label", {{"label", s.text("label")}});
  if (auto read = told(s, "temperature"))
    bench_.runs.push_back({RunQuantity::hanger, number, *std::move(read), thermometer});
  if (auto read = told(s, "vibration"))
    bench_.runs.push_back({RunQuantity::vibration, number, *std::move(read), meter});
}

// guards_on = "yes"; bearing_greased = { 4 = "yes" }; nut_rechecked = { A = "yes" }; captive_in = { pulley = "no" }.
void BenchReader::read_answers(const toml::table& table, const std::string& id, const std::string& path) {
  for (const auto& [key, node] : table) {
    const std::string at = path + "." + std::string{key.str()};
    if (const toml::table* inner = node.as_table())
      read_answers(*inner, id.empty() ? std::string{key.str()} : id + "." + std::string{key.str()}, at);
    else
      read_answer(node, key, id, at);
  }
}

void BenchReader::read_answer(const toml::node& node, const toml::key& key, const std::string& parent,
                              const std::string& path) {
  const auto& known = context_.known_questions;
  const std::string leaf{key.str()};
  Answered answer;
  if (!parent.empty() && (known.empty() || index_of(parent, known))) {
    answer.question = parent;
    answer.about = leaf;
    answer.number = number_of(leaf, node, key, path);
  } else {
    answer.question = parent.empty() ? leaf : parent + "." + leaf;
    if (!known.empty() && !index_of(answer.question, known)) {
      const std::string& asked = parent.empty() ? leaf : parent;
      Args args{{"question", asked}};
      if (const auto near = meant(asked, known); !near.empty()) args.emplace_back("near", std::string{near});
      return file_.add(Code{"definition.unknown_question"}, path, leaf, std::move(args), file_.place(key));
    }
  }
  const std::span<const std::string_view> words = find_field(Document::readings, "readings_file", "answers")->words;
  Reply reply = Reply::not_seen;
  if (const auto* flag = node.as_boolean()) reply = flag->get() ? Reply::yes : Reply::no;
  if (const auto at = index_of(node.value<std::string>().value_or(""), words)) reply = static_cast<Reply>(*at);
  answer.reply = told(node, reply);
  bench_.answers.push_back(std::move(answer));
}

// A rotor by its number, a nut by its end, any other part by its label (then its station, counted from 1).
int BenchReader::number_of(const std::string& about, const toml::node& node, const toml::key& key,
                           const std::string& path) {
  if (about == "A" || about == "B") return about == "A" ? 1 : 2;
  const bool digits = !about.empty() && std::ranges::all_of(about, [](char c) { return c >= '0' && c <= '9'; });
  if (!digits) {
    const auto at = station(about, node, path);
    return at ? static_cast<int>(*at) + 1 : 0;
  }
  std::int64_t number = 0;
  for (const char c : about) number = std::min<std::int64_t>(number * 10 + (c - '0'), 1'000'000);
  if (number >= 1 && number <= context_.shaft.rotor_count()) return static_cast<int>(number);
  file_.add(Code{"definition.unknown_rotor"}, path, about,
            {{"number", number}, {"least", 1}, {"greatest", context_.shaft.rotor_count()}}, file_.place(key));
  return 0;
}

Results<Links> read_links(std::string_view toml, std::string_view name) {
  File file{Document::readings, toml, name};
  if (!file.parse()) return tl::unexpected(file.take_problems());
  const Section all{file, "readings_file", &file.root(), {}};
  const Section s = all.table("readings");
  return Links{s.text("shaft"), s.text("workshop"), s.place("shaft"), s.place("workshop")};
}

Results<Bench> read_bench(std::string_view toml, std::string_view name, const BenchContext& context) {
  File file{Document::readings, toml, name};
  if (!file.parse()) return tl::unexpected(file.take_problems());
  Bench bench = BenchReader{file, context}.read();
  const std::string& priced = context.shaft.spec().currency;
  if (!priced.empty() && !context.workshop.currency.empty() && priced != context.workshop.currency)
    file.add(Code{"definition.currency_differs"}, "readings.shaft", {},
             {{"shaft", priced}, {"workshop", context.workshop.currency}}, file.whole());
  if (!file.sound()) return tl::unexpected(file.take_problems());
  return bench;
}

Results<Bench> read_bench(std::string_view toml, std::string_view name, const Shaft& shaft, const Workshop& workshop,
                          std::span<const std::string_view> known_questions) {
  return read_bench(toml, name, BenchContext{shaft, workshop, known_questions});
}

}  // namespace flatwise::definition
