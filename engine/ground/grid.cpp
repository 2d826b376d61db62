#include "engine/ground/grid.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "engine/ground/axial.hpp"

namespace stillground::ground {

namespace {

constexpr double shared_face = 0.25;  // [m]: bore ends closer than this share a face; fractions keep the exact lengths
constexpr double same_face = 1e-6;    // [m]

/// Faces that must exist: surface, layer boundaries, bore ends, bottom.
std::vector<double> fixed_faces(double bottom, const std::vector<model::Layer>& layers,
                                const std::vector<double>& ends) {
  std::vector<double> faces{0};
  for (const auto& layer : layers) {
    if (layer.bottom < bottom - same_face) faces.push_back(layer.bottom);
  }
  for (const double end : ends) faces.push_back(end);
  faces.push_back(bottom);
  std::sort(faces.begin(), faces.end());
  faces.erase(std::unique(faces.begin(), faces.end(), [](double a, double b) { return b - a < same_face; }),
              faces.end());
  return faces;
}

/// Bore ends, those within `shared_face` of an earlier one merged into it; a layer boundary that near serves as well.
std::vector<double> distinct_ends(const std::vector<DepthInterval>& bores, const std::vector<model::Layer>& layers) {
  std::vector<double> all;
  for (const auto& bore : bores) {
    all.push_back(bore.top);
    all.push_back(bore.toe);
  }
  std::sort(all.begin(), all.end());
  std::vector<double> ends;
  for (const double end : all) {
    const bool at_layer = std::any_of(layers.begin(), layers.end(),
                                      [&](const auto& layer) { return std::abs(layer.bottom - end) < shared_face; });
    if (end <= same_face || at_layer) continue;
    if (ends.empty() || end - ends.back() > shared_face) ends.push_back(end);
  }
  return ends;
}

/// |a - b|/(a + b): 0 for equal ones, towards 1 where one is nothing beside the other.
double contrast(double a, double b) {
  return std::abs(a - b) / (a + b);
}

/// Of conductivity or heat capacity, whichever is greater.
double contrast(const model::Solid& a, const model::Solid& b) {
  return std::max(contrast(a.conductivity, b.conductivity), contrast(a.heat_capacity, b.heat_capacity));
}

/// The height a cell should have whose upper face is at z and that grows downwards.
class Heights {
 public:
  Heights(const GridSpec& spec, const std::vector<model::Layer>& layers, const std::vector<DepthInterval>& bores)
      : spec_(spec) {
    for (const auto& bore : bores) {
      ends_.push_back(bore.top);
      ends_.push_back(bore.toe);
      toe_ = std::max(toe_, bore.toe);
    }
    std::sort(ends_.begin(), ends_.end());
    ends_.erase(std::unique(ends_.begin(), ends_.end()), ends_.end());
    add_boundaries(layers);
  }

  /// Wanted height about depth z: geometric growth from the nearest bore end or boundary. With heights growing by the
  /// factor g per cell from h0, the height at distance d from there is h0 + d (1 - 1/g).
  double at(double z) const {
    double nearest = std::abs(z - ends_.front());
    for (const double end : ends_) nearest = std::min(nearest, std::abs(z - end));
    double wanted = spec_.end_cell + nearest * (1 - 1 / spec_.growth);
    for (const Boundary& boundary : boundaries_)
      wanted = std::min(wanted, boundary.cell + std::abs(z - boundary.depth) * (1 - 1 / growth_at_boundaries_));
    return z < toe_ ? std::min(wanted, spec_.largest_cell) : wanted;
  }

 private:
  struct Boundary {
    double depth = 0;
    double cell = 0;  ///< height of the cells there
  };

  /// See make_grid.
  void add_boundaries(const std::vector<model::Layer>& layers) {
    for (std::size_t i = 0; i + 1 < layers.size() && layers[i].bottom < toe_; ++i) {
      const double unlike = contrast(layers[i].solid, layers[i + 1].solid);
      if (unlike == 0) continue;
      boundaries_.push_back({layers[i].bottom, spec_.end_cell * std::max(0.5, 0.4 / unlike)});
    }
  }

