#include "engine/config/catalogue.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <cstdlib>
#include <vector>

#include "engine/base/digest.hpp"
#include "engine/base/files.hpp"
#include "engine/base/own_file.hpp"
#include "engine/base/quote.hpp"
#include "engine/base/spelling.hpp"
#include "engine/config/shape.hpp"
#include "engine/config/usual_range.hpp"
#include "engine/units/display.hpp"

namespace stillground::config {
namespace {

/// The folder of the catalogues: the environment variable STILLGROUND_CONFIGS goes first, then what the reader was
/// told.
std::filesystem::path catalogue_folder(const Where& where, const Context& context) {
  const char* folder = std::getenv("STILLGROUND_CONFIGS");
  if (folder && *folder) return folder;
  if (!context.catalogue_folder.empty()) return context.catalogue_folder;
  const std::filesystem::path own = own_file();
  const std::filesystem::path installed = installed_catalogues(own);
  if (installed.empty()) {
    where.refuse(
        fmt::format("no catalogues are found: no folder {}/configs stands above {} (the environment variable "
                    "STILLGROUND_CONFIGS names another folder)",
                    STILLGROUND_DATA_FOLDER, own.string()));
  }
  return installed;
}

const Node& catalogue(const std::string& name, const Where& where, Context& context) {
  const auto found = context.catalogues.find(name);
  if (found != context.catalogues.end()) return found->second;
  const std::filesystem::path file = catalogue_folder(where, context) / (name + ".yaml");
  const std::string text = read_file(file, where);
  context.scenario.inputs.push_back({fmt::format("configs/{}.yaml", name), sha256(text)});
  return context.catalogues.emplace(name, read_tree(text, file.string())).first->second;
}

[[noreturn]] void refuse_unknown(const Node& catalogue, const std::string& name, const std::string& asked,
                                 const Where& where) {
  std::vector<std::string> known;
  for (const Entry& entry : catalogue.entries) known.push_back(entry.key);
  const auto near = nearest_word(asked, known);
  where.refuse(fmt::format("{} is not in configs/{}.yaml ({}it has {})", quote(asked), name,
                           near ? fmt::format("did you mean \"{}\"?; ", *near) : "", fmt::join(known, ", ")));
}

/// The range as it stands in the catalogue, or in the units that the scenario's people are shown.
std::string shown(const UsualRange& range, units::Dimension dimension, UnitSystem system) {
  const units::Shown unit = units::shown_in(units::facts(dimension).si, system);
  if (system == UnitSystem::si || unit.units == units::facts(dimension).si) return range.text;
  return fmt::format("{:.2g} to {:.2g} {}", unit(range.least), unit(range.most), unit.units);
}

/// Warns of the scenario's own values beside `use` that lie outside what the entry's material usually has.
void warn_beyond(const Section& section, const std::string& asked, const std::vector<UsualRange>& ranges,
                 Context& context) {
  for (const UsualRange& range : ranges) {
    if (!section.has(range.leaf)) continue;
    const double value = section.quantity(range.leaf);
    if (value >= range.least && value <= range.most) continue;
    context.warn(section.where(range.leaf).place,
                 fmt::format("{} {} is unusual for {}", range.leaf, section.node(range.leaf).text, asked),
                 "usual: " + shown(range, section.row(range.leaf).dimension, context.scenario.units));
  }
}

}  // namespace

std::filesystem::path installed_catalogues(const std::filesystem::path& own) {
  std::error_code none;
  for (std::filesystem::path above = own.parent_path();; above = above.parent_path()) {
    const std::filesystem::path folder = above / STILLGROUND_DATA_FOLDER / "configs";
    if (std::filesystem::is_directory(folder, none)) return folder;
    if (above == above.parent_path()) return {};
  }
}

WithEntry with_catalogue(const Section& section, const std::string& name, Context& context) {
  if (!section.has("use")) return {section, ""};
  const std::string asked = section.text("use");
  const Where where = section.where("use");
  const Node& all = catalogue(name, where, context);
  const Entry* entry = all.find(asked);
  if (!entry) refuse_unknown(all, name, asked, where);
  const std::string path = fmt::format("{}.{}", name, asked);
  if (entry->value.kind != Node::Kind::map) Where{entry->place, path}.refuse("a map of keys is expected");
  const std::string pattern(section.row("use").path.substr(0, section.row("use").path.rfind('.')));
  std::map<std::string, Place> not_of_the_scenario;
  check_shape(entry->value, pattern, path, not_of_the_scenario, {"source", "range"});
  const Entry* source = entry->value.find("source");
  if (!source) Where{entry->place, path}.refuse("has no source");
  const std::vector<UsualRange> ranges = usual_ranges(entry->value, pattern, path);
  warn_beyond(section, asked, ranges, context);
  const std::string usual = ranges.empty() ? "" : "; " + in_words(ranges);
  return {section.over(entry->value), source->value.text + usual};
}

}  // namespace stillground::config
