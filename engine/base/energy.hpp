#pragma once

namespace stillground {

/// A kilowatt hour [J], exact: 1000 W for 3600 s. Source of the hour: BIPM, The International System of Units (SI
/// Brochure), 9th edition (2019), table 8.
inline constexpr double joules_per_kwh = 3.6e6;

}  // namespace stillground
