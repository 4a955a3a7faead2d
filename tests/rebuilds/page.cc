// The table, for the terminal and for docs/catch-rate.md.
#include <cstdio>

#include "tests/rebuilds/tally.h"

namespace rebuilds {
namespace {

constexpr const char* kClasses[] = {"left out", "fitted wrongly", "wrong part", "other"};

template <class... T>
std::string put(const char* format, T... values) {
  char text[400];
  std::snprintf(text, sizeof text, format, values...);
  return text;
}

std::string percent(double of, double all) { return all > 0 ? put("%.1f %%", 100 * of / all) : std::string{"–"}; }

Row total(const Tally& t, Class in) {
  Row sum;
  for (int i = 0; i < kKinds; ++i) {
    if (row_of(static_cast<Kind>(i)).in != in) continue;
    const Row& row = t.rows[static_cast<std::size_t>(i)];
    sum.put_in += row.put_in, sum.caught += row.caught, sum.named += row.named;
    sum.certain += row.certain, sum.certain_named += row.certain_named;
  }
  return sum;
}

bool only_certain(const Row& row) { return row.gauged == 0; }

void certain_table(const Tally& t, std::string& out) {
  out += "| kind | class | put in | caught | named | rate |\n|---|---|--:|--:|--:|--:|\n";
  for (int i = 0; i < kKinds; ++i) {
    const Row& row = t.rows[static_cast<std::size_t>(i)];
    const KindRow& kind = row_of(static_cast<Kind>(i));
    if (!only_certain(row) || row.put_in == 0) continue;
    out += put("| %s | %s | %d | %d | %d | %s |\n", kind.words, kClasses[static_cast<int>(kind.in)], row.put_in,
               row.caught, row.named, percent(row.named, row.put_in).c_str());
  }
}

void gauged_table(const Tally& t, std::string& out) {
  out +=
      "| kind | class | put in | certain | of these named | others | called out | promised at least | cannot tell | "
      "passed | "
      "allowed at most |\n|---|---|--:|--:|--:|--:|--:|--:|--:|--:|--:|\n";
  for (int i = 0; i < kKinds; ++i) {
    const Row& row = t.rows[static_cast<std::size_t>(i)];
    const KindRow& kind = row_of(static_cast<Kind>(i));
    if (only_certain(row)) continue;
    out += put("| %s | %s | %d | %d | %d | %d | %s | %s | %s | %s | %s |\n", kind.words,
               kClasses[static_cast<int>(kind.in)], row.put_in, row.certain, row.certain_named, row.gauged,
               percent(row.called, row.gauged).c_str(), percent(row.promised, row.gauged).c_str(),
               percent(row.undecided, row.gauged).c_str(), percent(row.passed, row.gauged).c_str(),
               percent(row.pass_allowed, row.gauged).c_str());
  }
}

void class_table(const Tally& t, std::string& out) {
  out += "| class | put in | known for certain | of these named | named in all |\n|---|--:|--:|--:|--:|\n";
  for (int c = 0; c < 4; ++c) {
    const Row row = total(t, static_cast<Class>(c));
    out += put("| %s | %d | %d | %s | %s |\n", kClasses[c], row.put_in, row.certain,
               percent(row.certain_named, row.certain).c_str(), percent(row.named, row.put_in).c_str());
  }
}

void clean_lines(const Tally& t, std::string& out) {
  out += put("- Clean rebuilds: %d. Alarms that no gauge excuses: **%d**.\n", t.clean, t.clean_discrete);
  out +=
      put("- Decisions of a gauge on their parts: %d. Called out all the same: %d; the stated uncertainty allows %.1f. "
          "Cannot tell: %d.\n",
          t.clean_decisions, t.clean_called, t.called_allowed, t.clean_undecided);
  out +=
      put("- Shafts with wrong marks: %d. After the turns proposed, every bore straight and the pattern there, by the "
          "truth "
          "model: %d.\n",
          t.mends, t.mends_right);
  out +=
      put("- Of these %d were told as another story of the same marks, of no more work than the one that was put in.\n",
          t.other_stories);
}

constexpr const char* kHow = R"(## How it is measured
`tests/rebuilds/` holds a truth model that shares no code with the checks: a test reads its sources and refuses an include of
the program. From a seed it draws a shaft (3 to 24 rotors on 4, 6 or 8 flats; facing, step or listed patterns; leans of 2° and
5°; unequal stations, hangers anywhere, a pulley or shoulder that nothing passes; some rotors left on), a workshop (gauges whose
errors are true of their certificates, k = 2; rooms, thermometers), and the true state of every part. Mistakes are put into that
state, or into what is written down. Then each gauge reads with its own error, scatter and resolution, and the three files are
written as a shop would write them, in mixed units.

The files go through the program's own reader, and `judge_through(..., release)` judges them. A mistake is *caught* when a
finding of its kind is made, and *named* when the finding stands at the right rotor, half, plane, nut, station or label with the
right content. Of ten rebuilds two are clean, seven have one mistake (kind after kind) and one has two to four. Of a hundred
rebuilds ten have limits for the test run, and what goes wrong in those goes wrong there.

A mistake is *known for certain* when complete readings show it with p ≥ 1 − 10⁻⁶. These must be caught and named every time.
The others are *gauge-limited*: the truth model works out, for each one, the chance that the stated uncertainty leaves of calling
it out (promised at least) and of saying nothing (allowed at most). A rate fails when chance alone would make it so once in a
million (Bernstein's inequality). The promises err to the low side: what the form of a bore may hide is taken at its most.

**Marks.** The truth model leans bores in space. The halves named must be exactly those that some allowed standing of the shaft has
wrong, and none that frees fewer rotors and turns fewer halves would do. Where the same marks have two such stories either is
right. The turns proposed are then made on the true marks, and every bore must be straight and the pattern there.

)";

constexpr const char* kNot = R"(## What it does not show
- Mistakes nobody reads or answers for: a 'yes' to a question that should have been 'no', a mark misread, a designation copied
  from the list. People miss about one in a hundred such things; no check of ours sees them.
- A hub that is hot where no temperature was taken, beyond the room's stated range. U widens; the heat stays hidden.
- Errors of gauges beyond their certificates, bores that are not two-lobed, wear between the two planes.
- How often each mistake is made in real workshops: the kinds are put in equally often, so totals by class are no forecast.
- Most undersized rings: the band of the press force from books is so wide that force says little (see the row; the sheet
  says so too).
- A rebuild where all rotors came off and the far end was left standing: the readings file cannot say so yet.

)";

}  // namespace

