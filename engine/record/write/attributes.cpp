#include <cmath>
#include <nlohmann/json.hpp>

#include "engine/base/temperature.hpp"
#include "engine/record/hdf5/attribute.hpp"
#include "engine/record/write/contents.hpp"

namespace stillground::record {

namespace {

using Json = nlohmann::ordered_json;

std::string dump(const Json& json) {
  // Bytes that are no UTF-8 must not stop a result from being written.
  return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

/// In degC without the noise of its way through kelvin: 31.7, not 31.700000000000045.
double rounded_celsius(double kelvin) {
  return std::round((kelvin - zero_celsius) * 1e10) / 1e10;
}

std::string limits_json(const std::vector<LimitRow>& limits) {
  Json list = Json::array();
  for (const LimitRow& limit : limits) {
    list.push_back({{"name", limit.name},
                    {"quantity", limit.quantity},
                    {"side", limit.is_least ? "least" : "most"},
                    {"over", limit.over},
                    {"value", rounded_celsius(limit.value)},
                    {"units", "degC"}});
  }
  return dump(list);
}

std::string curves_json(const std::vector<CopCurveRow>& curves) {
  Json list = Json::array();
  for (const CopCurveRow& curve : curves) {
    Json eft = Json::array();
    for (const double kelvin : curve.eft) eft.push_back(rounded_celsius(kelvin));
    list.push_back({{"duty", curve.duty}, {"eft", eft}, {"units", "degC"}, {"cop", curve.cop}});
  }
  return dump(list);
}

std::string land_json(const std::vector<PlanCorner>& land) {
  Json corners = Json::array();
  for (const PlanCorner& corner : land) corners.push_back({corner.x, corner.y});
  return dump({{"outline", corners}, {"units", "m"}});
}

std::string inputs_json(const std::vector<std::pair<std::string, std::string>>& inputs) {
  Json list = Json::array();
  for (const auto& [name, sha256] : inputs) list.push_back({{"name", name}, {"sha256", sha256}});
  return dump(list);
}

std::string texts_json(const std::vector<std::string>& texts) {
  return dump(Json(texts));
}

/// Those known beforehand, then those that only the march could give.
std::vector<std::string> all_warnings(const Header& header, const Closing& closing) {
  std::vector<std::string> all = header.warnings;
  all.insert(all.end(), closing.warnings.begin(), closing.warnings.end());
  return all;
}

/// Not a number: there is no estimate, so there is no attribute.
void put_eft_error(hid_t root, const ErrorEstimate& error) {
  if (std::isnan(error.total)) return;
  hdf5::write_number(root, "eft_error_estimate", error.total);
  hdf5::write_number(root, "eft_error_estimate_step", error.step);
  hdf5::write_number(root, "eft_error_estimate_grid", error.grid);
  hdf5::write_number(root, "eft_error_estimate_refresh", error.refresh);
  hdf5::write_label(root, "eft_error_estimate_units", "K");
  hdf5::write_label(root, "eft_error_estimate_long_name",
                    "largest error of an hour's eft by time step, grid and refresh interval alone; the errors of the "
                    "model and of what the scenario gives come on top");
}

void put_screening_error(hid_t root, const ScreeningError& error) {
  if (std::isnan(error.hour)) return;
  hdf5::write_number(root, "screening_error_estimate", error.hour);
  hdf5::write_number(root, "screening_error_estimate_month", error.month);
  hdf5::write_label(root, "screening_error_estimate_units", "K");
  hdf5::write_label(root, "screening_error_estimate_long_name",
                    "largest difference of eft from a march of the same scenario, of an hour and of a month's mean");
}

}  // namespace

void put_attributes(const hdf5::File& file, const Header& header, const Closing& closing) {
  const hid_t root = file.id();
  hdf5::write_label(root, "Conventions", "CF-1.8");
  hdf5::write_number<std::int32_t>(root, "stillground_format", schema::format);
  hdf5::write_number<std::int32_t>(root, "complete", 0);
  hdf5::write_string(root, "title", header.title);
  hdf5::write_label(root, "source", "stillground " + header.engine_version);
  hdf5::write_label(root, "engine_version", header.engine_version);
  hdf5::write_label(root, "build", header.build);
  hdf5::write_label(root, "instruction_set", header.instruction_set);
  hdf5::write_label(root, "method", header.method);
  hdf5::write_label(root, "start", iso(header.start));
  hdf5::write_number<std::int32_t>(root, "years", header.years);
  hdf5::write_number(root, "step", header.step);
  hdf5::write_label(root, "step_units", "s");
  put_eft_error(root, header.eft_error);
  put_screening_error(root, closing.screening_error);
  if (header.group_error > 0) {
    hdf5::write_number(root, "group_error", header.group_error);
    hdf5::write_number(root, "group_deviation", closing.group_deviation);
    hdf5::write_label(root, "group_error_units", "K");
  }
  hdf5::write_number(root, "cells", static_cast<std::int32_t>(header.z.size() * header.r.size()) * header.groups);
  hdf5::write_label(root, "fields", header.fields);
  hdf5::write_label(root, "comment",
                    "Temperature of the ground at a point = undisturbed at its depth + the sum, over all bores, of "
                    "ground_rise of the bore's group at r = the point's distance to the bore's axis.");
  hdf5::write_string(root, "limits", limits_json(header.limits));
  if (header.has_heat_pump) hdf5::write_string(root, "cop_curves", curves_json(header.cop_curves));
  if (!header.land.empty()) hdf5::write_string(root, "land", land_json(header.land));
  hdf5::write_string(root, "sources", texts_json(header.sources));
  hdf5::write_string(root, "warnings", texts_json(all_warnings(header, closing)));
  hdf5::write_string(root, "cautions", texts_json(header.cautions));
  hdf5::write_label(root, "shown_units", std::string(word_of(header.units)));
  hdf5::write_string(root, "inputs", inputs_json(header.inputs));
  hdf5::write_string(root, "scenario", header.scenario_text);
}

}  // namespace stillground::record
