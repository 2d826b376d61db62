#pragma once

#include <functional>
#include <span>
#include <vector>

#include "engine/assembly/assembly.hpp"
#include "engine/assembly/phases.hpp"
#include "engine/record/frames.hpp"
#include "engine/transit/circuit.hpp"

namespace stillground::transit {

/// A peak and when in the hour it begins [s].
struct PeakAt {
  model::LoadPeak peak;
  double from = 0;

  /// The load over its mean, `second` seconds into the hour.
  double part(double second) const;
};

/// Marches single hours of a run minute by minute, with the fluid's transit, one circuit for the whole field:
/// - The two days before give it the heat and flow that the run had in each of their hours, so that fluid, grout and
///   the ground near the bore remember them; what lies longer back, and the neighbours, are one temperature by which
///   the ambient ground is warmer than the undisturbed, such that the hour's mean EFT is the run's.
/// - In the hour the load is even, or has the scenario's peak: at the hour's start, at its end, and so that what it
///   does comes back by the hour's end. The heat pumps meet it at the EFT of the moment.
/// Left out: bores of unequal length or flow (the one of median depth stands for all, its flow is their mean), the
/// headers' contents, whatever the heat pumps themselves hold.
class HourMarch {
 public:
  /// `hours`: of the run, from its start. Both must outlive it.
  HourMarch(const assembly::Assembly& assembly, std::span<const record::Hour> hours);

  /// Mean EFT of each minute of an hour with flow [K], and of those of the next in which its fluid comes back, should
  /// it flow on: one course of an even load, or one for each place of a peak.
  std::vector<std::vector<double>> courses(long hour);

 private:
  struct Share {
    double circuits = 0;  ///< through which fluid flows
    double flow = 0;      ///< of each [kg/s]
    double heat = 0;      ///< into the ground, of each [W]
  };
  Share share(long hour) const;
  long first_followed(long hour) const;
  Circuit before(long hour);
  std::vector<double> flow(Circuit& circuit, const Share& share, const Pace& pace, double seconds,
                           const std::function<double(double, double)>& heat);
  std::vector<double> course(Circuit circuit, long hour, const PeakAt& peak);

  const assembly::Assembly& assembly_;
  std::span<const record::Hour> hours_;
  assembly::Phases phases_;
  assembly::FlowRegimes regimes_;
  Circuit fresh_;
};

}  // namespace stillground::transit
