#include "tools/results/drift.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>

#include "engine/base/calendar.hpp"
#include "engine/base/errors.hpp"
#include "tools/results/block.hpp"
#include "tools/results/trend.hpp"

namespace stillground::results {

namespace {

constexpr double nothing = std::numeric_limits<double>::quiet_NaN();
constexpr double least_change = 0.05;  ///< a final change below this is none to take shares of [K]

std::vector<double> undisturbed_means(const record::read::Result& result, const std::vector<double>& layers) {
  std::vector<double> at_instants;
  for (std::size_t s = 0; s < result.snapshot_times().size(); ++s) {
    const record::Snapshot snapshot = result.snapshot(s);
    double mean = 0;
    for (std::size_t z = 0; z < layers.size(); ++z) mean += layers[z] * snapshot.undisturbed[z];
    at_instants.push_back(mean);
  }
  return yearly_means(result.snapshot_times(), at_instants, result.header().years);
}

}  // namespace

Drift assess(const YearlyGround& yearly) {
  Drift drift;
  drift.yearly = yearly;
  drift.block_trends = trends(yearly.block_rise);
  drift.trend = drift.block_trends.back();
  drift.middle_trend = yearly.middle_rise.empty() ? nothing : trends(yearly.middle_rise).back();
  drift.undisturbed_trend = trends(yearly.undisturbed).back();
  drift.level_from = level_from(drift.block_trends);
  drift.share = std::abs(yearly.final_block) < least_change ? nothing : yearly.block_rise.back() / yearly.final_block;
  return drift;
}

Block block_of(const std::vector<record::BoreRow>& bores) {
  Block block{ground_block(bores), std::numeric_limits<double>::infinity(), 0};
  for (const record::BoreRow& bore : bores) {
    block.top = std::min(block.top, bore.top);
    block.toe = std::max(block.toe, bore.top + bore.depth);
  }
  return block;
}

std::vector<double> yearly_means(const std::vector<double>& times, const std::vector<double>& values, int years) {
  constexpr double second = 1;  // instants are whole hours; their round-off is far below this
  std::vector<double> means;
  for (int year = 0; year < years; ++year) {
    const double from = seconds_per_year * year - second;
    const double to = seconds_per_year * (year + 1) + second;
    double sum = 0;
    double covered = 0;
    for (std::size_t s = 0; s + 1 < times.size(); ++s) {
      if (times[s] < from || times[s + 1] > to) continue;
      const double step = times[s + 1] - times[s];
      sum += step * (values[s] + values[s + 1]) / 2;
      covered += step;
    }
    means.push_back(std::abs(covered - seconds_per_year) < 2 * second ? sum / covered : nothing);
  }
  return means;
}

bool has_fields(const record::read::Result& result) {
  return !result.snapshot_times().empty();
}

Drift drift_of(const record::read::Result& result) {
  const record::Header& header = result.header();
  if (header.method == "screening") {
    throw InputError({result.file().string(), 0, 0}, "run.method",
                     "a screening estimate has no ground temperatures, so its drift cannot be told; run the scenario "
                     "with method: march");
  }
  if (!has_fields(result)) {
    throw InputError({result.file().string(), 0, 0}, "record.fields",
                     "the run recorded no ground temperatures (fields: none), so its drift cannot be told; run the "
                     "scenario with fields: monthly or yearly");
  }
  const Block block = block_of(header.bores);
  const std::vector<double> layers = layer_weights(header.z_faces, block.top, block.toe);
  const PlanWeights whole = block_weights(block.plan, header);
  const std::vector<PlanPoint> between = mid_points(header.bores);
  const PlanWeights middle = between.empty() ? PlanWeights{} : point_weights(between, header);

  YearlyGround yearly;
  for (int year = 0; year < header.years; ++year) {
    const std::vector<float> rise = result.year_mean_rise(year);
    yearly.block_rise.push_back(weighted_mean(rise, whole, layers));
    if (!between.empty()) yearly.middle_rise.push_back(weighted_mean(rise, middle, layers));
  }
  yearly.undisturbed = undisturbed_means(result, layers);
  const std::vector<float> steady = result.steady_rise();
  yearly.final_block = weighted_mean(steady, whole, layers);
  yearly.final_middle = between.empty() ? nothing : weighted_mean(steady, middle, layers);
  return assess(yearly);
}

}  // namespace stillground::results
