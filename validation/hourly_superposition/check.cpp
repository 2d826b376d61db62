// Source: exact superposition in time of a step response by Laplace's transform,
// validation/reference_solutions/step_responses.py Tier:      full
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "tests/march_scenario.hpp"
#include "validation/harness/claim.hpp"
#include "validation/harness/fixed_flow_march.hpp"
#include "validation/reference_solutions/reference_table.hpp"
#include "validation/reference_solutions/step_response.hpp"

using namespace stillground;

namespace {

constexpr double undisturbed = 283.15;  // [K]
constexpr double depth = 120;           // [m]

/// The reference solution's ground and bores; flow and network are put in by hand.
model::Scenario scenario(int rows, int columns, int years) {
  auto s = test::scenario(rows, columns, years);
  s.ground.layers = {{std::numeric_limits<double>::infinity(), "rock", {2.0, 2.0e6}}};
  s.ground.undisturbed = model::MeanOverBore{undisturbed};
  s.bore.top = 2;
  s.bore.depth = depth;
  s.heat_pump.reset();
  s.loads = model::ConstantGroundLoad{0};
  return s;
}

/// The reference solution's bore, and so much flow that the fluid has one temperature (0.003 K from in to out at 30
/// W/m).
march::FlowRegime regime(const march::Problem& problem) {
  const auto network = bore::make_network(bore::NetworkParts{.bore_resistance = 0.1,
                                                             .internal_resistance = 0.4,
                                                             .even_share = 0.4,
                                                             .odd_share = 0.3,
                                                             .grout_capacity = 4.5e4,
                                                             .fluid_capacity = 3900.0});
  return {1, 1e6, {network}, std::vector<std::size_t>(problem.nz(), 0)};
}

/// Heat per metre of bore, hour by hour [W/m]: more heat taken in winter than given in summer, hours at random.
/// Invented.
std::vector<double> random_load(std::size_t hours) {
  test::Noise noise;
  std::vector<double> load;
  for (std::size_t hour = 0; hour < hours; ++hour) {
    const double season = std::cos(2 * std::numbers::pi * static_cast<double>(hour) / hours_per_year);
    load.push_back(-2 * noise() * (5 + 20 * season) + 30 * (noise() - 0.5));
  }
  return load;
}

reference_solutions::StepResponse response(const std::string& name) {
  std::vector<double> times, values;
  for (const auto& row : reference_solutions::read_table(REFERENCE_SOLUTIONS "/step_responses.csv")) {
    if (row.at("case") != name) continue;
    times.push_back(std::stod(row.at("time")));
    values.push_back(std::stod(row.at("response")));
  }
  return {times, values};
}

std::vector<double> marched(const model::Scenario& s, const std::vector<double>& per_metre) {
  const assembly::Assembly assembly = assembly::assemble(s);
  const march::FlowRegime flow = regime(assembly.problem);
  validation::FixedFlowMarch march(assembly.problem, assembly.multirate);
  std::vector<double> rise;
  for (const double heat : per_metre) {
    const auto means = march.hour(heat * depth * assembly.problem.bores(), flow);
    rise.push_back((means.eft + means.lft) / 2 - undisturbed);
  }
  return rise;
}

struct Month {
  std::size_t from, to;
  std::string name;
};

std::vector<Month> months(int years) {
  std::vector<Month> all;
  std::size_t hour = 0;
  for (int year = 1; year <= years; ++year) {
    for (int month = 1; month <= 12; ++month) {
      const auto hours = static_cast<std::size_t>(24 * days_of_month[static_cast<std::size_t>(month - 1)]);
      all.push_back({hour, hour + hours, fmt::format("year {}, {}", year, month_name(month))});
      hour += hours;
    }
  }
  return all;
}

/// Shares of what is compared; chosen before the first comparison.
constexpr double monthly_share = 0.003, step_error = 0.03;

void compare(validation::Claim& monthly, validation::Claim& hourly, const std::string& name, const model::Scenario& s) {
  const int years = s.run.years;
  const auto load = random_load(static_cast<std::size_t>(years) * hours_per_year);
  const auto step = response(name).hourly_means(load.size());
  const auto ours = marched(s, load);
  double largest_rise = 0;
  std::vector<double> reference, means;
  const auto all = months(years);
  for (const Month& month : all) {
    reference.push_back(reference_solutions::superposed(load, step, month.from, month.to));
    double sum = 0;
    for (std::size_t i = month.from; i < month.to; ++i) sum += ours[i];
    means.push_back(sum / static_cast<double>(month.to - month.from));
    largest_rise = std::max(largest_rise, std::abs(reference.back()));
  }
  const double allowed = monthly_share * largest_rise;
  validation::Plot plot{"Monthly mean fluid temperature, " + name, "year", "rise [K]", false, false, {}};
  validation::Curve truth{"superposition", {}, true}, march{"march", {}, false};
  double largest = 0;
  for (std::size_t i = 0; i < all.size(); ++i) {
    const double miss = std::abs(means[i] - reference[i]);
    if (!(miss <= largest)) largest = miss;
    const bool shown = (i < 12 && i % 3 == 0) || i + 12 >= all.size();
    if (shown) monthly.absolute(all[i].name, reference[i], means[i], allowed);
    truth.points.emplace_back(static_cast<double>(i) / 12, reference[i]);
    march.points.emplace_back(static_cast<double>(i) / 12, means[i]);
  }
  monthly.absolute(fmt::format("largest miss of {} months", all.size()), 0, largest, allowed);
  plot.curves = {truth, march};
  monthly.plot(plot);

  double worst = 0, squares = 0, most = 0;
  const std::size_t from = load.size() - 24 * 60;
  for (std::size_t i = from; i < load.size(); ++i) {
    const double exact = reference_solutions::superposed(load, step, i, i + 1);
    const double miss = std::abs(ours[i] - exact);
    if (!(miss <= worst)) worst = miss;
    squares += miss * miss;
    most = std::max(most, std::abs(exact));
  }
  hourly.absolute(name + ", largest", 0, worst, monthly_share * most + step_error);
  hourly.absolute(name + ", rms", 0, std::sqrt(squares / (24 * 60)), monthly_share * most + step_error / 3);
}

validation::Heading monthly_heading(const std::string& id, const std::string& what) {
  return {id,
          what + " under random hourly heat warms and cools month by month as exact superposition says",
          validation::Origin::computed,
          "finite line sources on segments: Claesson & Javed 2011, Cimmino & Bernier 2014; cylinder: Carslaw & Jaeger "
          "1959; superposition of Duhamel; validation/reference_solutions/step_responses.csv",
          "monthly mean of the mean fluid temperature [K above the undisturbed ground], flow always on and network "
          "held, so that the system is linear and does not change; in-bore capacities are in the reference as well",
          "0.3 % of the largest monthly rise, as for fields under constant heat: the march's 0.1 % at a wall, 0.5 % of "
          "a neighbour's part, the reference's 0.01 %"};
}

}  // namespace

int main(int argc, char** argv) {
  validation::Check check(argc, argv, validation::Topic::march);
  auto& lone = check.claim(monthly_heading("hourly-lone-bore", "a lone bore, twenty years,"));
  auto& field = check.claim(monthly_heading("hourly-field", "a field of 3 x 2 bores at 6 m, five years,"));
  auto& hourly =
      check.claim({"hourly-last-months", "in the last sixty days every hour as well is as exact superposition says",
                   validation::Origin::computed, "as for the months; validation/reference_solutions/step_responses.csv",
                   "hourly means of the mean fluid temperature [K] of the two marches above",
                   "0.3 % of the largest hourly rise, and what the default step of 1800 s errs by where loads jump "
                   "every hour: 0.03 "
                   "K, 0.01 K rms"});
  compare(lone, hourly, "one bore", scenario(1, 1, 20));
  compare(field, hourly, "3 by 2 at 6 m", scenario(2, 3, 5));
  return check.finish();
}
