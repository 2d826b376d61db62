#pragma once

#include <cstddef>
#include <vector>

#include "engine/loop/circuits.hpp"
#include "engine/loop/closure.hpp"
#include "engine/march/fused/exchange.hpp"
#include "engine/march/rates.hpp"

namespace stillground::march::fused {

/// Closes the loop of a span, stage by stage, from what the groups did at the linearisation inlet. Every thread has one
/// and finds the same by the same sums in the same order: to work it out again is quicker than to fetch it from another
/// core. Its bits depend on nothing but the exchange buffer.
class SpanClosure {
 public:
  SpanClosure(const Problem& problem, std::size_t span);

  /// Takes the hour's flows and the groups' gains within a stage, g_{s,s}: the same in all of them.
  void set_gains(const ExchangeBuffer& exchange, const Forcing& forcing);

  /// The operating point in stage `first` + `stage`, those before it in the span being closed; the groups' inlets
  /// follow. Throws NumericsError.
  loop::OperatingPoint close(const ExchangeBuffer& exchange, const Forcing& forcing, std::size_t first,
                             std::size_t stage);

  /// D of a group in each stage of the span [K]: its inlet less the linearisation inlet.
  const double* inlets(std::size_t group) const { return inlets_.data() + group * span_; }

 private:
  const Problem& problem_;
  std::size_t span_;
  loop::Circuits circuits_;
  std::vector<double> gains_, heat_rates_, offsets_;  // [group]
  Vector inlets_;                                     // [group][stage of the span]
};

}  // namespace stillground::march::fused
