#include "engine/screen/wall_answers.hpp"

#include <algorithm>
#include <map>

namespace stillground::screen {

WallAnswers fitted(const response::FieldResponse& response, double longest) {
  constexpr double shortest = 180;  // time constant [s]
  WallAnswers answers;
  std::vector<response::ExponentialResponse> each;
  std::map<double, std::size_t> places;
  for (const auto& samples : response) {
    const response::Fit fit = response::fit(samples, shortest, longest);
    answers.misfit = std::max(answers.misfit, fit.misfit);
    answers.instant.push_back(fit.response.instant);
    each.push_back(fit.response);
    for (const response::Exponential& term : fit.response.terms) places.emplace(term.time_constant, 0);
  }
  for (auto& [constant, place] : places) {
    place = answers.time_constants.size();
    answers.time_constants.push_back(constant);
  }
  for (const auto& piece : each) {
    auto& amplitudes = answers.amplitudes.emplace_back(places.size(), 0.0);
    for (const response::Exponential& term : piece.terms) amplitudes[places.at(term.time_constant)] = term.amplitude;
  }
  return answers;
}

WallAnswers scaled(WallAnswers answers, double conductivity, double heat_capacity) {
  for (double& instant : answers.instant) instant /= conductivity;
  for (double& constant : answers.time_constants) constant *= heat_capacity / conductivity;
  for (auto& amplitudes : answers.amplitudes) {
    for (double& amplitude : amplitudes) amplitude /= conductivity;
  }
  return answers;
}

WallAnswers between(const WallAnswers& answers, double least, double most) {
  WallAnswers part{std::vector<double>(answers.pieces(), 0.0), {}, {}, answers.misfit};
  part.amplitudes.resize(answers.pieces());
  for (std::size_t j = 0; j < answers.time_constants.size(); ++j) {
    if (answers.time_constants[j] < least || answers.time_constants[j] >= most) continue;
    part.time_constants.push_back(answers.time_constants[j]);
    for (std::size_t w = 0; w < part.pieces(); ++w) part.amplitudes[w].push_back(answers.amplitudes[w][j]);
  }
  return part;
}

}  // namespace stillground::screen
