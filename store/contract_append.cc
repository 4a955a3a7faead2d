// contract_append.cc: entries into a job: all or none, once, chained, with the stock and the list of changes.
#include <array>

#include "record/chain.h"
#include "store/contract_rows.h"

namespace flatwise::store_contract {
namespace {

void first_append_makes_the_job(Place& place, Report& report) {
  auto store = furnished(place);
  NEEDS(store);
  HOLDS(refused(store->append(append_of({})), Kind::missing));
  const auto done = store->append(append_of({note(101, "one"), note(102, "two")}));
  NEEDS(done && done->rows.size() == 2);
  HOLDS(done->fresh == 2);
  HOLDS(done->rows[0].number == 1 && done->rows[0].before.empty());
  HOLDS(done->rows[1].number == 2 && done->rows[1].before == done->rows[0].hash);
  HOLDS(done->rows[0].hash == record::chain_hash(done->rows[0]));
  HOLDS(done->rows[1].hash == record::chain_hash(done->rows[1]));
  HOLDS(done->head == done->rows[1].hash);
  HOLDS(store->last_change() && *store->last_change() == done->sequence);
  HOLDS(is_whole(*store, id(1)));
  const auto nothing = store->append(append_of({}));
  HOLDS(nothing && nothing->fresh == 0 && nothing->rows.empty() && nothing->head == done->head);
}

void sent_twice_is_stored_once(Place& place, Report& report) {
  auto store = with_a_job(place);
  NEEDS(store);
  const auto before = store->entries(id(1), 0);
  const auto last = store->last_change();
  NEEDS(before && last);
  job::Append again = append_of({note(102, "two"), note(101, "one")});
  again.only_if_head = "a head that is long past";
  const auto done = store->append(again);
  NEEDS(done && done->rows.size() == 2);
  HOLDS(done->fresh == 0 && same(done->rows[0], before->at(1)) && same(done->rows[1], before->at(0)));
  HOLDS(done->head == before->back().hash);
  HOLDS(agree(store->last_change(), last));
  HOLDS(store->entries(id(1), 0) && store->entries(id(1), 0)->size() == 3);
}

void partly_sent_before_stores_the_rest(Place& place, Report& report) {
  auto store = with_a_job(place);
  NEEDS(store);
  const auto done = store->append(append_of({note(103, "three"), note(104, "four"), note(104, "four")}));
  NEEDS(done && done->rows.size() == 3);
  HOLDS(done->fresh == 1 && done->rows[0].number == 3 && done->rows[1].number == 4);
  HOLDS(same(done->rows[1], done->rows[2]));
  HOLDS(is_whole(*store, id(1)));
  HOLDS(store->job(id(1)) && store->job(id(1))->entries == 4);
}

void id_with_other_content_is_refused(Place& place, Report& report) {
  auto store = with_a_job(place);
  NEEDS(store);
  const auto before = store->job(id(1));
  using Change = void (*)(job::EntryRow&);
  constexpr std::array<Change, 7> changes{[](job::EntryRow& r) { r.body = R"({"text":"2"})"; },
                                          [](job::EntryRow& r) { r.at.ms += 1; },
                                          [](job::EntryRow& r) { r.on = "other"; },
                                          [](job::EntryRow& r) { r.follows = id(101); },
                                          [](job::EntryRow& r) { r.corrects = {id(101)}; },
                                          [](job::EntryRow& r) { r.kind = "other"; },
                                          [](job::EntryRow& r) { r.by = id(901); }};
  for (const Change change : changes) {
    job::EntryRow row = note(102, "two");
    change(row);
    HOLDS(refused(store->append(append_of({row})), Kind::exists));
  }
  HOLDS(refused(store->append(append_of({note(104, "a"), note(104, "b")})), Kind::exists));
  HOLDS(refused(store->append(append_of({note(102, "two", 2)}, 2)), Kind::exists));
  const auto now = store->job(id(1));
  HOLDS(before && now && same(*before, *now));
  HOLDS(refused(store->job(id(2)), Kind::missing));
}

void append_is_all_or_none(Place& place, Report& report) {
  auto store = with_a_job(place);
  NEEDS(store);
  const auto before = store->job(id(1));
  const auto last = store->last_change();
  const auto stock = store->workshop();
  job::EntryRow stranger = note(106, "by nobody");
  stranger.by = id(99);
  job::Append append = append_of({note(104, "four"), note(105, "five"), stranger});
  append.projection.waiting = "parts";
  append.moves = {{id(21), "P-20", -1, 0, id(104), {1}}};
  HOLDS(refused(store->append(append), Kind::missing));
  append.rows.back() = note(106, "of another job", 2);
  HOLDS(refused(store->append(append), Kind::failed));
  append.rows.back() = note(102, "not two");
  HOLDS(refused(store->append(append), Kind::exists));
  append.rows.pop_back();
  append.moves = {{id(21), "P-20", -1, 0, id(104), {1}}, {id(21), "P-20", -2, 0, id(105), {1}}};
  HOLDS(refused(store->append(append), Kind::exists));
  const auto now = store->job(id(1));
  HOLDS(before && now && same(*before, *now));
  HOLDS(agree(store->last_change(), last));
  HOLDS(store->entry(id(104)) && !*store->entry(id(104)));
  const auto stock_now = store->workshop();
  HOLDS(stock && stock_now && same(*stock, *stock_now));
  HOLDS(is_whole(*store, id(1)));
}

void head_that_moved_is_refused(Place& place, Report& report) {
  auto store = furnished(place);
  NEEDS(store);
  job::Append first = append_of({note(101, "one")});
  first.only_if_head = "something";
  HOLDS(refused(store->append(first), Kind::changed));
  HOLDS(refused(store->job(id(1)), Kind::missing));
  first.only_if_head = "";
  const auto done = store->append(first);
  NEEDS(done);
  job::Append next = append_of({note(102, "two")});
  next.only_if_head = "";
  HOLDS(refused(store->append(next), Kind::changed));
  next.only_if_head = done->head;
  HOLDS(store->append(next));
  job::Append late = append_of({note(103, "three")});
  late.only_if_head = done->head;
  HOLDS(refused(store->append(late), Kind::changed));
  HOLDS(store->job(id(1)) && store->job(id(1))->entries == 2);
  HOLDS(is_whole(*store, id(1)));
}

void moves_come_with_their_entries_once(Place& place, Report& report) {
  auto store = with_a_job(place);
  NEEDS(store);
  job::Append append = append_of({note(104, "takes two")});
  append.moves = {{id(21), "P-20", -2, 0, id(104), {1}}};
  const auto done = store->append(append);
  HOLDS(done && store->last_change() == done->sequence);
  append.moves[0].id = id(22);  // Sent again, and worked out again.
  HOLDS(store->append(append));
  append.rows.push_back(note(105, "takes one"));
  append.moves = {{id(23), "P-20", -2, 0, id(104), {1}}, {id(24), "P-20", -1, 0, id(105), {1}}};
  HOLDS(store->append(append));
  const auto now = store->workshop();
  HOLDS(now && now->stock[0].on_shelf == 7 - 2 - 1);
}

void hours_come_with_their_entries_once(Place& place, Report& report) {
  auto store = with_a_job(place);
  NEEDS(store);
  const job::HourReading reading{id(51), id(kMachine), {2026, 1, 2}, 1862.5, "", id(kPerson), "", {30}};
  job::Append append = append_of({note(104, "books in")});
  append.hours = {reading};
  const auto done = store->append(append);
  HOLDS(done && store->last_change() == done->sequence);
  HOLDS(store->append(append));  // Sent again.
  append.rows.push_back(note(105, "and another"));
  HOLDS(store->append(append));  // Worked out again with what is new.
  const auto all = store->hours(id(kMachine));
  HOLDS(all && all->size() == 1 && all->at(0).id == reading.id && all->at(0).hours == 1862.5);
  // All or none: with a reading that cannot be kept the entry is not kept either.
  append.rows.push_back(note(106, "of a machine that is not there"));
  append.hours = {{id(52), id(99), {2026, 1, 2}, 1, ""}};
  HOLDS(refused(store->append(append), Kind::missing));
  HOLDS(store->entry(id(106)) && !*store->entry(id(106)));
  HOLDS(is_whole(*store, id(1)));
}

void every_write_is_in_the_list_of_changes(Place& place, Report& report) {
  auto store = with_a_job(place);
  NEEDS(store);
  const auto start = store->last_change();
  NEEDS(start && *start > 0);
  HOLDS(store->append(append_of({note(104, "four"), note(105, "five")})));
  HOLDS(store->put_projection(job_row(1)));
  HOLDS(store->put_machine({id(29), "", "Bare", "", false}));
  HOLDS(store->put_hours({id(51), id(29), {2026, 1, 1}, 3, ""}));
  HOLDS(store->put_lives(id(29), {}));
  HOLDS(store->put_shaft({id(60), id(62), 0, "Other", "", "", {7}}, 0));
  HOLDS(store->move_stock({id(21), "P-20", 1, 0, "found", {1}}));
  HOLDS(store->put_gauge(gauge("B1")));
  HOLDS(store->add_gauge(gauge("B2"), job::Calibration{id(41), "B2", {}, {2027, 1, 1}, 0.1, "", "", "", "", {1}}));
  HOLDS(store->put_calibration({id(42), "B1", {}, {2027, 1, 1}, 0.1, "", "", "", "", {1}}));
  HOLDS(store->put_part({"P-20", "Ring", 0, 0, 1}, store->workshop()->stock[0]));
  HOLDS(store->put_person({id(11), "Owner", job::Role::owner, true}));
  HOLDS(store->put_customer({id(12), "First", ""}));
  const auto all = store->changes(*start, 100);
  NEEDS(all && all->size() == 14);
  const std::array<std::array<std::string, 3>, 14> expected{{{"job", id(1), id(104)},
                                                             {"job", id(1), id(105)},
                                                             {"job", id(1), ""},
                                                             {"machine", id(29), ""},
                                                             {"machine", id(29), ""},
                                                             {"machine", id(29), ""},
                                                             {"shaft", id(62), ""},
                                                             {"stock", "P-20", ""},
                                                             {"gauge", "B1", ""},
                                                             {"gauge", "B2", ""},
                                                             {"gauge", "B1", ""},
                                                             {"stock", "P-20", ""},
                                                             {"person", id(11), ""},
                                                             {"customer", id(12), ""}}};
  for (std::size_t i = 0; i < expected.size(); ++i) {
    HOLDS(all->at(i).what == expected[i][0] && all->at(i).id == expected[i][1] && all->at(i).entry == expected[i][2]);
    HOLDS(all->at(i).sequence > (i == 0 ? *start : all->at(i - 1).sequence));
  }
  HOLDS(store->last_change() == all->back().sequence);
  const auto some = store->changes(all->at(3).sequence, 2);
  HOLDS(some && some->size() == 2 && some->at(0).sequence == all->at(4).sequence);
  HOLDS(store->changes(all->back().sequence, 5) && store->changes(all->back().sequence, 5)->empty());
}

void what_is_refused_is_not_in_the_list_of_changes(Place& place, Report& report) {
  auto store = with_a_job(place);
  NEEDS(store);
  const auto start = store->last_change();
  HOLDS(refused(store->append(append_of({note(101, "not one")})), Kind::exists));
  HOLDS(refused(store->put_projection(job_row(2)), Kind::missing));
  HOLDS(refused(store->put_shaft({id(61), id(kShaft), 0, "Two", "", "", {6}}, 0), Kind::changed));
  HOLDS(refused(store->put_machine({id(31), id(99), "No such customer", "", false}), Kind::missing));
  HOLDS(agree(store->last_change(), start));
}

void when_it_was_taken_in_is_kept(Place& place, Report& report) {
  auto store = with_a_job(place);
  NEEDS(store);
  job::EntryRow row = note(150, "from a tablet");
  row.received = {123'456'789'000};
  HOLDS(store->append(append_of({row})));
  row.received = {999'999'999'000};  // Sent once more it comes later; what was kept first stands.
  const auto again = store->append(append_of({row}));
  NEEDS(again && again->rows.size() == 1);
  HOLDS(again->fresh == 0 && again->rows.front().received.ms == 123'456'789'000);
  const auto kept = store->entry(id(150));
  HOLDS(kept && *kept && (*kept)->received.ms == 123'456'789'000);
  HOLDS(is_whole(*store, id(1)));
}

constexpr std::array<Check, 11> kChecks{{
    {"when_it_was_taken_in_is_kept", when_it_was_taken_in_is_kept},
    {"first_append_makes_the_job", first_append_makes_the_job},
    {"sent_twice_is_stored_once", sent_twice_is_stored_once},
    {"partly_sent_before_stores_the_rest", partly_sent_before_stores_the_rest},
    {"id_with_other_content_is_refused", id_with_other_content_is_refused},
    {"append_is_all_or_none", append_is_all_or_none},
    {"head_that_moved_is_refused", head_that_moved_is_refused},
    {"moves_come_with_their_entries_once", moves_come_with_their_entries_once},
    {"hours_come_with_their_entries_once", hours_come_with_their_entries_once},
    {"every_write_is_in_the_list_of_changes", every_write_is_in_the_list_of_changes},
    {"what_is_refused_is_not_in_the_list_of_changes", what_is_refused_is_not_in_the_list_of_changes},
}};
}  // namespace

std::span<const Check> append_checks() { return kChecks; }

}  // namespace flatwise::store_contract
