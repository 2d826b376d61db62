#pragma once

#include <optional>

#include "engine/config/section.hpp"
#include "engine/model/loads.hpp"

namespace stillground::config {

/// `loads.peak`, "1.4 times for 10 min", from the scenario's root section; none where it is not given. InputError where
/// it is no such phrase, is out of range, or takes more than the hour's load.
std::optional<model::LoadPeak> read_load_peak(const Section& root);

}  // namespace stillground::config
