// pattern, bend, bearing, study and figure: what reckons.
#include "cli/line.h"

namespace flatwise::cli {
namespace {

void add_bend_verb(CLI::App& app, Line& line) {
  CLI::App* bend = add_verb(app, line, "bend", [&line](const Context& c) { return bend_shaft(c, line.bend); });
  bend->add_option("SHAFT", line.bend.shaft_file, help("shaft"))->required();
  bend->add_option("--csv", line.bend.csv, help("bend_csv"))->check(not_empty(line, "--csv"));
  bend->add_option("--from", line.bend.from, help("bend_from"))->check(not_empty(line, "--from"));
  bend->add_option("--to", line.bend.to, help("bend_to"))->check(not_empty(line, "--to"));
  bend->add_option("--speeds", line.bend.speeds, help("bend_speeds"))->check(whole_numbers(line, "--speeds", false));
}

void add_bearing_verb(CLI::App& app, Line& line) {
  CLI::App* bearing =
      add_verb(app, line, "bearing", [&line](const Context& c) { return tell_bearing(c, line.bearing); });
  bearing->add_option("SHAFT", line.bearing.shaft_file, help("shaft"))->required();
  bearing->add_option("--station", line.bearing.station, help("bearing_station"))->check(not_empty(line, "--station"));
}

void add_pattern_verb(CLI::App& app, Line& line) {
  CLI::App* pattern =
      add_verb(app, line, "pattern", [&line](const Context& c) { return arrange_pattern(c, line.pattern); });
  pattern->add_option("SHAFT", line.pattern.shaft_file, help("shaft"))->required();
  pattern->add_option("--judged", line.pattern.asked.judged, help("judged"))
      ->check(one_of(line, {"larger-plane", "both-planes", "couple"}));
  pattern->add_option("--least-gap", line.pattern.asked.least_gap, help("least_gap"))
      ->check(not_empty(line, "--least-gap"));
  pattern->add_option("--stay", line.pattern.asked.stays, help("stay"))
      ->delimiter(',')
      ->allow_extra_args(false)
      ->check(not_empty(line, "--stay"));
  pattern->add_option("--error-share", line.pattern.asked.error_share, help("error_share"))
      ->check(not_empty(line, "--error-share"));
  pattern->add_option("--error-azimuth", line.pattern.asked.error_azimuth, help("error_azimuth"))
      ->check(not_empty(line, "--error-azimuth"));
  add_switch(*pattern, "--by-hangers", line.pattern.asked.by_hangers, help("by_hangers"));
  pattern->add_option("--pdf", line.pattern.pdf, help("pattern_pdf"))->check(not_empty(line, "--pdf"));
  pattern->add_option("--paper", line.pattern.paper, help("paper"))->check(one_of(line, {"a4", "letter"}));
  pattern->add_option("--printed", line.pattern.printed, help("printed"));
}

void add_study_verb(CLI::App& app, Line& line) {
  CLI::App* study = add_verb(app, line, "study", [&line](const Context& c) { return study_ways(c, line.study); });
  study->add_option("FILE", line.study.file, help("study_file"))->required();
  study->add_option("--way", line.study.ways, help("way"))->allow_extra_args(false)->check(not_empty(line, "--way"));
  study->add_option("--name", line.study.name, help("study_name"))->check(not_empty(line, "--name"));
  study->add_option("--ground", line.study.ground, help("ground"))->check(not_empty(line, "--ground"));
  study->add_option("--error-share", line.study.error_share, help("error_share"))
      ->check(not_empty(line, "--error-share"));
  study->add_option("--error-azimuth", line.study.error_azimuth, help("error_azimuth"))
      ->check(not_empty(line, "--error-azimuth"));
  study->add_option("--csv", line.study.csv, help("study_csv"))->check(not_empty(line, "--csv"));
  study->add_option("--svg", line.study.svg, help("study_svg"))->check(not_empty(line, "--svg"));
  study->add_option("--pdf", line.study.pdf, help("study_pdf"))->check(not_empty(line, "--pdf"));
  study->add_option("--paper", line.study.paper, help("paper"))->check(one_of(line, {"a4", "letter"}));
  study->add_option("--printed", line.study.printed, help("printed"));
}

void add_figure_verb(CLI::App& app, Line& line) {
  CLI::App* figure = add_verb(app, line, "figure", [&line](const Context& c) {
    if (line.figure_pages) return figure_reference(c);
    return line.figure.empty() ? list_figures(c) : one_figure(c, line.figure, line.inputs);
  });
  figure->add_option("NAME", line.figure, help("figure_name"));
  figure->add_option("INPUT", line.inputs, help("figure_input"));
  add_switch(*figure, "--reference", line.figure_pages, help("figure_reference"));
}

}  // namespace

void add_reckoning_verbs(CLI::App& app, Line& line) {
  add_pattern_verb(app, line);
  add_bend_verb(app, line);
  add_bearing_verb(app, line);
  add_study_verb(app, line);
  add_figure_verb(app, line);
}

}  // namespace flatwise::cli
