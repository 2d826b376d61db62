#include "engine/record/write/contents.hpp"

namespace stillground::record {

SnapshotColumns::SnapshotColumns(ResultWriter& writer)
    : time_(writer, schema::snapshot), rise_(writer, schema::ground_rise) {
  const auto profile = [&](const schema::Variable& variable, std::vector<double> Snapshot::*member) {
    profiles_.emplace_back(Column<double>(writer, variable), member);
  };
  profile(schema::undisturbed, &Snapshot::undisturbed);
  profile(schema::wall_temperature, &Snapshot::wall_temperature);
  profile(schema::fluid_down, &Snapshot::fluid_down);
  profile(schema::fluid_up, &Snapshot::fluid_up);
  profile(schema::grout_temperature, &Snapshot::grout);
  profile(schema::fluid_heat, &Snapshot::fluid_heat);
}

void SnapshotColumns::add(const Snapshot& snapshot) {
  const double hours = snapshot.time / seconds_per_hour;
  time_.add(std::span(&hours, 1));
  rise_.add(snapshot.rise);
  for (auto& [column, member] : profiles_) column.add(snapshot.*member);
}

void SnapshotColumns::close() {
  time_.close();
  rise_.close();
  for (auto& [column, member] : profiles_) column.close();
}

}  // namespace stillground::record
