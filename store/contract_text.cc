// contract_text.cc: text as people and devices send it; photos and recordings.
#include <array>
#include <functional>

#include "record/chain.h"
#include "store/contract_rows.h"

namespace flatwise::store_contract {
namespace {

using Write = std::function<bool(job::Store&, const std::string&)>;  // True: refused as `failed`.
template <class T>
bool failed(const job::Stored<T>& answer) {
  return refused(answer, Kind::failed);
}

std::vector<Write> writes_of_text() {
  return {
      [](job::Store& s, const std::string& t) {
        Workshop w;
        w.name = t;
        return failed(s.put_workshop(w));
      },
      [](job::Store& s, const std::string& t) { return failed(s.put_gauge(gauge(t))); },
      [](job::Store& s, const std::string& t) { return failed(s.put_person({id(5), t, job::Role::bench, true})); },
      [](job::Store& s, const std::string& t) { return failed(s.put_person({t, "name", job::Role::bench, true})); },
      [](job::Store& s, const std::string& t) { return failed(s.put_customer({id(5), "name", t})); },
      [](job::Store& s, const std::string& t) { return failed(s.move_stock({id(5), t, 1, 0, "why", {1}})); },
      [](job::Store& s, const std::string& t) { return failed(s.put_machine({id(5), "", t, "", false})); },
      [](job::Store& s, const std::string& t) {
        return failed(s.put_hours({id(5), id(kMachine), {2026, 1, 1}, 1, t}));
      },
      [](job::Store& s, const std::string& t) { return failed(s.put_shaft({id(5), id(6), 0, "n", t, "", {1}}, 0)); },
      [](job::Store& s, const std::string& t) {
        job::JobRow row = job_row(1);
        row.waiting = t;
        return failed(s.put_projection(row));
      },
      [](job::Store& s, const std::string& t) {
        job::EntryRow row = note(104, "four");
        row.on = t;
        return failed(s.append(append_of({row})));
      },
      [](job::Store& s, const std::string& t) {
        job::EntryRow row = note(104, "four");
        row.body = "{\"text\":\"" + t + "\"}";
        return failed(s.append(append_of({row})));
      },
      [](job::Store& s, const std::string& t) {
        job::EntryRow row = note(104, "four");
        row.corrects = {t};
        return failed(s.append(append_of({row})));
      },
  };
}

void text_that_is_none_is_refused(Place& place, Report& report) {
  using namespace std::string_literals;
  auto store = with_a_job(place);
  NEEDS(store);
  const auto last = store->last_change();
  const auto job = store->job(id(1));
  // Source: RFC 3629, section 10: a NUL; a lone continuation; an overlong slash; a surrogate; past U+10FFFF; cut short.
  const std::array<std::string, 8> bad{"a\0b"s,    "\0"s, "\x80", "\xC0\xAF", "\xED\xA0\x80", "\xF4\x90\x80\x80",
                                       "\xE2\x82", "\xFF"};
  for (const Write& write : writes_of_text())
    for (const std::string& text : bad) HOLDS(write(*store, text));
  HOLDS(agree(store->last_change(), last));
  const auto now = store->job(id(1));
  HOLDS(job && now && same(*job, *now));
}

void any_text_comes_back_as_it_went(Place& place, Report& report) {
  auto store = with_a_job(place);
  NEEDS(store);
  const std::array<std::string, 7> texts{"",
                                         "  two  spaces\tand\r\nlines\n",
                                         "it's; drop table jobs; -- \"' %s ?1 {}",
                                         "Ångström é vs e\xCC\x81, 工具, \xF0\x9F\x94\xA9, \xE2\x80\xAE right to left",
                                         "\x01\x1F\x7F",
                                         std::string(1'000'000, 'x'),
                                         std::string(300, 'n')};
  int n = 200;
  for (const std::string& text : texts) {
    ++n;
    HOLDS(store->put_customer({id(n), text, text}));
    HOLDS(store->append(append_of({note(n, text)})));
    const auto entry = store->entry(id(n));
    HOLDS(entry && *entry && (*entry)->body == note(n, text).body);
    const auto all = store->customers();
    HOLDS(all && !all->empty());
    for (const auto& customer : *all)
      if (customer.id == id(n)) HOLDS(customer.name == text && customer.reach == text);
  }
  HOLDS(store->customers() && store->customers()->size() == texts.size() + 1);
  HOLDS(is_whole(*store, id(1)));
}

void numbers_come_back_to_the_bit(Place& place, Report& report) {
  auto store = furnished(place);
  NEEDS(store);
  int n = 300;
  for (const double value : {0.0, 1.0 / 3.0, 5e-324, 1.7976931348623157e308, -0.1, 1862.0}) {
    HOLDS(store->put_hours({id(++n), id(kMachine), {2026, 1, n % 28 + 1}, value, std::to_string(n)}));
    const auto all = store->hours(id(kMachine));
    HOLDS(all && !all->empty());
    for (const auto& reading : *all)
      if (reading.id == id(n)) HOLDS(reading.hours == value);
  }
  HOLDS(refused(store->put_hours({id(400), id(kMachine), {2026, 1, 1}, 1.0 / 0.0, ""}), Kind::failed));
  job::EntryRow far = note(101, "far");
  far.at = {std::int64_t{1} << 53};
  HOLDS(store->append(append_of({far})));
  HOLDS(store->entry(id(101)) && *store->entry(id(101)) && (*store->entry(id(101)))->at == far.at);
}

void blobs_come_back_as_they_went(Place& place, Report& report) {
  auto store = furnished(place);
  NEEDS(store);
  std::string all_bytes;
  for (int i = 0; i < 256; ++i) all_bytes += static_cast<char>(i);
  std::string large;
  while (large.size() < 5'000'000) large += all_bytes;
  for (const std::string& bytes : {std::string{}, std::string{"abc"}, all_bytes, large}) {
    const auto hash = store->put_blob(bytes);
    NEEDS(hash);
    HOLDS(*hash == record::sha256(bytes));
    HOLDS(agree(store->put_blob(bytes), hash));
    HOLDS(store->blob(*hash) == bytes);
  }
  // Source: FIPS 180-4, example of a one-block message "abc".
  HOLDS(store->put_blob("abc") == std::string{"ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"});
}

void blob_that_is_not_there_or_not_its_bytes_is_refused(Place& place, Report& report) {
  auto store = furnished(place);
  NEEDS(store);
  HOLDS(refused(store->blob(record::sha256("never put")), Kind::missing));
  for (const char* no_hash : {"", "ab", "../../../etc/passwd", "zz"})
    HOLDS(refused(store->blob(no_hash), Kind::missing));
  const auto hash = store->put_blob("a photo");
  NEEDS(hash);
  place.spoil_blob(*hash);
  HOLDS(refused(store->blob(*hash), Kind::damaged));
  HOLDS(agree(store->put_blob("a photo"), hash));  // Sent again it is mended.
  HOLDS(store->blob(*hash) == std::string{"a photo"});
}

constexpr std::array<Check, 5> kChecks{{
    {"text_that_is_none_is_refused", text_that_is_none_is_refused},
    {"any_text_comes_back_as_it_went", any_text_comes_back_as_it_went},
    {"numbers_come_back_to_the_bit", numbers_come_back_to_the_bit},
    {"blobs_come_back_as_they_went", blobs_come_back_as_they_went},
    {"blob_that_is_not_there_or_not_its_bytes_is_refused", blob_that_is_not_there_or_not_its_bytes_is_refused},
}};
}  // namespace

std::span<const Check> text_checks() { return kChecks; }

}  // namespace flatwise::store_contract