std::string table(const Tally& t) {
  std::string out;
  out += put("%d rebuilds from seed %llu: %d clean, %d with several mistakes\n\n", t.rebuilds, t.first_seed, t.clean,
             t.several);
  certain_table(t, out);
  out += "\n";
  gauged_table(t, out);
  out += "\n";
  class_table(t, out);
  out += "\n";
  clean_lines(t, out);
  return out;
}

std::string page(const Tally& t) {
  std::string out = "# Catch rate\n\nWritten by `rebuilds --write docs/catch-rate.md`; don't edit by hand.\n\n";
  out += put("%d rebuilds from seed %llu: %d clean, %d with one mistake, %d with several.\n\n", t.rebuilds,
             t.first_seed, t.clean, t.rebuilds - t.clean - t.several, t.several);
  out += put("Command: `rebuilds --seed %llu --count %d --write docs/catch-rate.md`\n\n", t.first_seed, t.rebuilds);
  out += "## Known for certain: caught and named, all of them\n";
  certain_table(t, out);
  out += "\n## Gauge-limited: at the rate that the stated uncertainty promises\n";
  gauged_table(t, out);
  out += "\n## By class\n";
  class_table(t, out);
  out += "\n## Clean rebuilds, and the mends\n";
  clean_lines(t, out);
  out += "\n";
  out += kHow;
  out += kNot;
  out +=
      "## Break a check\n`rebuilds --break kit.wrong_bearing` drops the findings of one check, `--break "
      "timing.half_out:misplace` "
      "says them of another part; its rows fall and no other (a test does so).\n";
  return out;
}

}  // namespace rebuilds
