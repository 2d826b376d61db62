#pragma once

#include <string>
#include <vector>

#include "tools/results/eft_view.hpp"
#include "tools/results/limits.hpp"
#include "tools/results/temperature_scale.hpp"

/// Sentences of a report.
namespace stillground::results {

/// "All limits are kept for 25 years; the nearest, eft_min, with 0.71 K to spare." or since when which is left, by how
/// much and how often.
std::string verdict_on_limits(const FluidSummary& summary, const Source& source, UnitSystem system);

/// How far the figures may be off for numerical reasons, one sentence each.
std::vector<std::string> error_sentences(const record::Header& header, UnitSystem system);

/// What no figure of the page knows of.
std::vector<std::string> left_out();

}  // namespace stillground::results
