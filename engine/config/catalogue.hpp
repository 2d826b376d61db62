#pragma once

#include <filesystem>
#include <string>

#include "engine/config/context.hpp"
#include "engine/config/section.hpp"

namespace stillground::config {

/// Where an installation keeps its catalogues, seen from one of its programs or libraries: the nearest
/// share/stillground/configs (GNU's folder for data) beside or above the file's folder; empty if there is none.
/// Nothing but the file's own place decides, so that an installation may be moved.
std::filesystem::path installed_catalogues(const std::filesystem::path& own);

/// A section with a catalogue's entry under it.
struct WithEntry {
  Section section;
  std::string source;  ///< where the entry's values come from and its usual ranges; empty without an entry
};

/// A section whose absent values come from the entry its key `use` names in the catalogue `name` ("pipes": the file
/// pipes.yaml, which becomes one of the scenario's inputs). The section itself where it has no `use`.
WithEntry with_catalogue(const Section& section, const std::string& name, Context& context);

}  // namespace stillground::config
