#include "engine/screen/wall_history.hpp"

#include <algorithm>
#include <cmath>

#include "engine/march/instruction_sets.hpp"

namespace stillground::screen {

WallHistory::WallHistory(std::size_t bores, const WallAnswers& field, const WallAnswers& lone, double interval)
    : bores_(bores), pieces_(field.pieces()), mean_(pieces_, 0.0) {
  if (bores == 1) {
    add_terms(field, 1, 0, interval);
  } else {
    add_terms(field, 0, 1, interval);
    add_terms(lone, 1, -1, interval);
  }
  rise_.assign(bores * pieces_, 0.0);
  history_ = rise_;
  rises_.assign(places_.size() * rise_.size(), 0.0);
}

void WallHistory::add_terms(const WallAnswers& answers, double own, double shared, double interval) {
  for (std::size_t j = 0; j < answers.time_constants.size(); ++j) {
    const double x = interval / answers.time_constants[j];
    const auto [found, fresh] = places_.emplace(answers.time_constants[j], places_.size());
    if (fresh) {
      decay_.push_back(std::exp(-x));
      own_.resize(own_.size() + pieces_, 0.0);
      shared_.resize(own_.size(), 0.0);
    }
    for (std::size_t w = 0; w < pieces_; ++w) {
      const double gain = -answers.amplitudes[w][j] * std::expm1(-x);
      own_[found->second * pieces_ + w] += own * gain;
      shared_[found->second * pieces_ + w] += shared * gain;
    }
  }
}

namespace {

/// All terms of one bore, [term][piece] with `stride` from term to term of `rises`:
///   rises <- decay rises + own heat + shared mean,   rise = sum rises,   history = sum decay rises.
STILLGROUND_CLONED
void advance_terms(std::size_t terms, std::size_t pieces, const double* decay, const double* own, const double* shared,
                   const double* heat, const double* mean, std::size_t stride, double* rises, double* rise,
                   double* history) {
  for (std::size_t j = 0; j < terms; ++j) {
    for (std::size_t w = 0; w < pieces; ++w) {
      const double now = decay[j] * rises[w] + (own[w] * heat[w] + shared[w] * mean[w]);
      rises[w] = now;
      rise[w] += now;
      history[w] += decay[j] * now;
    }
    own += pieces;
    shared += pieces;
    rises += stride;
  }
}

}  // namespace

void WallHistory::advance(const std::vector<double>& heat) {
  if (bores_ > 1) {
    std::fill(mean_.begin(), mean_.end(), 0.0);
    for (std::size_t i = 0; i < heat.size(); ++i) mean_[i % pieces_] += heat[i] / static_cast<double>(bores_);
  }
  std::fill(rise_.begin(), rise_.end(), 0.0);
  std::fill(history_.begin(), history_.end(), 0.0);
  for (std::size_t b = 0; b < bores_; ++b) {
    const std::size_t bore = b * pieces_;
    advance_terms(decay_.size(), pieces_, decay_.data(), own_.data(), shared_.data(), &heat[bore], mean_.data(),
                  bores_ * pieces_, rises_.data() + bore, &rise_[bore], &history_[bore]);
  }
}

}  // namespace stillground::screen
