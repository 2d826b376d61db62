#include "tests/cases/cases.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <limits>
#include <sstream>
#include <stdexcept>

#include "engine/base/temperature.hpp"
#include "engine/config/read.hpp"
#include "engine/simulation/simulation.hpp"

namespace stillground::cases {

namespace {

constexpr double joule_per_mwh = 3.6e9;

const std::filesystem::path expected_file = folder / "expected.csv";

constexpr const char* head =
    "scenario,bores,groups,to_drill [m],least_eft_1 [degC],most_eft_1 [degC],into_1 [MWh],out_of_1 [MWh],"
    "least_eft_last [degC],most_eft_last [degC],into_last [MWh],out_of_last [MWh],drift_of_least_eft [K]";

/// Sums of one run-year as it goes on.
class YearTally {
 public:
  void add(const record::Hour& hour) {
    const double heat = hour.heat_to_ground * seconds_per_hour / joule_per_mwh;
    (heat > 0 ? year_.into_ground : year_.out_of_ground) += std::abs(heat);
    if (hour.flow <= 0) return;
    year_.eft_least = std::min(year_.eft_least, hour.eft - zero_celsius);
    year_.eft_most = std::max(year_.eft_most, hour.eft - zero_celsius);
  }
  const Year& year() const { return year_; }

 private:
  Year year_{std::numeric_limits<double>::infinity(), -std::numeric_limits<double>::infinity(), 0, 0};
};

std::vector<std::string> cells_of(const std::string& line) {
  std::vector<std::string> cells;
  std::istringstream stream(line);
  for (std::string cell; std::getline(stream, cell, ',');) cells.push_back(cell);
  return cells;
}

Year year_of(const std::vector<std::string>& cells, std::size_t from) {
  return {std::stod(cells.at(from)), std::stod(cells.at(from + 1)), std::stod(cells.at(from + 2)),
          std::stod(cells.at(from + 3))};
}

std::string text_of(const Year& year) {
  return fmt::format("{:.2f},{:.2f},{:.2f},{:.2f}", year.eft_least, year.eft_most, year.into_ground,
                     year.out_of_ground);
}

}  // namespace

std::vector<std::string> scenario_names() {
  std::vector<std::string> names;
  for (const auto& entry : std::filesystem::directory_iterator(folder)) {
    if (entry.path().extension() == ".yaml") names.push_back(entry.path().stem().string());
  }
  std::sort(names.begin(), names.end());
  return names;
}

model::Scenario read(const std::string& name) {
  return config::read_scenario((folder / (name + ".yaml")).string());
}

Figures march(const std::string& name, int years, int threads) {
  model::Scenario scenario = read(name);
  scenario.run.years = years;
  const assembly::Assembly assembly = assembly::assemble(scenario);
  simulation::Simulation simulation(assembly, simulation::useful_threads(assembly, threads));
  Figures figures;
  figures.bores = static_cast<int>(assembly.bores.size());
  figures.groups = static_cast<int>(assembly.groups.size());
  figures.to_drill = assembly::drill_length(assembly);
  for (int year = 0; year < years; ++year) {
    if (year > 0) simulation.start_year();
    YearTally statistics;
    for (long hour = 0; hour < hours_per_year; ++hour) statistics.add(simulation.march_hour());
    figures.year = statistics.year();
    const double turnover = (figures.year.into_ground + figures.year.out_of_ground) * joule_per_mwh;
    figures.residual = std::max(figures.residual, std::abs(simulation.year_balance().residual) / turnover);
  }
  return figures;
}

std::map<std::string, Expected> read_expected() {
  std::ifstream file(expected_file);
  std::map<std::string, Expected> lines;
  for (std::string line; std::getline(file, line);) {
    if (line.empty() || line.front() == '#' || line == head) continue;
    const auto cells = cells_of(line);
    if (cells.size() != 13) throw std::runtime_error("expected.csv: not 13 cells: " + line);
    lines[cells[0]] = {std::stoi(cells[1]), std::stoi(cells[2]), std::stod(cells[3]), year_of(cells, 4),
                       year_of(cells, 8)};
  }
  return lines;
}

void write_expected(const std::map<std::string, Expected>& lines) {
  std::ofstream file(expected_file);
  file << "# Figures of the example cases as this build marches them: of a march of one year, and of the last "
          "year "
          "of the whole run.\n"
          "# Written by `cases \"[.write]\"` (DEVELOPERS.md); not by hand.\n"
       << head << "\n";
  for (const auto& [name, line] : lines) {
    file << fmt::format("{},{},{},{:.1f},{},{},{:.2f}\n", name, line.bores, line.groups, line.to_drill,
                        text_of(line.first), text_of(line.last), line.last.eft_least - line.first.eft_least);
  }
  if (!file.flush()) throw std::runtime_error("expected.csv cannot be written");
}

}  // namespace stillground::cases