  GridSpec spec_;
  double growth_at_boundaries_ = spec_.growth * spec_.growth;
  std::vector<double> ends_;
  std::vector<Boundary> boundaries_;
  double toe_ = 0;
};

/// Divides [from, to] so that each cell has about its wanted height: equal shares of the integral of 1/height.
void subdivide(double from, double to, const Heights& heights, std::vector<double>& faces) {
  constexpr int samples = 400;
  const double dz = (to - from) / samples;
  std::vector<double> count(samples + 1, 0.0);  // cells above each sample
  for (int i = 0; i < samples; ++i) {
    count[static_cast<std::size_t>(i) + 1] =
        count[static_cast<std::size_t>(i)] + dz / heights.at(from + (i + 0.5) * dz);
  }
  const int cells = std::max(1, static_cast<int>(std::lround(count.back())));
  for (int cell = 1; cell < cells; ++cell) {
    const double wanted = count.back() * cell / cells;
    const auto upper = static_cast<std::size_t>(std::upper_bound(count.begin(), count.end(), wanted) - count.begin());
    const double part = (wanted - count[upper - 1]) / (count[upper] - count[upper - 1]);
    faces.push_back(from + (static_cast<double>(upper - 1) + part) * dz);
  }
  faces.push_back(to);
}

const model::Solid& solid_at(double z, const std::vector<model::Layer>& layers) {
  for (const auto& layer : layers) {
    if (z < layer.bottom) return layer.solid;
  }
  return layers.back().solid;
}

}  // namespace

GridSpec refined(GridSpec spec, double radial, double axial) {
  spec.radial_cells = std::max(4, static_cast<int>(std::lround(spec.radial_cells * radial)));
  spec.end_cell /= axial;
  spec.growth = std::pow(spec.growth, 1 / axial);
  spec.largest_cell /= axial;
  return spec;
}

double Grid::ring_area(std::size_t i) const {
  return std::numbers::pi * (r_faces[i + 1] - r_faces[i]) * (r_faces[i + 1] + r_faces[i]);
}

double Grid::unit_conductance(std::size_t i) const {
  return 2 * std::numbers::pi / std::log(r[i + 1] / r[i]);
}

Grid make_grid(const GridSpec& spec, const std::vector<model::Layer>& layers, const std::vector<DepthInterval>& bores) {
  Grid grid;
  const double ratio = std::pow(spec.outer_radius / spec.bore_radius, 1.0 / spec.radial_cells);
  for (int i = 0; i <= spec.radial_cells; ++i) grid.r_faces.push_back(spec.bore_radius * std::pow(ratio, i));
  const double node = 0.5 + std::log(ratio) / 18;  // in rings from the inner face: see Grid
  for (int i = 0; i < spec.radial_cells; ++i) grid.r.push_back(spec.bore_radius * std::pow(ratio, i + node));

  double toe = 0;
  for (const auto& bore : bores) toe = std::max(toe, bore.toe);
  const auto fixed = fixed_faces(toe + spec.bottom_margin, layers, distinct_ends(bores, layers));
  const Heights heights(spec, layers, bores);
  grid.z_faces.push_back(0);
  for (std::size_t i = 0; i + 1 < fixed.size(); ++i) subdivide(fixed[i], fixed[i + 1], heights, grid.z_faces);
  for (std::size_t k = 0; k + 1 < grid.z_faces.size(); ++k) {
    grid.z.push_back((grid.z_faces[k] + grid.z_faces[k + 1]) / 2);
    grid.solid.push_back(solid_at(grid.z.back(), layers));
  }
  return grid;
}

std::vector<double> active_fraction(const Grid& grid, const DepthInterval& bore) {
  std::vector<double> fraction(grid.nz());
  for (std::size_t k = 0; k < grid.nz(); ++k) {
    const double overlap = std::min(bore.toe, grid.z_faces[k + 1]) - std::max(bore.top, grid.z_faces[k]);
    fraction[k] = std::max(0.0, overlap) / grid.height(k);
  }
  return fraction;
}

double stiffest_axial_rate(const Grid& grid) {
  const auto conductance = axial_conductances(grid);
  double stiffest = 0;
  for (std::size_t k = 0; k < grid.nz(); ++k) {
    const double capacity = grid.solid[k].heat_capacity * grid.height(k);
    stiffest = std::max(stiffest, 2 * (conductance[k] + conductance[k + 1]) / capacity);
  }
  return stiffest;
}

}  // namespace stillground::ground
