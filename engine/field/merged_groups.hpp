#pragma once

#include <cstddef>
#include <vector>

#include "engine/field/groups.hpp"
#include "engine/model/field.hpp"

namespace stillground::field {

/// What is predicted for each group: [group][instant], some temperature of its bores [K].
using Forecast = std::vector<std::vector<double>>;

/// Joins groups whose forecasts are nearly alike, into few: in a joined group no bore's forecast differs at any instant
/// by more than `bound` [K] from the mean over the group's bores. Only bores of equal top, depth, start, stop and flow
/// are joined. Agglomerative clustering by complete linkage (the two clusters whose union spans least come together
/// first, as long as the bound holds); more than a thousand are parted beforehand, across their widest spread. Bores
/// that share an equivalent one: Prieto & Cimmino 2021, Journal of Building Performance Simulation 14 (what is shared
/// and what bounds it are our own).
Groups merged_groups(const std::vector<model::BoreSite>& bores, const Groups& groups, const Forecast& forecast,
                     double bound);

}  // namespace stillground::field
