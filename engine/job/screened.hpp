#pragma once

#include <filesystem>
#include <optional>
#include <vector>

#include "engine/record/frames.hpp"
#include "engine/screen/batch.hpp"

namespace stillground::job {

/// What a screening estimate tells once its hours are known: warnings, how far it may be off, what minutes bring if
/// that is asked for (it takes as long as the rest).
struct Afterwards {
  std::vector<Warning> warnings;
  record::Closing closing;
};

Afterwards after_screening(const assembly::Assembly& assembly, const screen::Estimate& estimate,
                           const record::ScreeningError& own_error, std::span<const record::Hour> hours,
                           bool minutes = true);

/// A screening estimate of a whole run in memory: all that its result file would hold.
struct Screened {
  record::Header header;  ///< with the warnings known before
  std::vector<record::Hour> hours;
  record::Closing closing;
};

/// Screens the scenario, whatever method it asks for. `batch`: one whose middle has the same geometry, whose response
/// then serves; null: its own is made. `minutes`: whether they are estimated; a limit on them needs it. Throws as run()
/// of a screening.
Screened screened(model::Scenario scenario, const screen::Batch* batch = nullptr, bool minutes = true);

/// The header as it would be read back from the file: with all warnings and the estimate's own error.
record::Header header_afterwards(const Screened& screened);

/// Writes the result file, whole or not at all. Throws SystemError.
void write_result(const Screened& screened, const std::filesystem::path& file);

}  // namespace stillground::job
