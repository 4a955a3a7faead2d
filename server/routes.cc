#include "server/routes.h"

#include <array>

namespace flatwise::server {
namespace {

using Kind = QueryRule::Kind;
using Body = Route::Body;

constexpr QueryRule kUnits{.kind = Kind::choice, .name = "units", .choices = "metric|inch"};
constexpr QueryRule kUnitsOnly[] = {kUnits};
constexpr QueryRule kJobs[] = {{.kind = Kind::text, .name = "number", .greatest = 40}};
constexpr QueryRule kMachineJobs[] = {{.kind = Kind::number, .name = "limit", .least = 1, .greatest = 200},
                                      {.kind = Kind::instant, .name = "before"}};
constexpr QueryRule kMoves[] = {{.kind = Kind::number, .name = "limit", .least = 1, .greatest = 500}};
constexpr QueryRule kEntries[] = {{.kind = Kind::number, .name = "after", .least = 0, .greatest = 2'000'000'000}};
constexpr QueryRule kEvents[] = {
    {.kind = Kind::number, .name = "after", .least = 0, .greatest = 9'000'000'000'000'000}};
constexpr QueryRule kBench[] = {
    kUnits,
    {.kind = Kind::choice,
     .name = "stage",
     .choices = "booking_in|finding|plan|teardown|inspection|kit|press|timing|stack|torque|test_run|release"},
    {.kind = Kind::number, .name = "station", .least = 0, .greatest = 100'000},
    {.kind = Kind::choice, .name = "from", .choices = "a|b"},
    {.kind = Kind::number, .name = "step", .least = 1, .greatest = 100'000},
    {.kind = Kind::id, .name = "by"}};
constexpr QueryRule kSheet[] = {kUnits,
                                {.kind = Kind::choice, .name = "paper", .choices = "a4|letter"},
                                {.kind = Kind::choice, .name = "format", .choices = "pdf|svg|png"},
                                {.kind = Kind::number, .name = "page", .least = 1, .greatest = 1000}};

constexpr QueryRule kStudy[] = {kUnits,
                                {.kind = Kind::text, .name = "ways", .greatest = 8000},
                                {.kind = Kind::text, .name = "name", .greatest = 120},
                                {.kind = Kind::text, .name = "ground", .greatest = 40},
                                {.kind = Kind::text, .name = "error_share", .greatest = 40},
                                {.kind = Kind::text, .name = "error_azimuth", .greatest = 40}};
constexpr QueryRule kStudyFile[] = {kUnits,
                                    {.kind = Kind::text, .name = "ways", .greatest = 8000},
                                    {.kind = Kind::text, .name = "name", .greatest = 120},
                                    {.kind = Kind::text, .name = "ground", .greatest = 40},
                                    {.kind = Kind::text, .name = "error_share", .greatest = 40},
                                    {.kind = Kind::text, .name = "error_azimuth", .greatest = 40},
                                    {.kind = Kind::choice, .name = "paper", .choices = "a4|letter"}};

constexpr QueryRule kJudged{.kind = Kind::choice, .name = "judged", .choices = "larger-plane|both-planes|couple"};
constexpr QueryRule kLeastGap{.kind = Kind::text, .name = "least_gap", .greatest = 40};
constexpr QueryRule kStay{.kind = Kind::text, .name = "stay", .greatest = 2000};
constexpr QueryRule kErrorShare{.kind = Kind::text, .name = "error_share", .greatest = 40};
constexpr QueryRule kErrorAzimuth{.kind = Kind::text, .name = "error_azimuth", .greatest = 40};
constexpr QueryRule kByHangers{.kind = Kind::choice, .name = "by_hangers", .choices = "true|false"};
constexpr QueryRule kPaper{.kind = Kind::choice, .name = "paper", .choices = "a4|letter"};
constexpr QueryRule kPattern[] = {kUnits, kJudged, kLeastGap, kStay, kErrorShare, kErrorAzimuth, kByHangers};
constexpr QueryRule kPatternFile[] = {kUnits,      kJudged,       kLeastGap,  kStay,
                                      kErrorShare, kErrorAzimuth, kByHangers, kPaper};
constexpr QueryRule kBendFile[] = {kUnits,
                                   {.kind = Kind::text, .name = "from", .greatest = 40},
                                   {.kind = Kind::text, .name = "to", .greatest = 40},
                                   {.kind = Kind::number, .name = "speeds", .least = 2, .greatest = 2000}};
constexpr QueryRule kBearing[] = {kUnits, {.kind = Kind::text, .name = "station", .greatest = 120}};

constexpr bool kHere = false, kPool = true;

constexpr Route kRoutes[] = {
    // The two that must be quick stand first.
    {"GET", "/api/jobs/{id}", "job", get_job, kHere},
    {"GET", "/api/machines/{id}/jobs", "machineJobs", get_machine_jobs, kHere, Body::none, kMachineJobs},
    {"GET", "/api/jobs/{id}/bench", "bench", get_bench, kPool, Body::none, kBench},
    {"GET", "/api/jobs/{id}/entries", "entries", get_entries, kPool, Body::none, kEntries},
    {"POST", "/api/jobs/{id}/entries", "record", post_entries, kPool, Body::entries},
    {"GET", "/api/jobs/{id}/report", "report", get_report, kPool, Body::none, kUnitsOnly},
    {"GET", "/api/jobs/{id}/sheets/{name}", "sheet", get_sheet, kPool, Body::none, kSheet},
    {"GET", "/api/jobs", "jobByNumber", get_jobs, kHere, Body::none, kJobs},
    {"GET", "/api/board", "board", get_board, kPool, Body::none, kUnitsOnly},
    {"GET", "/api/workshop", "workshop", get_workshop},
    {"GET", "/api/people", "people", get_people},
    {"POST", "/api/people", "putPerson", post_person, kPool, Body::json},
    {"POST", "/api/people/{id}/at-work", "setAtWork", post_at_work, kPool, Body::json},
    {"GET", "/api/customers", "customers", get_customers},
    {"POST", "/api/customers", "putCustomer", post_customer, kPool, Body::json},
    {"GET", "/api/machines", "machines", get_machines},
    {"POST", "/api/machines", "putMachine", post_machine, kPool, Body::json},
    {"GET", "/api/machines/{id}", "machine", get_machine, kPool, Body::none, kUnitsOnly},
    {"POST", "/api/machines/{id}/hours", "putHours", post_hours, kPool, Body::json},
    {"GET", "/api/shafts", "shafts", get_shafts},
    {"POST", "/api/shafts", "putShaft", post_shaft, kPool, Body::json},
    {"POST", "/api/shafts/check", "checkShaft", check_shaft, kPool, Body::json, kUnitsOnly},
    {"GET", "/api/shafts/{id}", "shaft", get_shaft},
    {"GET", "/api/shafts/{id}/study", "study", get_study, kPool, Body::none, kStudy},
    {"GET", "/api/shafts/{id}/study/{file}", "studyFile", get_study_file, kPool, Body::none, kStudyFile},
    {"GET", "/api/shafts/{id}/pattern", "pattern", get_pattern, kPool, Body::none, kPattern},
    {"GET", "/api/shafts/{id}/pattern/{file}", "patternFile", get_pattern_file, kPool, Body::none, kPatternFile},
    {"GET", "/api/shafts/{id}/bend", "bend", get_bend, kPool, Body::none, kUnitsOnly},
    {"GET", "/api/shafts/{id}/bend/{file}", "bendFile", get_bend_file, kPool, Body::none, kBendFile},
    {"GET", "/api/shafts/{id}/bearing", "bearing", get_bearing, kPool, Body::none, kBearing},
    {"GET", "/api/gauges", "gauges", get_gauges, kPool, Body::none, kUnitsOnly},
    {"POST", "/api/gauges", "addGauge", post_gauge, kPool, Body::json, kUnitsOnly},
    {"POST", "/api/calibrations", "noteCalibration", post_calibration, kPool, Body::json, kUnitsOnly},
    {"GET", "/api/stock", "stock", get_stock},
    {"GET", "/api/stock/moves", "stockMoves", get_moves, kPool, Body::none, kMoves},
    {"POST", "/api/parts", "putPart", post_part, kPool, Body::json},
    {"POST", "/api/stock", "moveStock", post_stock, kPool, Body::json},
    {"GET", "/api/figures", "figures", get_figures, kPool, Body::none, kUnitsOnly},
    {"POST", "/api/figures/{name}", "figure", post_figure, kPool, Body::json, kUnitsOnly},
    {"GET", "/api/blobs/{hash}", "blob", get_blob},
    {"PUT", "/api/blobs/{hash}", "putBlob", put_blob, kPool, Body::photo},
    {"GET", "/api/events", "events", get_events, kHere, Body::none, kEvents},
    {"POST", "/api/letin", "letIn", post_let_in, kPool, Body::json},
    {"POST", "/api/letin/offer", "offerLetIn", post_offer, kPool, Body::json},
    {"GET", "/api/tablets", "tablets", get_tablets},
    {"POST", "/api/tablets/{id}/take-back", "takeBackTablet", post_take_back, kPool, Body::json},
};

std::string_view next_part(std::string_view& path) {
  if (path.starts_with('/')) path.remove_prefix(1);
  const std::string_view part = path.substr(0, path.find('/'));
  path.remove_prefix(part.size());
  return part;
}

bool fits(std::string_view pattern, std::string_view path, std::array<std::string_view, 2>& captured) {
  if (pattern == "/api/shafts/{id}" && path == "/api/shafts/check") return false;  // That is a route of its own.
  std::size_t places = 0;
  while (!pattern.empty() && !path.empty()) {
    const std::string_view want = next_part(pattern), is = next_part(path);
    if (want.starts_with('{') && !is.empty()) {
      captured[places++] = is;
    } else if (want != is) {
      return false;
    }
  }
  return pattern.empty() && path.empty();
}

}  // namespace

std::span<const Route> routes() { return kRoutes; }

int match(std::string_view method, std::string_view path, std::array<std::string_view, 2>& captured) {
  if (method == "HEAD") method = "GET";
  for (std::size_t i = 0; i < std::size(kRoutes); ++i)
    if (kRoutes[i].method == method && fits(kRoutes[i].pattern, path, captured)) return static_cast<int>(i);
  return -1;
}

std::string allowed(std::string_view path) {
  std::string allow;
  std::array<std::string_view, 2> captured;
  for (const Route& route : kRoutes) {
    if (!fits(route.pattern, path, captured)) continue;
    allow += std::string{route.method} + ", ";
    if (route.method == "GET") allow += "HEAD, ";
  }
  return allow.empty() ? allow : allow + "OPTIONS";
}

}  // namespace flatwise::server
