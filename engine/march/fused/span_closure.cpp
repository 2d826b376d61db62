#include "engine/march/fused/span_closure.hpp"

#include <cmath>

#include "engine/base/errors.hpp"

namespace stillground::march::fused {

SpanClosure::SpanClosure(const Problem& problem, std::size_t span)
    : problem_(problem),
      span_(span),
      circuits_({problem.groups.begin(), problem.groups.end()}),
      gains_(problem.groups.size()),
      heat_rates_(problem.groups.size()),
      offsets_(problem.groups.size()),
      inlets_(problem.groups.size() * span) {}

void SpanClosure::set_gains(const ExchangeBuffer& exchange, const Forcing& forcing) {
  for (std::size_t g = 0; g < gains_.size(); ++g) {
    const InletResponse* response = exchange.response(g);
    gains_[g] = response ? response->outlet(0, 0) : 0.0;
    heat_rates_[g] = response ? forcing.of(g)->heat_rate : 0.0;
  }
  circuits_.set_gains(gains_, heat_rates_);
}

loop::OperatingPoint SpanClosure::close(const ExchangeBuffer& exchange, const Forcing& forcing, std::size_t first,
                                        std::size_t stage) {
  // T_out,s = g_{s,s} T_in,s + offset_s,  offset_s = T_out,s* - g_{s,s} T* + sum_{t < s} g_{s,t} D_t
  const InletResponse* uniform = nullptr;  // bores of one response and the same inlets
  double known = 0;                        // of the offset: all but T_out,s*
  for (std::size_t g = 0; g < offsets_.size(); ++g) {
    const InletResponse* response = exchange.response(g);
    if (!response) continue;
    const bool first_of_circuit = problem_.groups[g].upstream == Group::none;
    if (response != uniform || !first_of_circuit) {
      known = -gains_[g] * linearisation_inlet;
      for (std::size_t of = 0; of < stage; ++of) known += response->outlet(stage, of) * inlets_[g * span_ + of];
      uniform = first_of_circuit ? response : nullptr;
    }
    offsets_[g] = exchange.outlet(first, stage, g) + known;
  }
  // EFT = gain T_in + offset of the field, T_in = EFT + Q(EFT)/W
  const loop::FieldOutlet field = circuits_.set_offsets(offsets_);
  if (!std::isfinite(field.offset)) throw NumericsError("the march left the finite numbers");
  const loop::OperatingPoint point = loop::operating_point(field, forcing.demand, problem_.pumps);
  for (std::size_t g = 0; g < offsets_.size(); ++g) {
    inlets_[g * span_ + stage] = circuits_.inlet(g, point.lft) - linearisation_inlet;
  }
  return point;
}

}  // namespace stillground::march::fused
