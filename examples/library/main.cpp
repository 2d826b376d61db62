// Checks a scenario, runs it, and prints the least entering fluid temperature (EFT) of each run-year.
// Ctrl-C stops the run; the next call goes on from its checkpoint.

#include <stillground/check.hpp>
#include <stillground/result.hpp>
#include <stillground/run.hpp>

#include <atomic>
#include <csignal>
#include <cstdio>
#include <filesystem>

namespace {

std::atomic<bool> cancelled = false;

/// SI and kelvin inside; degC for people.
double celsius(double kelvin) {
  return kelvin - 273.15;
}

void show(const stillground::Plan& plan) {
  std::printf("%s\n%d bores, %.0f m to drill, R_b %.3f K m/W, %.1f MWh of heating a year\n", plan.title.c_str(),
              plan.bores, plan.drill_length, plan.bore_resistance, plan.heating.year / 3.6e9);
  for (const auto& warning : plan.warnings) std::printf("warning: %s\n", warning.line().c_str());
}

void show(const stillground::Progress& progress) {
  if (!progress.year_finished) return;
  std::fprintf(stderr, "%s: %.0f %% done\n", iso_hour(progress.start, progress.hours_done).c_str(),
               100 * progress.hours_done / progress.hours_total);
}

void show(const stillground::Result& result) {
  std::printf("run-year  least EFT (degC)  in the hour that begins\n");
  for (const auto& year : result.extremes()) {
    std::printf("%8d  %16.2f  %s\n", year.year, celsius(year.eft_least),
                iso_hour(result.heading().start, static_cast<double>(year.hour_least)).c_str());
  }
}

void work(const std::filesystem::path& file) {
  const stillground::Scenario scenario = stillground::read_scenario(file, CATALOGUES);
  show(stillground::check(scenario));

  const std::filesystem::path result = file.stem().string() + ".h5";
  stillground::RunOptions options;
  options.resume = std::filesystem::exists(result.string() + ".spool");
  options.progress = [](const stillground::Progress& progress) { show(progress); };
  options.cancel = &cancelled;
  std::signal(SIGINT, [](int) { cancelled = true; });
  stillground::run(scenario, result, options);

  show(stillground::Result(result));
}

}  // namespace

int main(int argc, char** argv) {
  if (argc != 2) {
    std::fprintf(stderr, "least_eft SCENARIO.yaml\n");
    return 2;
  }
  try {
    work(argv[1]);
  } catch (const stillground::Error& error) {
    std::fprintf(stderr, "%s\n", error.what());
    return error.exit_status();
  }
  return 0;
}
