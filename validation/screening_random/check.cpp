// Source: none: the march of the same scenario, which other checks hold against something outside
// Tier:      full
#include <fmt/format.h>

#include <algorithm>
#include <atomic>
#include <thread>
#include <vector>

#include "validation/harness/claim.hpp"
#include "validation/harness/random_field.hpp"
#include "validation/harness/screening_trial.hpp"

using namespace stillground;

namespace {

constexpr int count = 60, years = 25;
constexpr std::uint64_t first_seed = 1001;  // no field that the estimate's factors were settled on

std::vector<validation::ScreeningTrial> all_trials() {
  std::vector<validation::ScreeningTrial> trials(count);
  std::atomic<int> next{0};
  const auto work = [&] {
    for (int i = next++; i < count; i = next++) {
      trials[static_cast<std::size_t>(i)] =
          validation::screening_trial(validation::random_field(first_seed + static_cast<std::uint64_t>(i), years));
    }
  };
  std::vector<std::thread> threads;
  for (unsigned i = 0; i < std::max(1U, std::thread::hardware_concurrency()); ++i) threads.emplace_back(work);
  for (std::thread& thread : threads) thread.join();
  return trials;
}

}  // namespace

int main(int argc, char** argv) {
  validation::Check check(argc, argv, validation::Topic::march);
  const std::string setting = fmt::format(
      "EFT over hours with flow, {} fields drawn at random (seeds {} on), {} hourly years each, run both ways: every "
      "loop type, layout, flow rule and kind of undisturbed ground, loads on and off, flows down to laminar, two bores "
      "in series among them",
      count, first_seed, years);
  auto& off = check.claim({"screening-random", "a screening estimate lies near the march on fields of every kind",
                           validation::Origin::engine, "the engine's own march, hour by hour", setting,
                           "0.03 K in every month's mean and in the least and greatest EFT, 0.15 K in every hour; how "
                           "many fields keep to it"});
  auto& own = check.claim({"screening-own-error", "a screening estimate says itself how far it may be off",
                           validation::Origin::engine, "the engine's own march, hour by hour", setting,
                           "no further than it says in at least 59 of 60 fields, and it says at most 4 times as much "
                           "in the mean"});
  const auto trials = all_trials();
  using Trial = validation::ScreeningTrial;
  const auto within = [&](double Trial::*figure, double most) {
    return static_cast<double>(
        std::count_if(trials.begin(), trials.end(), [&](const Trial& trial) { return trial.*figure <= most; }));
  };
  const auto worst = [&](double Trial::*figure) {
    double most = 0;
    for (const Trial& trial : trials) most = std::max(most, trial.*figure);
    return most;
  };
  off.between("fields within 0.03 K in every month's mean", 48, count, within(&Trial::month, 0.03));
  off.between("fields within 0.15 K in every hour", 56, count, within(&Trial::hour, 0.15));
  off.between("fields within 0.03 K in the least EFT", 52, count, within(&Trial::least, 0.03));
  off.between("fields within 0.03 K in the greatest EFT", 52, count, within(&Trial::greatest, 0.03));
  off.known_absolute_miss(
      "largest of any month's mean [K]", 0, worst(&Trial::month), 0.03, 0.25,
      "one slow double U whose flow comes in stages, on warming ground (seed 1006), not traced; all other "
      "fields but three keep 0.03 K");
  off.known_absolute_miss("largest of any hour [K]", 0, worst(&Trial::hour), 0.15, 0.4,
                          "the hours about the change from laminar to turbulent flow");
  const auto say = [&](const std::string& what, double Trial::*found, double Trial::*said) {
    double covered = 0, sum_found = 0, sum_said = 0;
    for (const Trial& trial : trials) {
      covered += trial.*found <= trial.*said ? 1 : 0;
      sum_found += trial.*found;
      sum_said += trial.*said;
    }
    own.between(fmt::format("fields whose {} are no further off", what), 59, count, covered);
    own.between(fmt::format("{}: said over found, in the mean", what), 1, 4, sum_said / sum_found);
  };
  say("months", &Trial::month, &Trial::estimated_month);
  say("hours", &Trial::hour, &Trial::estimated_hour);
  for (int i = 0; i < count; ++i) {
    const Trial& trial = trials[static_cast<std::size_t>(i)];
    fmt::print("{} {:.3f} ({:.3f}) {:.3f} ({:.3f}) {:.3f} {:.3f}  {}\n", first_seed + static_cast<std::uint64_t>(i),
               trial.month, trial.estimated_month, trial.hour, trial.estimated_hour, trial.least, trial.greatest,
               validation::field_in_words(validation::random_field(first_seed + static_cast<std::uint64_t>(i), years)));
  }
  return check.finish();
}
