#include "engine/bore/section_field.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace stillground::bore {
namespace {

using Complex = std::complex<double>;
using std::numbers::pi;

// Products and quotients of finite numbers, the divisor not zero: std::complex's own look after what is not finite, at
// several times the cost, and these are most of what a resistance costs.
Complex product(Complex a, Complex b) {
  return {a.real() * b.real() - a.imag() * b.imag(), a.real() * b.imag() + a.imag() * b.real()};
}
Complex over(double a, Complex b) {
  return std::conj(b) * (a / std::norm(b));
}

// A complex potential W and dW/dz: T = Re W, dT/dx - i dT/dy = dW/dz.
struct Potential {
  double value = 0;  // of W the real part
  Complex slope = 0;

  FieldPoint point() const { return {value, std::conj(slope)}; }
};

using Strengths = Eigen::Ref<const Eigen::VectorXcd>;

Strengths strengths_of(const SectionField& field, std::size_t n) {
  const auto order = field.strength.size() / field.heat.size();
  return field.strength.segment(Eigen::Index(n) * order, order);
}

// sum_j p_j u^j, j = 1..J, and its derivative by u (Horner).
Potential power_series(const Strengths& p, Complex u) {
  Complex value = 0, slope = 0;
  for (Eigen::Index j = p.size(); j-- > 0;) {
    slope = product(slope, u) + value;
    value = product(value, u) + p[j];
  }
  return {product(value, u).real(), value + product(slope, u)};
}

// The same with the p_j's conjugates.
Potential conjugate_series(const Strengths& p, Complex u) {
  const Potential mirrored = power_series(p, std::conj(u));
  return {mirrored.value, std::conj(mirrored.slope)};
}

// ln(a/|b|).
double log_ratio(double a, Complex b) {
  return std::log(a * a / std::norm(b)) / 2;
}

double line_strength(const SectionField& field, std::size_t n) {
  return field.heat[Eigen::Index(n)] / (2 * pi * field.section.grout_conductivity);
}

// Line source and multipoles of pipe n at its centre.
Potential own_part(const SectionField& field, std::size_t n, Complex z) {
  const SectionPipe& pipe = field.section.pipes[n];
  const double line = line_strength(field, n);
  const Complex apart = z - pipe.centre(), inverse = over(1, apart);
  const Complex u = pipe.outer_radius * inverse;
  const Potential series = power_series(strengths_of(field, n), u);
  return {line * log_ratio(field.section.radius, apart) + series.value,
          product(-line - product(series.slope, u), inverse)};
}

// Their image in the bore wall, for contrast 1.
Potential image_part(const SectionField& field, std::size_t n, Complex z) {
  const SectionPipe& pipe = field.section.pipes[n];
  const double line = line_strength(field, n);
  const double squared = field.section.radius * field.section.radius;
  const Complex mirrored = std::conj(pipe.centre());
  const Complex gap = squared - product(z, mirrored), inverse = over(1, gap);
  const Potential series = conjugate_series(strengths_of(field, n), pipe.outer_radius * product(z, inverse));
  return {line * log_ratio(squared, gap) + series.value,
          product(line * mirrored + pipe.outer_radius * squared * product(series.slope, inverse), inverse)};
}

// The temperature of grout_point alone.
double grout_temperature(const SectionField& field, Complex z) {
  const double sigma = field.section.contrast(), squared = field.section.radius * field.section.radius;
  double sum = 0;
  for (std::size_t n = 0; n < field.section.pipes.size(); ++n) {
    const SectionPipe& pipe = field.section.pipes[n];
    const Complex apart = z - pipe.centre(), gap = squared - product(z, std::conj(pipe.centre()));
    const Complex u = over(pipe.outer_radius, apart);
    const Complex image = std::conj(product(z, over(pipe.outer_radius, gap)));
    const Strengths p = strengths_of(field, n);
    Complex own_value = 0, image_value = 0;
    for (Eigen::Index j = p.size(); j-- > 0;) {
      own_value = product(own_value + p[j], u);
      image_value = product(image_value + p[j], image);
    }
    sum += line_strength(field, n) * (log_ratio(field.section.radius, apart) + sigma * log_ratio(squared, gap)) +
           own_value.real() + sigma * image_value.real();
  }
  return sum;
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
    sum.value += (1 + sigma) * own.value + rest * log_ratio(field.section.radius, z);
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
      const double temperature = grout_temperature(field, pipe.centre() + along_ray * product(direction, axis));
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
    sum += grout_temperature(field, std::polar(field.section.radius, angle * (2 * (i + 0.5) / points - 1)));
  }
  return sum / points;
}

}  // namespace stillground::bore
