#include "engine/assembly/phases.hpp"

#include <algorithm>

namespace stillground::assembly {

Phases::Phases(const Assembly& assembly) : assembly_(assembly) {
  std::vector<double> weights;
  for (const auto& members : assembly.groups.members) {
    const model::BoreSite& bore = assembly.bores[members.front()];
    start_.push_back(bore.start);
    stop_.push_back(bore.stop);
    weight_.push_back(bore.flow_weight);
    const auto found = std::find(weights.begin(), weights.end(), bore.flow_weight);
    class_.push_back(static_cast<std::size_t>(found - weights.begin()));
    if (found == weights.end()) weights.push_back(bore.flow_weight);
  }
  const auto from_the_start = [](double start) { return start == 0; };
  const auto to_the_end = [&](double stop) { return stop >= assembly.duration(); };
  all_alike_ = weights.size() == 1 && std::all_of(start_.begin(), start_.end(), from_the_start) &&
               std::all_of(stop_.begin(), stop_.end(), to_the_end);
}

double Phases::concentration(double time) const {
  if (all_alike_ || assembly_.scenario.flow.amount == model::Flow::Amount::per_bore) return 1;
  double all = 0, working = 0;
  for (std::size_t g = 0; g < start_.size(); ++g) {
    const march::Group& circuit = assembly_.problem.groups[g];
    if (!circuit.returns) continue;
    all += circuit.members * weight_[g];
    if (works(g, time)) working += circuit.members * weight_[g];
  }
  return all / working;
}

}  // namespace stillground::assembly
