#include "tests/cli/scratch_case.hpp"

#include <fmt/format.h>

#include <fstream>
#include <stdexcept>

#include "tests/cli/command.hpp"

namespace stillground::testing {

namespace {

const std::filesystem::path scenarios = std::filesystem::path(PROJECT_FOLDER) / "tests/cli/scenarios";

double heating(int day, int hour) {
  return (day < 120 || day >= 280) && hour >= 6 && hour < 18 ? 4000 : 0;
}
double cooling(int day, int hour) {
  return day >= 150 && day < 250 && hour >= 10 && hour < 16 ? 3000 : 0;
}

}  // namespace

PairCase::PairCase() {
  std::filesystem::copy_file(scenarios / "pair.yaml", folder / "pair.yaml");
  std::ofstream loads(folder / "loads.csv");
  loads << "heating [W],cooling [W]\n";
  for (int n = 0; n < 8760; ++n) loads << fmt::format("{},{}\n", heating(n / 24, n % 24), cooling(n / 24, n % 24));
}

void PairCase::write_variant(const std::string& name, const std::string& from, const std::string& to) const {
  std::string text = bytes(folder / "pair.yaml");
  const auto at = text.find(from);
  if (at == std::string::npos) throw std::runtime_error("pair.yaml does not hold " + from);
  std::ofstream(folder / name) << text.replace(at, from.size(), to);
}

}  // namespace stillground::testing
