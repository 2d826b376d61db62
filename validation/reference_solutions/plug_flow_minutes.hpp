#pragma once

#include <array>
#include <functional>
#include <vector>

namespace stillground::reference_solutions {

/// A mode of the two streams: fluid - inner node - outer node - end, see engine/README.md. Without capacity its heat
/// passes at once.
struct PlugMode {
  std::array<double, 2> reads{}, gives{};   ///< of the stream down and the one up
  double inner = 0, middle = 0, outer = 0;  ///< [K m/W]
  double inner_grout = 0, outer_grout = 0;  ///< [J/(m K)]; both or neither
};

/// A bore in ground of one kind, one stream down and one up. Mode 0 ends at the bore wall, mode 1 at none.
struct PlugBore {
  double length = 0;                 ///< [m]
  double radius = 0;                 ///< [m]
  double conductivity = 0;           ///< of the ground [W/(m K)]
  double heat_capacity = 0;          ///< of the ground [J/(m3 K)]
  double heat_rate = 0;              ///< of the fluid when it flows [W/K]
  std::array<double, 2> capacity{};  ///< of the streams [J/(m K)]
  std::array<PlugMode, 2> flowing{}, standing{};
};

/// Rise of the fluid that comes back [K], mean of each of so many minutes, under `heat` [W] at a second after the
/// start; in a minute that begins without heat it stands (no number then). All at rest before. Plug flow along the
/// characteristics: parcels that fill half a second of the flow move by one and exchange by backward Euler's; at the
/// wall the exact answer of the ground round a cylinder (Carslaw & Jaeger 1959, section 13.5 [section from memory],
/// turned back by Stehfest's weights), superposed minute by minute in each part of the bore. No ends, no heat along the
/// bore but the fluid's.
std::vector<double> plug_flow_minutes(const PlugBore& bore, std::size_t minutes,
                                      const std::function<double(double)>& heat);

/// The same for several courses of heat that are one for the first `alike` minutes: [course][minute].
std::vector<std::vector<double>> plug_flow_minutes(const PlugBore& bore, std::size_t minutes, std::size_t alike,
                                                   const std::vector<std::function<double(double)>>& heats);

}  // namespace stillground::reference_solutions
