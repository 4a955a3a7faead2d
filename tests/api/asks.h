// asks.h: for each operation a request that is answered in order, to be spoilt one way or another.
#pragma once

#include <nlohmann/json.hpp>
#include <string>

#include "record/chain.h"
#include "tests/api/contract.h"
#include "tests/api/house.h"

namespace flatwise::api_test {

/// A photo's first bytes and nothing behind them: what is kept is bytes, whether they make a picture is the browser's matter.
inline const std::string kPhoto{"\x89PNG\r\n\x1A\n and what else a photo has", 34};

/// Text as it stands in an address (RFC 3986, section 2.1).
inline std::string encoded(std::string_view text) {
  static constexpr std::string_view kHex = "0123456789ABCDEF";
  std::string out;
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if ((c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9'))
      out += c;
    else
      (out += '%').append({kHex[byte >> 4U], kHex[byte & 15U]});
  }
  return out;
}

/// For each operation a request that is answered in order, as often as it is asked.
class Asks {
 public:
  explicit Asks(const Known& known) : known_{known} {}

  [[nodiscard]] Ask good(const Operation& op) const {
    Ask ask{.method = op.method, .target = target(op)};
    if (op.id == "putBlob") {
      ask.headers = {"Content-Type: image/png"};
      ask.body = kPhoto;
    } else if (op.takes_json) {
      ask.headers = {"Content-Type: application/json"};
      ask.body = op.id == "record" ? entries_text({known_.lead, known_.last_31}, {note("seen")}) : body(op.id).dump();
    }
    return ask;
  }
  [[nodiscard]] std::string target(const Operation& op) const {
    std::string target = op.path;
    const auto put = [&](const std::string& place, const std::string& value) {
      if (const auto at = target.find(place); at != std::string::npos) target.replace(at, place.size(), value);
    };
    const bool machine = op.path.starts_with("/api/machines"), shaft = op.path.starts_with("/api/shafts");
    const bool person = op.path.starts_with("/api/people");
    put("{id}", machine ? known_.machine : shaft ? known_.version : person ? known_.bench : known_.job_31);
    put("{hash}", record::sha256(kPhoto));
    put("{file}", op.id == "patternFile" ? "pattern.pdf" : op.id == "bendFile" ? "response.csv" : "hanger.csv");
    put("{name}", op.id == "figure" ? "press-force" : "bench");
    return target;
  }
  [[nodiscard]] nlohmann::json body(const std::string& id) const {
    if (id == "putPerson") return {{"id", fresh_id()}, {"name", "Bench " + fresh_id()}, {"role", "bench"}};
    if (id == "putCustomer") return {{"id", fresh_id()}, {"name", "Growers, nursery"}, {"reach", "the gate"}};
    if (id == "putMachine")
      return {{"id", fresh_id()}, {"customer", known_.customer}, {"name", "Spare"}, {"shaft", known_.shaft}};
    if (id == "putHours")
      return {{"id", fresh_id()}, {"by", known_.bench}, {"day", "2026-02-04"}, {"hours", "2422 h"}, {"note", "read"}};
    if (id == "putShaft")
      return {{"id", fresh_id()}, {"shaft", fresh_id()}, {"by", known_.lead}, {"seen", 0}, {"toml", known_.toml}};
    if (id == "checkShaft") return {{"toml", known_.toml}, {"copied", known_.toml}};
    if (id == "moveStock")
      return {{"id", fresh_id()}, {"by", known_.bench}, {"part_number", "TH-SET-5"}, {"reason", "received"},
              {"shelf", 1},       {"order", 0},         {"why", "by post"}};
    if (id == "putPart") return {{"by", known_.bench}, {"part_number", "TH-SHIM"}, {"name", "shim"}, {"least", 4}};
    if (id == "noteCalibration") return certificate({{"gauge", "BG-1"}, {"expanded", "1.8 µm"}});
    if (id == "addGauge")
      return certificate(
          {{"gauge", "DI-" + fresh_id()}, {"use", "length"}, {"resolution", "0.01 mm"}, {"expanded", "0.02 mm"}});
    if (id == "figure")
      return {{"inputs",
               {"interference-least=15 µm ± 2 µm", "interference-greatest=50 µm", "roughness-loss=3 µm .. 7 µm",
                "width=25 mm", "joint-diameter=120 mm", "ring-inside=107 mm", "hub-outside=180 mm",
                "hub-modulus=110 GPa", "hub-poisson=0.26", "hub-yield=250 MPa"}}};
    if (id == "setAtWork") return {{"by", known_.lead}, {"active", true}};
    if (id == "offerLetIn") return {{"by", known_.lead}};
    if (id == "takeBackTablet") return {{"by", known_.lead}};
    if (id == "letIn") return {{"code", "ABCD-EFGH"}};
    return nullptr;
  }

 private:
  /// What is sent of a gauge, with the certificate of a day that has been.
  [[nodiscard]] nlohmann::json certificate(nlohmann::json body) const {
    body.update({{"id", fresh_id()},
                 {"by", known_.lead},
                 {"day", "2026-02-02"},
                 {"until", "2036-02-02"},
                 {"who", "A laboratory"},
                 {"certificate", "No. 7"}});
    return body;
  }
  const Known& known_;
};

}  // namespace flatwise::api_test
