#include "job/suspects.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "job/play.h"

namespace flatwise::job {
namespace {

// Weights only order the list. What was found outweighs any doubt: the least of the first row is more than all of the second.
constexpr double kPast = 16, kRough = 12, kNoisy = 10, kHot = 8, kGrease = 8;
constexpr double kDoubt = 2, kAge = 1, kSameHours = 0.5;
// Hours that are the same within a day's work.
constexpr double kSameWithin = 8;

struct Weighed {
  Suspect suspect;
  double weight = 0;
  double width = 0;  ///< Swing over the greatest of a new bearing.
  bool sound = false;
  void add(double w, Message reason, bool found) {
    weight += w;
    suspect.reasons.push_back(std::move(reason));
    suspect.stands_apart = suspect.stands_apart || found;
  }
};

/// The last thing said of a sign at a part.
Reply said(const Bench& bench, Where part, Sign sign) {
  Reply reply = Reply::not_seen;
  for (const PartLook& look : bench.looks)
    if (look.part == part && look.sign == sign) reply = look.reply.value;
  return reply;
}

void weigh_play(const Facts& facts, int rotor, Weighed& w) {
  const std::optional<Play> play = play_of(facts, rotor);
  if (!play) return;
  const Args args{{"typed", play->reading->swing.typed}};
  if (play->fresh != nullptr && play->fresh->si("swing-greatest") > 0)
    w.width = play->reading->swing.value.value.si / play->fresh->si("swing-greatest");
  if (play->stands == PlayStands::past_new) w.add(kPast, {Code{"suspect.play_past_new"}, args}, true);
  if (play->stands == PlayStands::not_possible) w.add(kPast, {Code{"suspect.play_not_possible"}, args}, true);
  if (play->stands == PlayStands::may_be_new) w.add(kDoubt, {Code{"suspect.play_may_be_new"}, args}, false);
}

void weigh_signs(const Facts& facts, Weighed& w) {
  const auto take = [&](Sign sign, double weight, Code code) {
    if (said(facts.bench, w.suspect.part, sign) == Reply::yes) w.add(weight, {code, {}}, true);
  };
  take(Sign::rough, kRough, Code{"suspect.rough"});
  take(Sign::noisy, kNoisy, Code{"suspect.noisy"});
  take(Sign::hot, kHot, Code{"suspect.hot"});
  take(Sign::grease_out, kGrease, Code{"suspect.grease_out"});
  w.sound = said(facts.bench, w.suspect.part, Sign::sound) == Reply::yes;
}

// --- age --------------------------------------------------------------------------------------------------------------

AnyQuantity hours_of(double hours) { return {hours * 3600, Kind::time}; }

std::optional<double> age_of(int rotor, std::span<const BearingLife> lives, std::optional<double> now) {
  if (!now) return std::nullopt;
  std::optional<double> age;
  for (const BearingLife& life : lives)
    if (life.rotor == rotor && !life.to_hours && life.from_hours <= *now) age = *now - life.from_hours;
  return age;
}

/// Hours at which bearings of this machine failed, the shortest first.
std::vector<double> failures(std::span<const BearingLife> lives) {
  std::vector<double> out;
  for (const BearingLife& life : lives)
    if (life.failed && life.to_hours) out.push_back(*life.to_hours - life.from_hours);
  std::ranges::sort(out);
  return out;
}

void weigh_age(std::optional<double> age, const std::vector<double>& failed, Weighed& w) {
  if (!age) return;
  const auto sooner = std::ranges::upper_bound(failed, *age) - failed.begin();
  if (sooner == 0) return;
  w.add(kAge,
        {Code{"suspect.past_a_failure"},
         {{"age", hours_of(*age)}, {"count", static_cast<int>(sooner)}, {"of", static_cast<int>(failed.size())}}},
        false);
}

/// The one that stands apart most and has run as long.
void weigh_same_hours(std::vector<Weighed>& all, std::span<const BearingLife> lives, std::optional<double> now) {
  const auto worst = std::ranges::max_element(all, {}, &Weighed::weight);
  if (worst == all.end() || !worst->suspect.stands_apart || worst->suspect.part.part != Where::Part::rotor) return;
  const int rotor = worst->suspect.part.number;
  const std::optional<double> its = age_of(rotor, lives, now);
  if (!its) return;
  for (Weighed& w : all) {
    if (w.suspect.part.part != Where::Part::rotor || w.suspect.part.number == rotor) continue;
    const std::optional<double> age = age_of(w.suspect.part.number, lives, now);
    if (age && std::abs(*age - *its) <= kSameWithin)
      w.add(kSameHours, {Code{"suspect.same_hours"}, {{"rotor", rotor}}}, false);
  }
}

// --- the list ---------------------------------------------------------------------------------------------------------

std::vector<Where> parts_of(const Shaft& shaft) {
  std::vector<Where> out;
  for (int r = 1; r <= shaft.rotor_count(); ++r) out.push_back(at_rotor(r));
  for (std::size_t i = 0; i < shaft.stations().size(); ++i)
    if (shaft.stations()[i].kind == StationKind::hanger) out.push_back(at_station(static_cast<int>(i)));
  return out;
}

std::vector<Weighed> weigh(const Facts& facts, std::span<const BearingLife> lives, std::optional<double> hours) {
  const std::vector<double> failed = failures(lives);
  std::vector<Weighed> all;
  for (const Where& part : parts_of(facts.shaft)) {
    Weighed& w = all.emplace_back();
    w.suspect.part = part;
    if (part.part == Where::Part::rotor) weigh_play(facts, part.number, w);
    weigh_signs(facts, w);
    if (part.part == Where::Part::rotor) weigh_age(age_of(part.number, lives, hours), failed, w);
  }
  weigh_same_hours(all, lives, hours);
  return all;
}

void say_what_is_missing(const Facts& facts, Suspects& out) {
  for (int r = 1; r <= facts.shaft.rotor_count(); ++r)
    if (std::ranges::none_of(facts.bench.plays, [&](const PlayReading& p) { return p.rotor == r; }))
      out.not_measured.push_back(r);
  if (!out.not_measured.empty())
    out.says.push_back({Code{"suspect.not_measured"},
                        {{"rotors", std::vector<std::int64_t>(out.not_measured.begin(), out.not_measured.end())}}});
}

}  // namespace

Suspects suspects(const Facts& facts, std::span<const BearingLife> lives, std::optional<double> hours) {
  std::vector<Weighed> all = weigh(facts, lives, hours);
  // Said to be sound: doubt and age alone no longer make it a suspect.
  std::erase_if(all,
                [](const Weighed& w) { return w.suspect.reasons.empty() || (w.sound && !w.suspect.stands_apart); });
  std::ranges::stable_sort(all, [](const Weighed& x, const Weighed& y) {
    return std::tuple{!x.suspect.stands_apart, -x.weight, -x.width} <
           std::tuple{!y.suspect.stands_apart, -y.weight, -y.width};
  });
  Suspects out;
  for (Weighed& w : all) out.ranked.push_back(std::move(w.suspect));
  say_what_is_missing(facts, out);
  return out;
}

std::vector<int> rotors_that_stand_apart(const Suspects& suspects) {
  std::vector<int> out;
  for (const Suspect& s : suspects.ranked)
    if (s.stands_apart && s.part.part == Where::Part::rotor) out.push_back(s.part.number);
  std::ranges::sort(out);
  return out;
}

}  // namespace flatwise::job
