#include "engine/bore/section.hpp"

#include <fmt/format.h>

#include <cmath>
#include <string>

#include "engine/base/errors.hpp"

namespace stillground::bore {
namespace {

void require_positive(double value, const std::string& what) {
  if (!(std::isfinite(value) && value > 0))
    throw InputError(fmt::format("{} is {:.6g}; it must be finite and above 0", what, value));
}

constexpr double round_off = 1 + 1e-12;  // pipes that touch in the drawing may overlap by the last digit

}  // namespace

void check_section(const BoreSection& section) {
  require_positive(section.radius, "bore radius [m]");
  require_positive(section.grout_conductivity, "grout conductivity [W/(m K)]");
  require_positive(section.ground_conductivity, "ground conductivity [W/(m K)]");
  if (section.pipes.empty()) throw InputError("a bore without pipes has no resistance");
  for (std::size_t m = 0; m < section.pipes.size(); ++m) {
    const SectionPipe& pipe = section.pipes[m];
    require_positive(pipe.outer_radius, fmt::format("outer radius [m] of pipe {}", m + 1));
    if (!(std::isfinite(pipe.resistance) && pipe.resistance >= 0))
      throw InputError(fmt::format("resistance of pipe {} is {:.6g} K m/W; it must be finite and not below 0", m + 1,
                                   pipe.resistance));
    const double reach = std::abs(pipe.centre()) + pipe.outer_radius;
    if (!(reach <= section.radius * round_off))
      throw InputError(
          fmt::format("pipe {} reaches {:.1f} mm from the bore's axis, beyond the bore's radius of {:.1f} mm", m + 1,
                      1e3 * reach, 1e3 * section.radius));
    for (std::size_t n = 0; n < m; ++n) {
      const double distance = std::abs(pipe.centre() - section.pipes[n].centre());
      const double least = pipe.outer_radius + section.pipes[n].outer_radius;
      if (!(distance * round_off >= least))
        throw InputError(
            fmt::format("pipes {} and {} overlap: {:.1f} mm between their centres, at least {:.1f} mm needed", n + 1,
                        m + 1, 1e3 * distance, 1e3 * least));
    }
  }
}

}  // namespace stillground::bore
