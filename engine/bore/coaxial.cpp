#include <algorithm>
#include <cmath>
#include <numbers>

#include "engine/bore/resistance.hpp"
#include "engine/materials/film.hpp"

namespace stillground::bore {

namespace {

/// A ring between two radii through which heat flows outwards, and what it stores.
struct Ring {
  double inner = 0, outer = 0;  ///< radii [m]
  double conductivity = 0;
  double heat_capacity = 0;

  double resistance() const { return std::log(outer / inner) / (2 * std::numbers::pi * conductivity); }
  double area() const { return std::numbers::pi * (outer * outer - inner * inner); }

  /// Mean over the area of the temperature above the outer edge, for unit heat through the ring [K m/W].
  double mean_above_outer() const {
    const double ratio = outer * outer - inner * inner;
    return (ratio / 2 - inner * inner * std::log(outer / inner)) / (2 * std::numbers::pi * conductivity * ratio);
  }

  /// Mean of its square [K2 m2/W2]: of L = ln(outer/r), the integral of 2 r L^2 dr between the radii is
  /// ratio/2 - inner^2 (L^2 + L) at L = ln(outer/inner).
  double mean_square_above_outer() const {
    const double ratio = outer * outer - inner * inner, log = std::log(outer / inner);
    const double scale = 2 * std::numbers::pi * conductivity;
    return (ratio / 2 - inner * inner * (log * log + log)) / (scale * scale * ratio);
  }
};

}  // namespace

ModeResistances mode_resistances(const model::Bore& bore, const model::Coaxial& loop, double, const Films& films) {
  const model::Pipe& pipe = bore.pipe;
  const Ring wall{pipe.inner_diameter() / 2, pipe.outer_diameter / 2, pipe.conductivity, pipe.heat_capacity};
  const Ring grout{pipe.outer_diameter / 2, bore.diameter / 2, bore.grout.solid.conductivity,
                   bore.grout.solid.heat_capacity};
  const double in_grout = grout.outer > grout.inner ? grout.resistance() : 0.0;
  const double total = films.annulus_outer + wall.resistance() + in_grout;
  const double in_wall = wall.heat_capacity * wall.area(), in_ring = grout.heat_capacity * grout.area();
  const double of_wall = wall.mean_above_outer(), of_grout = in_grout > 0 ? grout.mean_above_outer() : 0.0;
  const double square_wall = wall.mean_square_above_outer() + in_grout * (2 * of_wall + in_grout);
  const double square_grout = in_grout > 0 ? grout.mean_square_above_outer() : 0.0;
  const double mean = (in_wall * (of_wall + in_grout) + in_ring * of_grout) / (in_wall + in_ring) / total;
  const double square = (in_wall * square_wall + in_ring * square_grout) / (in_wall + in_ring) / (total * total);
  return {{total, films.pipe + pipe_resistance(loop.inner, films.annulus_inner)},
          {mean, 0.5},
          {},
          std::sqrt(std::max(0.0, square - mean * mean))};
}

}  // namespace stillground::bore
