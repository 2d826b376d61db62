#pragma once

#include <map>
#include <string>
#include <vector>

#include "engine/bore/network.hpp"
#include "engine/model/solid.hpp"

namespace stillground::validation {

/// A bore's cross-section as the reference solution takes it: legs evenly round the axis, or the outer pipe of a
/// coaxial loop on it. SI.
struct Section {
  int legs = 0;  ///< 1: coaxial
  double bore_radius = 0, offset = 0, pipe_outer_radius = 0, pipe_inner_radius = 0;
  model::Solid grout, pipe, ground;
  double film_resistance = 0;  ///< of one leg [K m/W]
  double fluid_storage = 0;    ///< of one leg [J/(m K)]
};

/// From a row of the reference solution's cases.
Section read_section(const std::map<std::string, std::string>& row);

/// The network that the engine marches with, as assembly::FlowRegimes makes it: of a single U, of a double U in
/// parallel, of a coaxial loop (of its fluid either stream has half).
bore::Network network(const Section& section);

/// Of a double U one after the other, each leg a stream of its own: modes even, alternate, opposite twice.
bore::Network series_network(const Section& section);

/// Of a double U in parallel, each U's own legs opposite each other.
bore::Network crossed_network(const Section& section);

/// Of a coaxial loop with the inner pipe and films of a row of coaxial_wall.csv; the inner stream goes up.
bore::Network inner_stream_network(const std::map<std::string, std::string>& row);

/// Where a section is after a step of heat [K, W/m].
struct SectionAnswer {
  double fluid = 0;
  double wall = 0;
  double filling = 0;       ///< mean of grout and pipe walls by heat capacity
  double grout_weight = 0;  ///< of grout in that mean
  double heat = 0;          ///< through the wall
};

/// A lone endless bore given `heat` [W/m], legs at one temperature, at each of `times` [s] (rising).
std::vector<SectionAnswer> even_answer(const Section& section, double heat, const std::vector<double>& times);

/// The warm stream's fluid in an odd mode of a network when it is given `heat` [W/m] and a cold one as much less.
std::vector<double> odd_answer(const bore::Network& network, std::size_t mode, double heat,
                               const std::vector<double>& times);

/// Hourly means of the fluid in the even mode at the engine's default step, by its stepper [K].
std::vector<double> hourly_means(const Section& section, double heat, int hours);

}  // namespace stillground::validation
