#include "tests/rebuilds/runner.h"

#include <algorithm>

#include "definition/read.h"
#include "job/judge.h"

namespace rebuilds {
namespace {

using flatwise::ArgValue;

struct ToText {
  std::string operator()(std::int64_t n) const { return std::to_string(n); }
  std::string operator()(const flatwise::AnyQuantity& q) const { return std::to_string(q.si); }
  std::string operator()(const std::string& s) const { return s; }
  std::string operator()(const flatwise::Word& w) const { return w.id; }
  template <class T>
  std::string operator()(const std::vector<T>& list) const {
    std::string out;
    for (const T& item : list) out += (out.empty() ? "" : ",") + (*this)(item);
    return out;
  }
};

std::vector<std::pair<std::string, std::string>> pairs(const flatwise::Args& args) {
  std::vector<std::pair<std::string, std::string>> out;
  for (const flatwise::Arg& a : args) out.emplace_back(std::string{a.name}, std::visit(ToText{}, a.value));
  return out;
}

std::string place_of(const flatwise::Where& where) {
  using Part = flatwise::Where::Part;
  if (where.part == Part::shaft) return "shaft";
  return (where.part == Part::rotor ? "rotor " : "station ") + std::to_string(where.number);
}

Told told_of(const flatwise::Finding& f) {
  Told out{std::string{f.code.id()}, static_cast<Told::Severity>(f.severity), place_of(f.where), pairs(f.args), {}, {}};
  if (!f.instruction) return out;
  out.todo = std::string{f.instruction->code.id()};
  out.todo_args = pairs(f.instruction->args);
  return out;
}

std::string said(const flatwise::Problem& p) {
  return std::string{p.code.id()} + " " + p.field + " " + p.given +
         (p.place ? " line " + std::to_string(p.place->line) : "");
}

bool hit(const Break& broken, const Told& told) {
  return !broken.what.empty() && (told.code == broken.what || told.arg("question") == broken.what);
}

std::string other(const std::string& name, const std::string& value) {
  if (name == "half" || name == "halves") return value == "half.a" ? "half.b" : "half.a";
  if (name == "nut") return value == "end.a" ? "end.b" : "end.a";
  if (name == "rotor") return std::to_string(std::atoi(value.c_str()) + 1);
  if (name == "label") return value + "0";
  return value;
}

void misplace(Told& told) {
  for (auto& [name, value] : told.args) value = other(name, value);
  if (told.place.starts_with("rotor ")) told.place = "rotor " + other("rotor", told.place.substr(6));
}

template <class T>
bool refuse(const flatwise::Results<T>& read, const char* file, AllTold& out) {
  if (read) return false;
  for (const flatwise::Problem& p : read.error()) out.refused.push_back(std::string{file} + ": " + said(p));
  return true;
}

}  // namespace

Break read_break(const std::string& text) {
  const std::size_t colon = text.find(':');
  return {text.substr(0, colon), colon != std::string::npos};
}

AllTold ask_program(const Texts& texts) {
  AllTold out;
  const auto shaft = flatwise::definition::read_shaft(texts.shaft, "shaft.toml");
  const auto shop = flatwise::definition::read_workshop(texts.workshop, "workshop.toml");
  if (refuse(shaft, "shaft", out) || refuse(shop, "workshop", out)) return out;
  const auto questions = flatwise::job::question_ids();
  const auto bench = flatwise::definition::read_bench(texts.readings, "readings.toml", *shaft, *shop, questions);
  if (refuse(bench, "readings", out)) return out;
  const flatwise::job::Facts facts{*shaft, *shop, *bench};
  for (const auto& stage : flatwise::job::judge_through(facts, flatwise::job::Stage::release).stages) {
    for (const flatwise::Problem& p : stage.problems) out.problems.push_back(said(p));
    for (const flatwise::Finding& f : stage.findings) out.findings.push_back(told_of(f));
  }
  return out;
}

AllTold broken_by(const Break& broken, AllTold told) {
  if (broken.misplace)
    for (Told& t : told.findings)
      if (hit(broken, t)) misplace(t);
  if (!broken.misplace) std::erase_if(told.findings, [&](const Told& t) { return hit(broken, t); });
  return told;
}

}  // namespace rebuilds
