#include "tests/unit/results/made_result.hpp"

#include <unistd.h>
#include <atomic>
#include <cmath>
#include <filesystem>

#include "engine/record/journal/journal.hpp"
#include "engine/record/write/result_file.hpp"
#include "tests/unit/results/made_hours.hpp"

namespace stillground::testing {

namespace {

constexpr std::size_t layers = 4;
constexpr std::size_t cells = 6;

record::Header header_of(const MadeResult& made) {
  record::Header header;
  header.title = "made";
  header.scenario_text = "title: made";
  header.engine_version = "0";
  header.build = "none";
  header.start = {2027, 7, 1};
  header.years = made.years;
  header.step = 1800;
  header.fields = made.fields;
  header.drill_length = 204;
  header.fluid_heat_capacity = 4186;
  header.limits = made.limits;
  header.z_faces = {0, 2, 50, 102, 130};
  header.r_faces = {0.07, 0.3, 1, 4, 15, 60, 300};
  for (std::size_t z = 0; z < layers; ++z) header.z.push_back((header.z_faces[z] + header.z_faces[z + 1]) / 2);
  for (std::size_t i = 0; i < cells; ++i) header.r.push_back(std::sqrt(header.r_faces[i] * header.r_faces[i + 1]));
  header.conductivity.assign(layers, 2);
  header.heat_capacity.assign(layers, 2e6);
  header.bores = {{0, 0, 2, 100, 0.07, 0, 0}, {6, 0, 2, 100, 0.07, 0, 0}};
  header.groups = 1;
  header.active_fraction = {0, 1, 1, 0};
  header.grout_storage = {4e4};
  header.fluid_storage_down = header.fluid_storage_up = {4e3};
  return header;
}

record::Snapshot snapshot_of(const MadeResult& made, double time) {
  record::Snapshot snapshot;
  snapshot.time = time;
  snapshot.rise.assign(layers * cells, static_cast<float>(made.rise(time / seconds_per_year)));
  snapshot.undisturbed.assign(layers, 285.15);
  snapshot.wall_temperature.assign(layers, 285.15);
  snapshot.fluid_down = snapshot.wall_temperature;
  snapshot.fluid_up = snapshot.wall_temperature;
  snapshot.grout = snapshot.wall_temperature;
  snapshot.fluid_heat = {1e7};
  return snapshot;
}

std::filesystem::path new_folder() {
  static std::atomic<int> count{0};
  const auto folder = std::filesystem::temp_directory_path() /
                      ("stillground-results-" + std::to_string(getpid()) + "-" + std::to_string(count++));
  std::filesystem::create_directories(folder);
  return folder;
}

}  // namespace

record::read::Result made_result(const MadeResult& made) {
  const std::filesystem::path file = new_folder() / "made.h5";
  const record::Header header = header_of(made);
  const bool monthly = made.fields == "monthly";
  const int months = monthly ? 12 * made.years : 0;
  record::ResultFile growing(file, header, monthly ? static_cast<std::size_t>(months) + 1 : 0);
  const auto hours = static_cast<std::size_t>(8760 * made.years);
  growing.add(made_hours(hours, [](std::size_t h) { return h < 8760 ? 10.0 : 12.0; }));
  double days = 0;
  if (monthly) growing.add(snapshot_of(made, 0));
  for (int month = 0; month < months; ++month) {
    days += days_of_month[static_cast<std::size_t>((month + 6) % 12)];
    growing.add(snapshot_of(made, days * seconds_per_day));
  }
  for (int year = 0; year < made.years; ++year) growing.add(record::YearBalance{});
  record::Closing closing;
  if (made.fields != "none") closing.steady_rise.assign(layers * cells, static_cast<float>(made.steady));
  growing.finish(closing);
  record::read::Result result(file);
  std::filesystem::remove_all(file.parent_path());
  return result;
}

}  // namespace stillground::testing
