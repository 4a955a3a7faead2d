#include "desk/taking.h"

#include <algorithm>

#include "desk/meter.h"
#include "desk/stock.h"
#include "job/entry_says.h"
#include "job/roles.h"
#include "record/entry_json.h"
#include "record/photo.h"

namespace flatwise::desk {
namespace {

using namespace job;
using Fault = StoreFault::Kind;

/// A booking is of a machine that is there and of its own shaft.
Done<std::vector<Problem>> problems_of_booking(Store& store, const BookedIn& booked) {
  std::vector<Problem> problems;
  const auto machine = store.machine(booked.machine);
  if (!machine && machine.error().kind != Fault::missing) return fault(machine.error());
  if (!machine)
    problems.push_back(Problem{Code{"record.no_such_machine"}, "body.machine", booked.machine, {}, std::nullopt});
  const auto version = store.shaft_version(booked.shaft);
  if (!version && version.error().kind != Fault::missing) return fault(version.error());
  if (!version)
    problems.push_back(Problem{Code{"record.no_such_shaft"}, "body.shaft", booked.shaft, {}, std::nullopt});
  else if (machine && !machine->shaft.empty() && machine->shaft != version->shaft)
    problems.push_back(Problem{Code{"record.another_shaft"},
                               "body.shaft",
                               {},
                               {{"machine", machine->name}, {"shaft", version->name}},
                               std::nullopt});
  return problems;
}

/// A photo is there before the entry that speaks of it, and is what the entry says it is.
Done<std::vector<Problem>> problems_of_photo(Store& store, const PhotoTaken& photo) {
  const auto bytes = store.blob(photo.blob);
  if (!bytes && bytes.error().kind != Fault::missing) return fault(bytes.error());
  if (!bytes) return std::vector{Problem{Code{"record.no_such_photo"}, "body.blob", photo.blob, {}, std::nullopt}};
  const std::string type{record::photo_type(*bytes)};
  if (type == photo.type) return std::vector<Problem>{};
  return std::vector{
      Problem{Code{"record.another_photo_type"}, "body.type", photo.type, {{"type", type}}, std::nullopt}};
}

/// The shelf as it is once the moves are made: what a job is judged against must not lag behind what it took.
void move_on_shelf(Workshop& workshop, const std::vector<StockMove>& moves) {
  for (const StockMove& move : moves) {
    auto it = std::ranges::find(workshop.stock, move.part_number, &StockItem::part_number);
    if (it == workshop.stock.end()) {
      workshop.stock.push_back({.part_number = move.part_number, .name = {}});
      it = workshop.stock.end() - 1;
    }
    it->on_shelf += move.shelf;
    it->on_order += move.order;
  }
}

/// Number and link of the chain, as the store gave them.
void put_links(std::vector<Entry>& entries, const std::vector<EntryRow>& rows) {
  for (const EntryRow& row : rows) {
    const auto it = std::ranges::find(entries, row.id, &Entry::id);
    if (it == entries.end()) continue;
    it->number = row.number;
    it->before = row.before;
    it->hash = row.hash;
  }
}

class Taking {
 public:
  Taking(Store& store, const Id& id, const std::vector<Entry>& given, Definitions& definitions)
      : store_{store}, id_{id}, given_{given}, definitions_{definitions} {}

  Done<Taken> run(const std::optional<std::string>& only_if_head, const Whole* known) {
    if (auto done = begin(known); !done) return tl::unexpected(std::move(done.error()));
    append_.job = id_;
    for (const Entry& entry : given_) append_.rows.push_back(record::to_row(entry));
    if (std::ranges::all_of(given_, [&](const Entry& e) { return there(e.id); })) return store_again();
    const std::string head = entries_.empty() ? std::string{} : entries_.back().hash;
    if (only_if_head && *only_if_head != head) return fault({Fault::changed, "the head is another one"});
    append_.only_if_head = head;
    if (auto done = check_all(known); !done) return tl::unexpected(std::move(done.error()));
    if (!problems_.empty()) return tl::unexpected(Refusal{std::move(problems_), std::nullopt});
    return store_together();
  }

 private:
  /// The entries that are there already, with room for those that come: what is folded points at them.
  Done<void> begin(const Whole* known) {
    std::vector<Entry> read;
    if (known == nullptr) {
      auto there = entries_of(store_, id_);
      if (!there && there.error().fault->kind != Fault::missing) return tl::unexpected(std::move(there.error()));
      if (there) read = *std::move(there);
    }
    const std::vector<Entry>& from = known != nullptr ? known->opened.job->entries : read;
    entries_.reserve(from.size() + given_.size());
    if (known != nullptr)
      entries_.assign(from.begin(), from.end());
    else
      std::ranges::move(read, std::back_inserter(entries_));
    return {};
  }

  [[nodiscard]] bool there(const Id& id) const { return std::ranges::find(entries_, id, &Entry::id) != entries_.end(); }

  /// All of it is there: the store says how it was numbered.
  Done<Taken> store_again() {
    auto appended = store_.append(append_);
    if (!appended) return fault(std::move(appended.error()));
    return Taken{*std::move(appended), std::nullopt, 0};
  }

  Done<Taken> store_together() {
    auto after = std::make_shared<Surroundings>(*around_);
    move_on_shelf(after->workshop, append_.moves);
    auto job = put_together(shaft_, *after, std::move(entries_), std::move(state_));
    Standing stands = standing(*job);
    append_.projection = row_of(*job, stands, id_);
    auto appended = store_.append(append_);
    if (!appended) return fault(std::move(appended.error()));
    put_links(job->entries, appended->rows);
    JobRow row = std::move(append_.projection);
    row.head = appended->head;
    const std::size_t changes = static_cast<std::size_t>(appended->fresh) + append_.moves.size() + append_.hours.size();
    return Taken{*std::move(appended), Whole{{std::move(job), std::move(stands), std::move(row)}, std::move(after)},
                 changes};
  }

