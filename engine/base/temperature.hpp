#pragma once

namespace stillground {

/// 0 degC on the thermodynamic scale [K], exact by definition: t/degC = T/K - 273.15. Source: BIPM, The International
/// System of Units (SI Brochure), 9th edition (2019), section 2.3.1, "The kelvin".
inline constexpr double zero_celsius = 273.15;

}  // namespace stillground
