#include "engine/screen/wall_history.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "engine/march/instruction_sets.hpp"

namespace stillground::screen {

WallHistory::WallHistory(std::size_t bores, const WallAnswers& field, const WallAnswers& lone, double interval)
    : rise_(bores, Pack{}), history_(rise_) {
  if (field.pieces() > Pack::width)
    throw std::invalid_argument("WallHistory: more pieces of wall than lie side by side");
  if (bores == 1) {
    add_terms(field, 1, 0, interval);
  } else {
    add_terms(field, 0, 1, interval);
    add_terms(lone, 1, -1, interval);
  }
  rises_.assign(gains_.size() * bores, Pack{});
}

void WallHistory::add_terms(const WallAnswers& answers, double own, double shared, double interval) {
  for (std::size_t j = 0; j < answers.time_constants.size(); ++j) {
    const double constant = answers.time_constants[j], x = interval / constant;
    const auto found = std::find(time_constants_.begin(), time_constants_.end(), constant);
    const auto term = static_cast<std::size_t>(found - time_constants_.begin());
    if (found == time_constants_.end()) {
      time_constants_.push_back(constant);
      decays_.push_back(std::exp(-x));
      gains_.push_back({});
    }
    for (std::size_t w = 0; w < answers.pieces(); ++w) {
      const double gain = -answers.amplitudes[w][j] * std::expm1(-x);
      gains_[term].own.values[w] += own * gain;
      gains_[term].shared.values[w] += shared * gain;
    }
  }
}

namespace {

/// All terms of one bore, its pieces side by side:
///   rises <- decay rises + own heat + shared mean,   rise = sum rises,   history = sum decay rises.
/// Of one bore there is no mean: `gains` come two a term, of which the second is left out.
STILLGROUND_CLONED
void advance_terms(const double* decays, const Pack* gains, std::size_t count, const Pack& heat, const Pack* mean,
                   Pack* rises, Pack& rise, Pack& history) {
  Wide sum{}, after{};
  for (std::size_t j = 0; j < count; ++j) {
    Wide gained = wide(gains[2 * j]) * wide(heat);
    if (mean != nullptr) gained += wide(gains[2 * j + 1]) * wide(*mean);
    const Wide now = decays[j] * wide(rises[j]) + gained;
    wide(rises[j]) = now;
    sum += now;
    after += decays[j] * now;
  }
  wide(rise) = sum;
  wide(history) = after;
}

}  // namespace

void WallHistory::advance(const std::vector<Pack>& heat) {
  static_assert(sizeof(Gain) == 2 * sizeof(Pack));
  const std::size_t bores = rise_.size(), terms = gains_.size();
  Pack mean{};
  if (bores > 1) {
    for (const Pack& bore : heat) wide(mean) += wide(bore) / static_cast<double>(bores);
  }
  for (std::size_t b = 0; b < bores; ++b) {
    advance_terms(decays_.data(), &gains_.data()->own, terms, heat[b], bores > 1 ? &mean : nullptr,
                  rises_.data() + b * terms, rise_[b], history_[b]);
  }
}

}  // namespace stillground::screen
