#include "engine/screen/wall_history.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "engine/march/instruction_sets.hpp"

namespace stillground::screen {

WallHistory::WallHistory(std::size_t bores, const WallAnswers& field, const WallAnswers& lone, double interval)
    : bores_(bores), pieces_(field.pieces()), rise_(bores * pieces_, 0.0), history_(rise_) {
  if (pieces_ > Pack::width) throw std::invalid_argument("WallHistory: more pieces of wall than lie side by side");
  if (bores == 1) {
    add_terms(field, 1, 0, interval);
  } else {
    add_terms(field, 0, 1, interval);
    add_terms(lone, 1, -1, interval);
  }
  rises_.assign(terms_.size() * bores, Pack{});
}

void WallHistory::add_terms(const WallAnswers& answers, double own, double shared, double interval) {
  for (std::size_t j = 0; j < answers.time_constants.size(); ++j) {
    const double constant = answers.time_constants[j], x = interval / constant;
    const auto same = [&](const Term& term) { return term.time_constant == constant; };
    auto found = std::find_if(terms_.begin(), terms_.end(), same);
    if (found == terms_.end()) found = terms_.insert(found, Term{{}, {}, constant, std::exp(-x)});
    for (std::size_t w = 0; w < pieces_; ++w) {
      const double gain = -answers.amplitudes[w][j] * std::expm1(-x);
      found->own.values[w] += own * gain;
      found->shared.values[w] += shared * gain;
    }
  }
}

namespace {

const Wide& wide(const Pack& pack) {
  return *reinterpret_cast<const Wide*>(&pack);
}

Wide& wide(Pack& pack) {
  return *reinterpret_cast<Wide*>(&pack);
}

}  // namespace

/// All terms of one bore, its pieces side by side:
///   rises <- decay rises + own heat + shared mean,   rise = sum rises,   history = sum decay rises.
STILLGROUND_CLONED
void advance_terms(const WallHistory::Term* terms, std::size_t count, const Pack& heat, const Pack& mean, Pack* rises,
                   std::size_t stride, Pack& rise, Pack& history) {
  Wide sum{}, after{};
  for (std::size_t j = 0; j < count; ++j, rises += stride) {
    const Wide now =
        terms[j].decay * wide(*rises) + (wide(terms[j].own) * wide(heat) + wide(terms[j].shared) * wide(mean));
    wide(*rises) = now;
    sum += now;
    after += terms[j].decay * now;
  }
  wide(rise) = sum;
  wide(history) = after;
}

void WallHistory::advance(const std::vector<double>& heat) {
  Pack mean{}, own{}, rise{}, history{};
  if (bores_ > 1) {
    for (std::size_t b = 0; b < bores_; ++b) {
      for (std::size_t w = 0; w < pieces_; ++w) mean.values[w] += heat[b * pieces_ + w] / static_cast<double>(bores_);
    }
  }
  for (std::size_t b = 0; b < bores_; ++b) {
    const auto bore = static_cast<std::ptrdiff_t>(b * pieces_), pieces = static_cast<std::ptrdiff_t>(pieces_);
    std::copy_n(heat.begin() + bore, pieces, own.values);
    advance_terms(terms_.data(), terms_.size(), own, mean, rises_.data() + b, bores_, rise, history);
    std::copy_n(rise.values, pieces, rise_.begin() + bore);
    std::copy_n(history.values, pieces, history_.begin() + bore);
  }
}

}  // namespace stillground::screen
