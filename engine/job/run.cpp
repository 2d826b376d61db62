#include "engine/job/run.hpp"

#include <fmt/format.h>

#include "engine/forecast/merging.hpp"
#include "engine/job/checkpoint.hpp"
#include "engine/job/chosen_kernels.hpp"
#include "engine/job/header.hpp"
#include "engine/job/methods.hpp"
#include "engine/job/warnings.hpp"
#include "engine/screen/assemble.hpp"

namespace stillground::job {

namespace {

void add_field_warning(const model::Scenario& scenario, std::vector<Warning>& warnings) {
  if (!scenario.places.contains("record.fields") || scenario.fields == model::RecordFields::none) return;
  warnings.push_back({scenario.place("record.fields"), "a screening estimate has no fields to record", ""});
}

}  // namespace

void refuse_place(const std::filesystem::path& result, const std::filesystem::path& scenario, const std::string& key) {
  const auto refuse = [&](const std::string& text) { throw InputError(Place{}, key, text); };
  const std::filesystem::path folder = result.has_parent_path() ? result.parent_path() : ".";
  std::error_code ignored;
  if (std::filesystem::is_directory(result, ignored)) refuse(fmt::format("{} is a folder", result.string()));
  if (!std::filesystem::is_directory(folder, ignored)) refuse(fmt::format("there is no folder {}", folder.string()));
  if (std::filesystem::equivalent(result, scenario, ignored)) {
    refuse(fmt::format("{} is the scenario itself", result.string()));
  }
}

std::vector<Warning> run(const model::Scenario& scenario, const Options& options) {
  const bool screens = scenario.run.screens();
  if (screens && options.resume) {
    throw InputError("--resume: a screening estimate leaves no checkpoint; run it afresh");
  }
  spare_checkpoint(options);
  const march::fused::Kernels& kernels = chosen_kernels(options);
  const assembly::Assembly assembly =
      screens ? screen::assemble(scenario, kernels) : forecast::assemble(scenario, kernels);
  std::vector<Warning> warnings = warnings_before(assembly);
  if (screens) add_field_warning(scenario, warnings);
  if (options.warned) options.warned(warnings);
  const record::Header header = make_header(assembly, warnings);
  const auto found = screens ? run_screening(assembly, options, header) : run_march(assembly, options, header);
  warnings.insert(warnings.end(), found.begin(), found.end());
  return warnings;
}

}  // namespace stillground::job
