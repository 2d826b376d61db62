#pragma once

#include <filesystem>
#include <string>

#include "engine/config/context.hpp"
#include "engine/config/section.hpp"

namespace stillground::config {

/// The folder of the catalogues: the environment variable STILLGROUND_CONFIGS, or else the project's own.
std::filesystem::path catalogue_folder();

/// A section with a catalogue's entry under it.
struct WithEntry {
  Section section;
  std::string source;  ///< where the entry's values come from and its usual ranges; empty without an entry
};

/// A section whose absent values come from the entry its key `use` names in the catalogue `name` ("pipes": the file
/// pipes.yaml, which becomes one of the scenario's inputs). The section itself where it has no `use`.
WithEntry with_catalogue(const Section& section, const std::string& name, Context& context);

}  // namespace stillground::config
