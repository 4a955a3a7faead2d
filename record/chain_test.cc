#include "record/chain.h"

#include <gtest/gtest.h>

#include "record/instant.h"
#include "record/uuid.h"

namespace flatwise::record {
namespace {

using job::EntryRow;

// Source: NIST, FIPS 180 example values (SHA-256 of "abc" and of the 448-bit message) and the empty message of the SHAVS vectors.
TEST(Sha256, KnownAnswers) {
  EXPECT_EQ(sha256("abc"), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  EXPECT_EQ(sha256(""), "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
  EXPECT_EQ(sha256("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq"),
            "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
  EXPECT_EQ(sha256(std::string(1'000'000, 'a')), "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0");
}

// Source: RFC 9562, Appendix A.6 (example of a version 7 UUID).
TEST(Uuid, VersionSevenOfTheRfc) {
  const job::Instant at{0x017F22E279B0};
  EXPECT_EQ(uuid7(at, {0x0C, 0xC3, 0x18, 0xC4, 0xDC, 0x0C, 0x0C, 0x07, 0x39, 0x8F}),
            "017f22e2-79b0-7cc3-98c4-dc0c0c07398f");
  // Bits that belong to version and variant are set whatever the random bytes say.
  EXPECT_EQ(uuid7(at, {0xFC, 0xC3, 0xD8, 0xC4, 0xDC, 0x0C, 0x0C, 0x07, 0x39, 0x8F}),
            "017f22e2-79b0-7cc3-98c4-dc0c0c07398f");
  EXPECT_EQ(text_of(at), "2022-02-22T19:22:22.000Z");  // The same example says this time, in another zone.
}

TEST(Uuid, OnlyTheWrittenForm) {
  EXPECT_TRUE(is_uuid("017f22e2-79b0-7cc3-98c4-dc0c0c07398f"));
  for (const char* bad : {"", "017F22E2-79B0-7CC3-98C4-DC0C0C07398F", "017f22e279b07cc398c4dc0c0c07398f",
                          "017f22e2-79b0-7cc3-98c4-dc0c0c07398", "017f22e2-79b0-7cc3-98c4-dc0c0c07398g",
                          "017f22e2-79b0-7cc3-98c4_dc0c0c07398f", "{17f22e2-79b0-7cc3-98c4-dc0c0c07398f"})
    EXPECT_FALSE(is_uuid(bad)) << bad;
}

// Source: RFC 9562, sections 4.1 (variant) and 4.2 (version), and the examples of Appendix A for versions 1, 4 and 7.
TEST(Uuid, OfVersionSevenSaysSo) {
  EXPECT_TRUE(is_uuid7("017f22e2-79b0-7cc3-98c4-dc0c0c07398f"));
  for (const char* other : {"c232ab00-9414-11ec-b3c8-9f6bdeced846", "919108f7-52d1-4320-9bac-f847db4148a8",
                            "00000000-0000-0000-0000-000000000000", "017f22e2-79b0-7cc3-c8c4-dc0c0c07398f", "7"})
    EXPECT_FALSE(is_uuid7(other)) << other;
}

TEST(Uuid, SortsByTime) {
  constexpr std::array<std::uint8_t, 10> kMost{255, 255, 255, 255, 255, 255, 255, 255, 255, 255};
  EXPECT_LT(uuid7({1'770'000'000'000}, kMost), uuid7({1'770'000'000'001}, {}));
}

// Source: RFC 3339, section 5.6; days and seconds that the calendar does not have are from its rules (Gregorian).
TEST(Instant, OneFormOnly) {
  EXPECT_EQ(instant_of("1970-01-01T00:00:00.000Z")->ms, 0);
  EXPECT_EQ(instant_of("1969-12-31T23:59:59.999Z")->ms, -1);
  EXPECT_EQ(instant_of("2024-02-29T12:00:00.500Z")->ms, 1'709'208'000'500);
  for (const char* bad :
       {"", "2026-02-03", "2026-02-03T09:15:00Z", "2026-02-03T09:15:00.000+00:00", "2026-02-03 09:15:00.000Z",
        "2026-02-30T09:15:00.000Z", "2025-02-29T09:15:00.000Z", "2026-13-01T09:15:00.000Z", "2026-02-03T24:00:00.000Z",
        "2026-02-03T09:60:00.000Z", "2026-02-03T09:15:60.000Z", "2026-02-03t09:15:00.000z", "0000-01-01T00:00:00.000Z",
        "-026-02-03T09:15:00.000Z", "2026-02-03T09:15:00.000Z "})
    EXPECT_FALSE(instant_of(bad)) << bad;
}

TEST(Instant, ComesBackAsItWas) {
  for (const std::int64_t ms : {std::int64_t{0}, std::int64_t{-62'135'596'800'000}, std::int64_t{253'402'300'799'999},
                                std::int64_t{1'770'109'530'123}})
    EXPECT_EQ(instant_of(text_of(job::Instant{ms}))->ms, ms);
}

std::vector<EntryRow> chained(int count) {
  std::vector<EntryRow> rows;
  for (int i = 1; i <= count; ++i) {
    EntryRow row{uuid7({1000 * i}, {}),
                 uuid7({1}, {}),
                 uuid7({2}, {}),
                 "tablet",
                 {1000 * i},
                 {},
                 {},
                 "note_written",
                 R"({"kind":"note_written"})",
                 i,
                 rows.empty() ? "" : rows.back().hash,
                 {}};
    if (i > 1) row.corrects = {rows.back().id};
    row.hash = chain_hash(row);
    rows.push_back(row);
  }
  return rows;
}

// The text as it stands in docs: a change of the form would break every chain kept so far.
TEST(Chain, TextIsFixed) {
  EXPECT_EQ(chain_text(chained(1).front()),
            R"({"at":"1970-01-01T00:00:01.000Z","before":null,"body":{"kind":"note_written"},)"
            R"("by":"00000000-0002-7000-8000-000000000000","corrects":[],"follows":null,)"
            R"("id":"00000000-03e8-7000-8000-000000000000","job":"00000000-0001-7000-8000-000000000000",)"
            R"("kind":"note_written","number":1,"on":"tablet"})");
}

TEST(Chain, HoldsAndBreaksWhereItWasTouched) {
  const std::vector<EntryRow> good = chained(6);
  EXPECT_FALSE(verify_chain(good));
  EXPECT_FALSE(verify_chain({}));
  using Touch = void (*)(EntryRow&);
  const Touch touches[] = {[](EntryRow& r) { r.body = R"({"kind":"note_written","x":1})"; },
                           [](EntryRow& r) { r.by = r.id; },
                           [](EntryRow& r) { r.on = "other"; },
                           [](EntryRow& r) { ++r.at.ms; },
                           [](EntryRow& r) { r.follows = r.job; },
                           [](EntryRow& r) { r.corrects.clear(); },
                           [](EntryRow& r) { r.kind = "signed"; },
                           [](EntryRow& r) { r.id = r.job; },
                           [](EntryRow& r) { r.job = r.id; },
                           [](EntryRow& r) { ++r.number; },
                           [](EntryRow& r) { r.before = r.hash; },
                           [](EntryRow& r) { r.hash[0] = r.hash[0] == '0' ? '1' : '0'; }};
  for (const Touch touch : touches) {
    std::vector<EntryRow> rows = good;
    touch(rows[2]);
    const auto broken = verify_chain(rows);
    ASSERT_TRUE(broken);
    EXPECT_EQ(broken->number, 3);
  }
}

TEST(Chain, ATouchedEntryHashedAnewShowsInTheNext) {
  std::vector<EntryRow> rows = chained(6);
  rows[2].on = "other";
  rows[2].hash = chain_hash(rows[2]);
  EXPECT_EQ(verify_chain(rows)->number, 4);
  std::vector<EntryRow> without = chained(6);
  without.erase(without.begin() + 3);
  EXPECT_EQ(verify_chain(without)->number, 4);
}

}  // namespace
}  // namespace flatwise::record
