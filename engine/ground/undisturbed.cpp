#include "engine/ground/undisturbed.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <type_traits>
#include <variant>

#include "engine/base/calendar.hpp"
#include "engine/ground/axial.hpp"
#include "engine/ground/warming.hpp"

namespace stillground::ground {

namespace {

using Complex = std::complex<double>;

constexpr double yearly = 2 * std::numbers::pi / seconds_per_year;  // [1/s]

/// k sigma of a solid: the admittance F/A of a semi-infinite solid under a wave.
Complex semi_infinite_admittance(const model::Solid& solid, double omega) {
  return solid.conductivity * std::sqrt(Complex(0, omega / solid.diffusivity()));
}

/// A layer of one solid.
struct Slab {
  double thickness = 0;
  model::Solid solid;
};

/// Amplitude and flux of a wave at the slabs' faces: slabs.size() + 1 of each; unit amplitude at the first face,
/// a semi-infinite solid, the last slab's, below.
struct Wave {
  std::vector<Complex> amplitude;
  std::vector<Complex> flux;
};

Wave through(const std::vector<Slab>& slabs, double omega) {
  const std::size_t n = slabs.size();
  std::vector<Complex> admittance(n + 1);
  admittance[n] = semi_infinite_admittance(slabs.back().solid, omega);
  for (std::size_t k = n; k-- > 0;) {
    const Complex own = semi_infinite_admittance(slabs[k].solid, omega);
    const Complex tanh = std::tanh(own / slabs[k].solid.conductivity * slabs[k].thickness);
    admittance[k] = own * (admittance[k + 1] + own * tanh) / (own + admittance[k + 1] * tanh);
  }
  Wave wave{{Complex(1)}, {admittance[0]}};
  for (std::size_t k = 0; k < n; ++k) {
    const Complex own = semi_infinite_admittance(slabs[k].solid, omega);
    const Complex x = own / slabs[k].solid.conductivity * slabs[k].thickness;
    wave.amplitude.push_back(wave.amplitude[k] / (std::cosh(x) + admittance[k + 1] / own * std::sinh(x)));
    wave.flux.push_back(admittance[k + 1] * wave.amplitude.back());
  }
  return wave;
}

std::vector<Slab> cells(const Grid& grid) {
  std::vector<Slab> slabs;
  for (std::size_t k = 0; k < grid.nz(); ++k) slabs.push_back({grid.height(k), grid.solid[k]});
  return slabs;
}

std::vector<Complex> cell_means(const model::SeasonalSurface& surface, const Grid& grid) {
  const Wave wave = through(cells(grid), yearly);
  // The surface's own amplitude: coldest at `coldest`, damped by the film if there is one.
  Complex at_surface = -surface.swing * std::exp(Complex(0, -yearly * surface.coldest));
  if (surface.surface_film > 0) at_surface *= surface.surface_film / (surface.surface_film + wave.flux[0]);
  std::vector<Complex> mean(grid.nz());
  for (std::size_t k = 0; k < grid.nz(); ++k) {
    const Complex stored = wave.flux[k] - wave.flux[k + 1];
    mean[k] = at_surface * stored / (Complex(0, yearly) * grid.solid[k].heat_capacity * grid.height(k));
  }
  return mean;
}

/// Mean over [from, to] of a profile linear between its points and held beyond them: exact, piece by piece.
double profile_mean(const std::vector<model::ProfilePoint>& points, double from, double to) {
  const auto value = [&](double z) {
    if (z <= points.front().depth) return points.front().temperature;
    if (z >= points.back().depth) return points.back().temperature;
    const auto after =
        std::upper_bound(points.begin(), points.end(), z, [](double d, const auto& p) { return d < p.depth; });
    const auto& lower = *after;
    const auto& upper = *(after - 1);
    return std::lerp(upper.temperature, lower.temperature, (z - upper.depth) / (lower.depth - upper.depth));
  };
  std::vector<double> cuts{from};
  for (const auto& point : points) {
    if (point.depth > from && point.depth < to) cuts.push_back(point.depth);
  }
  cuts.push_back(to);
  double sum = 0;
  for (std::size_t i = 0; i + 1 < cuts.size(); ++i) {
    sum += (value(cuts[i]) + value(cuts[i + 1])) / 2 * (cuts[i + 1] - cuts[i]);
  }
  return sum / (to - from);
}

std::vector<double> steady_means(const model::SeasonalSurface& surface, const Grid& grid) {
  std::vector<double> mean;
  double top = surface.mean + (surface.surface_film > 0 ? surface.heat_flow / surface.surface_film : 0.0);
  for (std::size_t k = 0; k < grid.nz(); ++k) {
    const double bottom = top + surface.heat_flow * grid.height(k) / grid.solid[k].conductivity;
    mean.push_back((top + bottom) / 2);
    top = bottom;
  }
  return mean;
}

}  // namespace

std::vector<Complex> wave_amplitude(const std::vector<model::Layer>& layers, double omega,
                                    std::span<const double> depths) {
  std::vector<double> faces(depths.begin(), depths.end());
  for (const auto& layer : layers) {
    if (std::isfinite(layer.bottom)) faces.push_back(layer.bottom);
  }
  std::sort(faces.begin(), faces.end());
  faces.erase(std::unique(faces.begin(), faces.end()), faces.end());
  std::vector<Slab> slabs;
  double top = 0;
  for (const double face : faces) {
    if (face <= 0) continue;
    const auto layer =
        std::find_if(layers.begin(), layers.end(), [&](const auto& l) { return (top + face) / 2 < l.bottom; });
    slabs.push_back({face - top, layer->solid});
    top = face;
  }
  slabs.push_back({1.0, layers.back().solid});  // the semi-infinite solid below is the same
  const Wave wave = through(slabs, omega);
  std::vector<Complex> result;
  for (const double depth : depths) {
    double z = 0;
    std::size_t face = 0;
    while (z < depth && face < slabs.size()) z += slabs[face++].thickness;
    result.push_back(wave.amplitude[face]);
  }
  return result;
}

Undisturbed::Undisturbed(const model::Ground& ground, const Grid& grid, double start_of_run, double duration)
    : wave_(grid.nz()), start_of_run_(start_of_run) {
  if (const auto* surface = std::get_if<model::SeasonalSurface>(&ground.undisturbed)) {
    mean_ = steady_means(*surface, grid);
    wave_ = cell_means(*surface, grid);
    if (surface->trend != 0) {
      warming_interval_ = seconds_per_year / 12;
      warming_ = surface_warming(grid, surface->trend, surface->surface_film, warming_interval_, duration);
    }
  } else if (const auto* profile = std::get_if<model::MeasuredProfile>(&ground.undisturbed)) {
    for (std::size_t k = 0; k < grid.nz(); ++k) {
      mean_.push_back(profile_mean(profile->points, grid.z_faces[k], grid.z_faces[k + 1]));
    }
  } else {
    mean_.assign(grid.nz(), std::get<model::MeanOverBore>(ground.undisturbed).temperature);
  }
}

void Undisturbed::at(double time, std::span<double> temperature) const {
  const double angle = yearly * std::fmod(start_of_run_ + time, seconds_per_year);
  const double cosine = std::cos(angle);
  const double sine = std::sin(angle);
  const std::size_t nz = mean_.size();
  for (std::size_t k = 0; k < nz; ++k) temperature[k] = mean_[k] + wave_[k].real() * cosine - wave_[k].imag() * sine;
  if (warming_.empty()) return;
  const std::size_t rows = warming_.size() / nz;
  const double position = std::clamp(time / warming_interval_, 0.0, static_cast<double>(rows - 1));
  const std::size_t row = std::min(static_cast<std::size_t>(position), rows - 2);
  for (std::size_t k = 0; k < nz; ++k) {
    temperature[k] +=
        std::lerp(warming_[row * nz + k], warming_[(row + 1) * nz + k], position - static_cast<double>(row));
  }
}

}  // namespace stillground::ground
