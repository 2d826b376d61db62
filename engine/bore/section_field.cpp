#include "engine/bore/section_field.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace stillground::bore {
namespace {

using Complex = std::complex<double>;
using std::numbers::pi;

// A complex potential W and dW/dz: T = Re W, dT/dx - i dT/dy = dW/dz.
struct Potential {
  Complex value = 0;
  Complex slope = 0;

  FieldPoint point() const { return {value.real(), std::conj(slope)}; }
};

// sum_j p_j u^j, j = 1..J, and its derivative by u (Horner).
Potential power_series(const Eigen::Ref<const Eigen::VectorXcd>& p, Complex u) {
  Potential sum;
  for (Eigen::Index j = p.size(); j-- > 0;) {
    sum.slope = sum.slope * u + sum.value;
    sum.value = sum.value * u + p[j];
  }
  return {sum.value * u, sum.value + sum.slope * u};
}

// Line source and multipoles of pipe n at its centre.
Potential own_part(const SectionField& field, std::size_t n, Complex z) {
  const SectionPipe& pipe = field.section.pipes[n];
  const auto order = field.strength.size() / field.heat.size();
  const double line = field.heat[Eigen::Index(n)] / (2 * pi * field.section.grout_conductivity);
  const Complex apart = z - pipe.centre();
  const Complex u = pipe.outer_radius / apart;
  const Potential series = power_series(field.strength.segment(Eigen::Index(n) * order, order), u);
  return {line * std::log(field.section.radius / apart) + series.value, -line / apart - series.slope * u / apart};
}

// Their image in the bore wall, for contrast 1.
Potential image_part(const SectionField& field, std::size_t n, Complex z) {
  const SectionPipe& pipe = field.section.pipes[n];
  const auto order = field.strength.size() / field.heat.size();
  const double line = field.heat[Eigen::Index(n)] / (2 * pi * field.section.grout_conductivity);
  const double squared = field.section.radius * field.section.radius;
  const Complex mirrored = std::conj(pipe.centre());
  const Complex gap = squared - z * mirrored;
  const Potential series =
      power_series(field.strength.segment(Eigen::Index(n) * order, order).conjugate(), pipe.outer_radius * z / gap);
  return {line * std::log(squared / gap) + series.value,
          line * mirrored / gap + series.slope * pipe.outer_radius * squared / (gap * gap)};
}

// Integral of T dphi/dn - phi dT/dn over the circle of `centre` and `radius`, n pointing outwards from the centre, by
// the midpoint rule, whose error on a full circle vanishes faster than any power.
double circle_integral(const SectionField& field, Complex centre, double radius, int points) {
  const double width = 2 * pi / points;
  double sum = 0;
  for (int i = 0; i < points; ++i) {
    const Complex normal = std::polar(1.0, (i + 0.5) * width);
    const Complex z = centre + radius * normal;
    const FieldPoint here = grout_point(field, z);
    const double outward = (here.gradient * std::conj(normal)).real();
    sum += here.temperature * z.real() * normal.real() - z.real() * z.real() / 2 * outward;
  }
  return sum * radius * width;
}

}  // namespace

SectionField field_of(const Multipoles& multipoles, const Eigen::VectorXd& heat) {
  return {multipoles.section, heat, multipoles.strength * heat.cast<Complex>()};
}

FieldPoint grout_point(const SectionField& field, Complex z) {
  const double sigma = field.section.contrast();
  Potential sum;
  for (std::size_t n = 0; n < field.section.pipes.size(); ++n) {
    const Potential own = own_part(field, n, z);
    const Potential image = image_part(field, n, z);
    sum.value += own.value + sigma * image.value;
    sum.slope += own.slope + sigma * image.slope;
  }
  return sum.point();
}

FieldPoint ground_point(const SectionField& field, Complex z) {
  const double sigma = field.section.contrast();
  Potential sum;
  for (std::size_t n = 0; n < field.section.pipes.size(); ++n) {
    const Potential own = own_part(field, n, z);
    // What the sources at the pipes' centres, weakened or strengthened by the wall, lack of the whole heat.
    const double rest = sigma * field.heat[Eigen::Index(n)] / (2 * pi * field.section.ground_conductivity);
    sum.value += (1 + sigma) * own.value + rest * std::log(field.section.radius / z);
    sum.slope += (1 + sigma) * own.slope - rest / z;
  }
  return sum.point();
}

double mean_grout_temperature(const SectionField& field) {
  constexpr int wall_points = 128;
  constexpr int pipe_points = 64;
  const double radius = field.section.radius;
  double integral = circle_integral(field, 0, radius, wall_points);
  double area = pi * radius * radius;
  for (const SectionPipe& pipe : field.section.pipes) {
    integral -= circle_integral(field, pipe.centre(), pipe.outer_radius, pipe_points);
    area -= pi * pipe.outer_radius * pipe.outer_radius;
  }
  return integral / area;
}

double mean_square_temperature(const SectionField& field, std::size_t which) {
  constexpr int rays = 48, points = 16;
  const SectionPipe& pipe = field.section.pipes.at(which);
  const double distance = std::abs(pipe.centre()), radius = field.section.radius;
  const Complex axis = pipe.centre() / distance;
  const double sector = pi / double(field.section.pipes.size());  // either side of the pipe's axis
  double sum = 0, area = 0;
  for (int i = 0; i < rays; ++i) {
    const Complex direction = std::polar(1.0, pi * (i + 0.5) / rays);  // from the axis
    const double across = distance * direction.imag(), along = distance * direction.real();
    double end = std::sqrt(radius * radius - across * across) - along;  // at the bore wall
    const double turned = std::arg(direction) - sector;
    if (turned > 0) end = std::min(end, distance * std::sin(sector) / std::sin(turned));  // at the sector's edge
    const double width = (end - pipe.outer_radius) / points;
    for (int j = 0; j < points; ++j) {
      const double along_ray = pipe.outer_radius + (j + 0.5) * width;
      const double temperature = grout_point(field, pipe.centre() + along_ray * direction * axis).temperature;
      sum += temperature * temperature * along_ray * width;
      area += along_ray * width;
    }
  }
  return sum / area;
}

double mean_wall_temperature(const SectionField& field, double angle) {
  constexpr int points = 128;
  double sum = 0;
  for (int i = 0; i < points; ++i) {
    sum += grout_point(field, std::polar(field.section.radius, angle * (2 * (i + 0.5) / points - 1))).temperature;
  }
  return sum / points;
}

}  // namespace stillground::bore
