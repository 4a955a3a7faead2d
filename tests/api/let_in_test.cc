// Devices that are let in, without a server round them: what is offered, what is kept, what is taken back.
#include "server/let_in.h"

#include <gtest/gtest.h>

#include <fstream>

#include "store/sqlite/test_place.h"

namespace flatwise::api_test {
namespace {

using namespace std::chrono_literals;

TEST(LetInDevices, AreTheSameAfterTheNextStart) {
  const store_sqlite::TestFolder folder;
  const auto file = folder.path() / "devices.txt";
  const std::string old(64, 'a');
  std::ofstream{file} << old << "\n"
                      << old.substr(1) << "\n";  // As they were kept before they had names; and a torn line.
  Day today{2026, 2, 4};
  std::string code, token;
  const server::LetIn::Terminal terminal{.show = [&](const std::string& shown) { code = shown; },
                                         .today = [&] { return today; }};
  {
    server::LetIn let_in{file, terminal};
    let_in.show_code();
    token = "flatwise_device=" + let_in.try_code(code, "Bench").token;
    ASSERT_EQ(let_in.devices().size(), 2U);
    today = {2026, 2, 6};
    EXPECT_TRUE(let_in.knows(token));
  }
  server::LetIn let_in{file, terminal};
  const auto devices = let_in.devices();
  ASSERT_EQ(devices.size(), 2U);
  EXPECT_EQ(devices[0].hash, old);
  EXPECT_EQ(devices[1].name, "Bench");
  EXPECT_EQ(devices[1].since, (Day{2026, 2, 4}));
  EXPECT_EQ(devices[1].seen, (Day{2026, 2, 6}));
  EXPECT_EQ(let_in.take_back(devices[1].id), server::LetIn::TakenBack::done);
  EXPECT_EQ(let_in.take_back(devices[1].id), server::LetIn::TakenBack::not_there);
  EXPECT_FALSE(let_in.knows(token));
  server::LetIn after{file, terminal};
  EXPECT_FALSE(after.knows(token));
  EXPECT_EQ(after.devices().size(), 1U);
  EXPECT_EQ(std::filesystem::status(file).permissions() & std::filesystem::perms::others_all,
            std::filesystem::perms::none);
}

TEST(LetInOffer, HoldsForItsTimeForOneDeviceAndOnlyTheLastOne) {
  const store_sqlite::TestFolder folder;
  std::chrono::steady_clock::time_point now{};
  std::string at_terminal;
  server::LetIn let_in{folder.path() / "devices.txt",
                       {.show = [&](const std::string& code) { at_terminal = code; }, .now = [&] { return now; }}};
  using Answer = server::LetIn::Answer;
  std::string code = let_in.offer();
  now += server::LetIn::kOfferHolds;
  EXPECT_EQ(let_in.try_code(code).answer, Answer::wrong) << "its time is over";
  code = let_in.offer();
  now += server::LetIn::kOfferHolds - 1s;
  EXPECT_EQ(let_in.try_code(code).answer, Answer::let_in);
  EXPECT_EQ(let_in.try_code(code).answer, Answer::wrong) << "once only";
  code = let_in.offer();
  const std::string later = let_in.offer();
  EXPECT_EQ(let_in.try_code(code).answer, Answer::wrong) << "another was offered";
  EXPECT_EQ(let_in.try_code(later).answer, Answer::let_in);
  // Ten wrong tries, five a minute, end what is offered and what stands at the terminal.
  code = let_in.offer();
  for (int i = 0; i < 10; ++i) {
    now += 13s;
    EXPECT_NE(let_in.try_code("AAAA-AAAA").answer, Answer::let_in);
  }
  EXPECT_NE(at_terminal, "");
  now += 1min;
  EXPECT_EQ(let_in.try_code(code).answer, Answer::wrong);
}

}  // namespace
}  // namespace flatwise::api_test