  /// Each new entry against the state that those before it make. What is wrong with one does not hide the others.
  Done<void> check_all(const Whole* known) {
    if (known != nullptr) {
      around_ = known->around;
      shaft_ = known->opened.job->definition;
    } else {
      auto around = surroundings(store_);
      if (!around) return tl::unexpected(std::move(around.error()));
      around_ = *std::move(around);
      if (!entries_.empty())
        if (auto done = load_shaft(); !done) return done;
    }
    if (shaft_) take_state(known != nullptr ? &known->opened.job->state : nullptr);
    for (std::size_t i = 0; i < given_.size(); ++i) {
      if (there(given_[i].id)) continue;
      path_ = "entries[" + std::to_string(i) + "].";
      if (auto done = check(given_[i]); !done) return done;
      if (!shaft_) return {};  // Nothing more can be said of a job that goes by no definition.
    }
    return {};
  }

  Done<void> check(const Entry& given) {
    check_author(given);
    const auto* booked = std::get_if<BookedIn>(&given.body);
    if (booked != nullptr) {
      auto problems = problems_of_booking(store_, *booked);
      if (!problems) return tl::unexpected(std::move(problems.error()));
      for (Problem& p : *problems) add(std::move(p));
      if (auto done = read_meter(given); !done) return done;
      if (!problems_.empty() && !shaft_) return {};
    } else if (!shaft_) {
      add(Problem{Code{"record.not_booked_in"}, "body.kind", {}, {}, std::nullopt});
      return {};
    }
    if (!shaft_) {
      auto shaft = shaft_of(store_, booked->shaft, definitions_);
      if (!shaft) return tl::unexpected(std::move(shaft.error()));
      shaft_ = *std::move(shaft);
      take_state(nullptr);
    }
    if (const auto* photo = std::get_if<PhotoTaken>(&given.body)) {
      auto problems = problems_of_photo(store_, *photo);
      if (!problems) return tl::unexpected(std::move(problems.error()));
      for (Problem& p : *problems) add(std::move(p));
    }
    for (Problem& p : check_entry(*shaft_, workshop_of(*around_, *before_), *before_, given)) add(std::move(p));
    return carry_on(given);
  }

  /// The hour meter of a booking, for its machine's log. A machine that is not there is told already.
  Done<void> read_meter(const Entry& given) {
    const auto noted = store_.hours(std::get<BookedIn>(given.body).machine);
    if (!noted) return fault(noted.error());
    MeterRead read = meter_read(given, entries_, *noted);
    for (Problem& p : read.problems) add(std::move(p));
    if (read.reading) append_.hours.push_back(*std::move(read.reading));
    return {};
  }

  void check_author(const Entry& given) {
    const auto by = std::ranges::find(around_->people, given.by, &Person::id);
    if (by == around_->people.end() || !by->active)
      add(Problem{Code{"record.no_such_person"}, "by", given.by, {}, std::nullopt});
    else if (const auto role = lacks_role(by->role, given.body))
      add(Problem{Code{"record.wrong_role"}, "by", by->name, {{"role", role_word(*role)}}, std::nullopt});
  }

  /// The state with one entry more, and what that moves in the stock. It is what the next entry is checked against.
  Done<void> carry_on(const Entry& given) {
    entries_.push_back(given);
    entries_.back().number = static_cast<int>(entries_.size());
    if (std::holds_alternative<BookedIn>(given.body) && problems_.empty())
      if (auto done = load_shaft(); !done) return done;
    const Effects effects = std::move(effects_);
    take_state(nullptr);
    for (StockMove& move : moves_between(effects, effects_, entries_.back())) append_.moves.push_back(std::move(move));
    return {};
  }

  void take_state(const JobState* known) {
    if (known == nullptr) state_ = fold(*shaft_, around_->workshop, entries_);
    before_ = known != nullptr ? known : &*state_;
    effects_ = stock_effects(*shaft_, *before_);
  }

  Done<void> load_shaft() {
    const BookedIn* booked = booking(entries_);
    if (booked == nullptr) return fault({Fault::damaged, "job " + id_ + " was never booked in"});
    auto shaft = shaft_of(store_, booked->shaft, definitions_);
    if (!shaft) return tl::unexpected(std::move(shaft.error()));
    shaft_ = *std::move(shaft);
    return {};
  }
  void add(Problem problem) {
    problem.field = path_ + problem.field;
    problems_.push_back(std::move(problem));
  }

  Store& store_;
  const Id& id_;
  const std::vector<Entry>& given_;
  Definitions& definitions_;
  std::vector<Entry> entries_;  ///< Those of the store, then those taken; never moved while a state points at them.
  std::shared_ptr<const Surroundings> around_;
  std::shared_ptr<const Shaft> shaft_;
  std::optional<JobState> state_;     ///< Of all entries so far, once one was taken.
  const JobState* before_ = nullptr;  ///< That, or the one known from before.
  Effects effects_;                   ///< Of `before_`.
  std::vector<Problem> problems_;
  std::string path_;
  Append append_;
};

}  // namespace

Done<Taken> take_once(Store& store, const Id& id, const std::vector<Entry>& given,
                      const std::optional<std::string>& only_if_head, Definitions& definitions, const Whole* known) {
  return Taking{store, id, given, definitions}.run(only_if_head, known);
}

}  // namespace flatwise::desk
