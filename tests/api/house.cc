#include "tests/api/house.h"

#include <algorithm>
#include <array>
#include <atomic>
#include <nlohmann/json.hpp>
#include <stdexcept>

#include "desk/desk_samples.h"
#include "record/uuid.h"

namespace flatwise::api_test {
namespace {

namespace fs = std::filesystem;

/// Filled once; every test gets a copy, since filling takes longer than copying.
const fs::path& filled() {
  static const store_sqlite::TestFolder folder;
  static const bool done = [] {
    auto store = store_sqlite::make_store(folder.path(), desk::demo_workshop_id(), {});
    if (!store) throw std::runtime_error("no store: " + store.error().detail);
    const auto demo = desk::fill_demo(**store, desk::demo_built_in());
    if (!demo) throw std::runtime_error("no demo: " + desk::told(demo.error()));
    return true;
  }();
  static_cast<void>(done);
  return folder.path();
}

Known known_in(job::Store& store) {
  Known known;
  const std::vector<job::Person> people = store.people().value();
  for (const job::Person& p : people) {
    if (p.role == job::Role::lead) known.lead = p.id;
    if (p.role == job::Role::bench && known.bench.empty()) known.bench = p.id;
  }
  const job::JobRow row = store.job_by_number("31").value();
  known.job_31 = row.id;
  known.last_31 = store.entries(row.id, 0).value().back().id;
  known.job_34 = store.job_by_number("34").value().id;
  known.machine = row.machine;
  known.version = row.shaft_version;
  const job::Machine machine = store.machine(row.machine).value();
  known.customer = machine.customer;
  known.shaft = machine.shaft;
  known.toml = store.shaft_version(row.shaft_version).value().toml;
  return known;
}

server::Settings settings_for(const fs::path& folder) {
  server::Settings settings;
  settings.data = folder;
  settings.look = server::Milliseconds{20};
  settings.now = [] { return job::Instant{kHouseNow}; };
  settings.limits.drain = server::Milliseconds{200};
  return settings;
}

}  // namespace

void copy_demo_record(const fs::path& folder) { fs::copy(filled(), folder, fs::copy_options::recursive); }

House::House(const std::function<void(server::Settings&)>& change) {
  copy_demo_record(folder_.path());
  other_ = store_sqlite::open_store(folder_.path()).value();
  known_ = known_in(*other_);
  server::Settings settings = settings_for(folder_.path());
  if (change) change(settings);
  auto made = server::Server::make(settings);
  if (!made) throw std::runtime_error("no server: " + std::string{made.error().code.id()});
  server_ = *std::move(made);
  thread_ = std::thread{[this] { server_->run(false); }};
}

House::~House() {
  server_->stop();
  thread_.join();
}

std::string fresh_id() {
  static std::atomic<std::int64_t> count{0};
  return record::uuid7({1'770'200'000'000 + ++count}, {});
}

std::string note(const std::string& text) {
  return nlohmann::json{
      {"kind", "note_written"}, {"part", {{"part", "shaft"}, {"number", 0}}}, {"stage", "booking_in"}, {"text", text}}
      .dump();
}

std::string entries_text(const Author& author, const std::vector<std::string>& bodies,
                         const std::vector<std::string>& ids) {
  nlohmann::json list = nlohmann::json::array();
  for (std::size_t i = 0; i < bodies.size(); ++i)
    list.push_back({{"id", i < ids.size() ? ids[i] : fresh_id()},
                    {"by", author.by},
                    {"on", "test"},
                    {"at", "2026-02-04T08:00:00.000Z"},
                    {"follows", author.follows.empty() ? nlohmann::json() : nlohmann::json(author.follows)},
                    {"corrects", author.corrects},
                    {"body", nlohmann::json::parse(bodies[i])}});
  return nlohmann::json{{"entries", list}}.dump();
}

}  // namespace flatwise::api_test
