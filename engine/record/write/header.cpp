#include <algorithm>
#include <numeric>

#include "engine/record/write/contents.hpp"

namespace stillground::record {

namespace {

/// Faces 0..n as the cells' bounds (0, 1), (1, 2), ...
std::vector<double> bounds_of(const std::vector<double>& faces) {
  std::vector<double> bounds;
  for (std::size_t i = 0; i + 1 < faces.size(); ++i) bounds.insert(bounds.end(), {faces[i], faces[i + 1]});
  return bounds;
}

void put_bores(ResultWriter& writer, const std::vector<BoreRow>& bores) {
  const auto column = [&](const schema::Variable& variable, auto member, double scale = 1) {
    std::vector<double> values;
    for (const BoreRow& bore : bores) values.push_back(bore.*member / scale);
    writer.put(variable, values);
  };
  column(schema::bore_x, &BoreRow::x);
  column(schema::bore_y, &BoreRow::y);
  column(schema::bore_top, &BoreRow::top);
  column(schema::bore_depth, &BoreRow::depth);
  column(schema::bore_radius, &BoreRow::radius);
  column(schema::bore_start, &BoreRow::start, seconds_per_hour);
  std::vector<std::int32_t> groups;
  for (const BoreRow& bore : bores) groups.push_back(bore.group);
  writer.put(schema::bore_group, groups);
}

}  // namespace

void put_header(ResultWriter& writer, const Header& header) {
  writer.put(schema::z, header.z);
  writer.put(schema::z_bounds, bounds_of(header.z_faces));
  writer.put(schema::r, header.r);
  writer.put(schema::r_bounds, bounds_of(header.r_faces));
  writer.put(schema::conductivity, header.conductivity);
  writer.put(schema::heat_capacity, header.heat_capacity);
  put_bores(writer, header.bores);
  std::vector<std::int32_t> groups(static_cast<std::size_t>(header.groups));
  std::iota(groups.begin(), groups.end(), 0);
  writer.put(schema::group, groups);
  writer.put(schema::active_fraction, header.active_fraction);
  writer.put(schema::grout_storage, header.grout_storage);
  writer.put(schema::fluid_storage_down, header.fluid_storage_down);
  writer.put(schema::fluid_storage_up, header.fluid_storage_up);
  writer.put(schema::drill_length, std::vector{header.drill_length});
  writer.put(schema::fluid_heat_capacity, std::vector{header.fluid_heat_capacity});
}

}  // namespace stillground::record
