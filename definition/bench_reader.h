// bench_reader.h: how a readings file is read, part by part. Internal to this folder.
#pragma once

#include "definition/read.h"
#include "definition/tree.h"

namespace flatwise::definition {

/// Reads one file into one Bench; problems go to the file.
class BenchReader {
 public:
  BenchReader(File& file, const BenchContext& context) : file_{file}, context_{context} {
    for (const Station& st : context.shaft.stations()) labels_.push_back(st.label);
    for (const Gauge& g : context.workshop.gauges) gauge_ids_.push_back(g.id);
  }
  Bench read();

 private:
  void read_head(const Section& s);
  std::vector<int> rotor_list(const Section& s, std::string_view key);
  void check_within(const Section& s, std::string_view key, const std::vector<int>& inner,
                    const std::vector<int>& outer);
  void read_opening(const Section& s);
  std::vector<int> part_list(const Section& s, std::string_view key);
  void read_spacer(const Section& s);
  void read_labels_back(const Section& s);
  void read_rotor(const Section& s);
  void read_marks(const Section& s, int rotor);
  void read_bore(const Section& s, int rotor);
  std::vector<Angle> directions(const Section& s);
  void read_plane(const Section& s, std::string_view plane, const BoreReading& like, std::span<const Angle> directions);
  void read_half_lengths(const Section& s, int rotor);
  void read_leans(const Section& s, int rotor);
  void read_rings(const Section& s, int rotor);
  void read_press(const Section& s, int rotor);
  void read_count_out(const Section& s, int rotor);
  void read_part(const Section& s);
  void read_feeler(const Section& s);
  End nut_of(const Section& s);
  void read_torque(const Section& s);
  void read_second_pull(const Section& s);
  void read_run(const Section& s);
  void read_run_hanger(const Section& s, const std::string& thermometer, const std::string& meter);
  void read_answers(const toml::table& table, const std::string& id, const std::string& path);
  void read_answer(const toml::node& node, const toml::key& key, const std::string& parent, const std::string& path);

  int number_of(const std::string& about, const toml::node& node, const toml::key& key, const std::string& path);

  [[nodiscard]] int joints() const;
  [[nodiscard]] bool rotor_there(const toml::node& node, std::int64_t number, const std::string& path);
  std::optional<std::size_t> station(const std::string& label, const toml::node& node, const std::string& path);
  std::string gauge(const Section& s, std::string_view key, std::initializer_list<Gauge::Use> uses);
  std::optional<Told<Entered>> told(const Section& s, std::string_view key);
  template <class T>
  Told<T> told(const toml::node& node, T value) const {
    return {std::move(value), file_.typed(node), file_.place(node)};
  }

  File& file_;
  const BenchContext& context_;
  Bench bench_;
  std::vector<std::string_view> labels_, gauge_ids_;
};

}  // namespace flatwise::definition
