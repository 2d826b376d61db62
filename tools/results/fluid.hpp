#pragma once

#include <span>
#include <string>
#include <vector>

#include "engine/record/frames.hpp"

namespace stillground::results {

/// Fluid temperatures that can be tabulated and limited.
enum class Quantity { eft, lft, mean_fluid };

/// The quantity that a limit names: "eft", "lft", "mean_fluid". Throws InputError for anything else.
Quantity quantity_of(const std::string& name);

/// [K]; mean_fluid is the mean of EFT and LFT.
double value_of(const record::Hour& hour, Quantity quantity);

/// Whether the pumps ran at all in the hour. Without flow the temperatures are those of standing fluid and count
/// nowhere.
bool flows(const record::Hour& hour);

/// Least, mean and greatest hourly mean over the hours with flow [K]; NaN if there are none.
struct Spread {
  double least = 0;
  double mean = 0;
  double most = 0;
  long hours = 0;  ///< with flow
};

Spread spread_of(std::span<const record::Hour> hours, Quantity quantity);

/// The values below which the given shares (0..1) of the hours with flow lie [K]: linear between the order statistics,
/// the least at 0 and the greatest at 1 (definition 7 of Hyndman & Fan, The American Statistician 50, 1996). NaN
/// without flow.
std::vector<double> duration_curve(std::span<const record::Hour> hours, Quantity quantity,
                                   std::span<const double> shares);

}  // namespace stillground::results
