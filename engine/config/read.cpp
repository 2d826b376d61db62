#include "engine/config/read.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <fstream>
#include <string_view>

#include "engine/base/digest.hpp"
#include "engine/base/files.hpp"
#include "engine/config/context.hpp"
#include "engine/config/load_peak.hpp"
#include "engine/config/parts.hpp"
#include "engine/config/placeholders.hpp"
#include "engine/config/shape.hpp"
#include "engine/units/display.hpp"

namespace stillground::config {
namespace {

/// Hand-written text never comes near it.
constexpr std::size_t largest_scenario = std::size_t{1} << 20;

void warn_of_short_profile(model::Scenario& scenario) {
  const auto* profile = std::get_if<model::MeasuredProfile>(&scenario.ground.undisturbed);
  if (!profile) return;
  double toe = scenario.bore.top + scenario.bore.depth;
  if (const auto* positions = std::get_if<model::Positions>(&scenario.layout)) {
    toe = 0;
    for (const model::BoreSite& site : positions->sites) toe = std::max(toe, site.top + site.depth);
  }
  const double end = profile->points.back().depth;
  if (end >= toe) return;
  const auto length = [&](double metres) { return units::text(metres, "m", 1, scenario.units); };
  scenario.warnings.push_back({scenario.place("ground.undisturbed.profile"),
                               fmt::format("the profile ends at {}, the deepest bore at {}", length(end), length(toe)),
                               "its last temperature is held below"});
}

/// Throws InputError if the file begins as HDF5 files do (HDF5 File Format Specification, II.A).
void check_no_result(const std::filesystem::path& file) {
  constexpr std::string_view signature("\x89HDF\r\n\x1a\n", 8);
  std::array<char, signature.size()> begin{};
  std::ifstream(file, std::ios::binary).read(begin.data(), begin.size());
  if (std::string_view(begin.data(), begin.size()) != signature) return;
  throw InputError({file.string()}, "", "this is a result, not a scenario: eft, drift and compare read results");
}

}  // namespace

Csv read_input(const Section& section, std::string_view leaf, Context& context) {
  const std::string name = section.text(leaf);
  Csv csv = read_csv(context.folder / name, section.where(leaf));
  context.scenario.inputs.push_back({name, csv.sha256});
  return csv;
}

model::Scenario read_scenario(const std::filesystem::path& file, std::optional<UnitSystem> units,
                              const std::filesystem::path& catalogues, const std::vector<Override>& overrides) {
  model::Scenario scenario;
  scenario.file = file.string();
  check_no_result(file);
  scenario.text = read_file(file, {}, largest_scenario);
  scenario.inputs.push_back({file.filename().string(), sha256(scenario.text)});
  Node tree = read_tree(scenario.text, scenario.file);
  for (const Override& given : overrides) put_in_place(given, tree);
  if (!overrides.empty()) scenario.text = text_with(overrides, tree, file.filename().string());
  check_shape(tree, "", "", scenario.places);
  const Section root(tree, "", "", {scenario.file, 1, 1});
  Context context{.folder = file.parent_path(), .scenario = scenario, .catalogue_folder = catalogues, .catalogues = {}};
  scenario.title = root.optional_text("title").value_or(file.stem().string());
  const std::string word = root.word("units");  // judged whether or not it decides
  scenario.units = units ? *units : *unit_system(word);
  scenario.ground = read_ground(root, context);
  scenario.bore = read_bore(root, context);
  scenario.run = read_run(root);
  scenario.layout = read_layout(root, scenario.bore, scenario.run, context);
  scenario.fluid = read_fluid(root);
  scenario.flow = read_flow(root);
  scenario.loads = read_loads(root, scenario.run, context);
  scenario.peak = read_load_peak(root);
  scenario.heat_pump = read_heat_pump(root, scenario.loads, context);
  scenario.limits = read_limits(root);
  scenario.fields = read_fields(root);
  warn_of_short_profile(scenario);
  for (const Placeholder& one : placeholders(scenario)) context.warn(one.where.place, one.text);
  return scenario;
}

void check_overrides(const std::filesystem::path& file, const std::vector<Override>& overrides) {
  Node tree = read_tree(read_file(file, {}, largest_scenario), file.string());
  for (const Override& given : overrides) put_in_place(given, tree);
  std::map<std::string, Place> places;
  check_shape(tree, "", "", places);
}

}  // namespace stillground::config
