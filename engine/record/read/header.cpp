#include <fmt/format.h>

#include <limits>
#include <nlohmann/json.hpp>

#include "engine/base/temperature.hpp"
#include "engine/record/hdf5/attribute.hpp"
#include "engine/record/read/source.hpp"

namespace stillground::record::read {

namespace {

using Json = nlohmann::json;

/// The JSON text of an attribute, turned into a list by `element`.
template <class Element>
auto list_of(const Source& source, const char* name, Element&& element) {
  std::vector<decltype(element(Json()))> list;
  try {
    for (const Json& item : Json::parse(hdf5::read_text(source.id(), name))) list.push_back(element(item));
  } catch (const Json::exception& fault) {
    throw Mismatch(fmt::format("attribute {}: {}", name, fault.what()));
  }
  return list;
}

std::vector<LimitRow> read_limits(const Source& source) {
  return list_of(source, "limits", [](const Json& item) {
    return LimitRow{item.at("name"), item.at("quantity"), item.at("side") == "least", item.at("over"),
                    item.at("value").get<double>() + zero_celsius};
  });
}

std::vector<CopCurveRow> read_cop_curves(const Source& source) {
  if (!hdf5::has_attribute(source.id(), "cop_curves")) return {};  // no heat pump, or a file from before they were kept
  return list_of(source, "cop_curves", [](const Json& item) {
    CopCurveRow curve{item.at("duty"), item.at("eft"), item.at("cop")};
    if (curve.eft.empty() || curve.eft.size() != curve.cop.size())
      throw Mismatch("attribute cop_curves: unlike lengths");
    for (double& eft : curve.eft) eft += zero_celsius;
    return curve;
  });
}

std::vector<PlanCorner> read_land(const Source& source) {
  std::vector<PlanCorner> land;
  if (!hdf5::has_attribute(source.id(), "land")) return land;
  try {
    const Json text = Json::parse(hdf5::read_text(source.id(), "land"));
    for (const Json& corner : text.at("outline")) {
      land.push_back({corner.at(0).get<double>(), corner.at(1).get<double>()});
    }
  } catch (const Json::exception& fault) {
    throw Mismatch(fmt::format("attribute land: {}", fault.what()));
  }
  return land;
}

std::vector<std::string> read_texts(const Source& source, const char* name) {
  return list_of(source, name, [](const Json& item) { return item.get<std::string>(); });
}

std::vector<std::pair<std::string, std::string>> read_inputs(const Source& source) {
  return list_of(source, "inputs", [](const Json& item) {
    return std::pair(item.at("name").get<std::string>(), item.at("sha256").get<std::string>());
  });
}

UnitSystem read_units(hid_t root) {
  const std::string word = hdf5::read_text(root, "shown_units");
  const auto system = unit_system(word);
  if (!system) throw Mismatch(fmt::format("attribute shown_units: \"{}\" is neither \"si\" nor \"us\"", word));
  return *system;
}

double number_or_none(hid_t root, const char* name) {
  return hdf5::has_attribute(root, name) ? hdf5::read_number<double>(root, name)
                                         : std::numeric_limits<double>::quiet_NaN();  // a file from before it was there
}

ErrorEstimate read_eft_error(hid_t root) {
  const auto number = [&](const char* name) { return number_or_none(root, name); };
  return {number("eft_error_estimate_step"), number("eft_error_estimate_grid"), number("eft_error_estimate_refresh"),
          number("eft_error_estimate")};
}

void read_attributes(const Source& source, Header& header) {
  const hid_t root = source.id();
  header.title = hdf5::read_text(root, "title");
  header.scenario_text = hdf5::read_text(root, "scenario");
  header.method = hdf5::read_text(root, "method");
  header.engine_version = hdf5::read_text(root, "engine_version");
  header.build = hdf5::read_text(root, "build");
  if (hdf5::has_attribute(root, "instruction_set")) header.instruction_set = hdf5::read_text(root, "instruction_set");
  const std::string start = hdf5::read_text(root, "start");
  try {
    header.start = parse_date(start);
  } catch (const std::invalid_argument& fault) {
    throw Mismatch(fmt::format("attribute start: \"{}\" is {}", start, fault.what()));
  }
  header.years = hdf5::read_number<std::int32_t>(root, "years");
  header.step = hdf5::read_number<double>(root, "step");
  header.eft_error = read_eft_error(root);
  header.screening_error = {number_or_none(root, "screening_error_estimate_month"),
                            number_or_none(root, "screening_error_estimate")};
  if (hdf5::has_attribute(root, "group_error")) header.group_error = hdf5::read_number<double>(root, "group_error");
  header.fields = hdf5::read_text(root, "fields");
  header.limits = read_limits(source);
  header.cop_curves = read_cop_curves(source);
  header.land = read_land(source);
  if (hdf5::has_attribute(root, "sources")) header.sources = read_texts(source, "sources");
  header.warnings = read_texts(source, "warnings");
  header.cautions = read_texts(source, "cautions");
  header.units = read_units(source.id());
  header.inputs = read_inputs(source);
}

/// Cells' bounds (0, 1), (1, 2), ... back to faces 0..n.
std::vector<double> faces_of(const std::vector<double>& bounds) {
  std::vector<double> faces;
  for (std::size_t i = 0; i < bounds.size(); i += 2) faces.push_back(bounds[i]);
  if (!bounds.empty()) faces.push_back(bounds.back());
  return faces;
}

std::vector<BoreRow> read_bores(const Source& source) {
  std::vector<BoreRow> bores(source.length(schema::Dim::bore));
  const auto column = [&](const schema::Variable& variable, double BoreRow::*member) {
    const std::vector<double> values = source.all<double>(variable);
    for (std::size_t i = 0; i < bores.size(); ++i) bores[i].*member = values[i];
  };
  column(schema::bore_x, &BoreRow::x);
  column(schema::bore_y, &BoreRow::y);
  column(schema::bore_top, &BoreRow::top);
  column(schema::bore_depth, &BoreRow::depth);
  column(schema::bore_radius, &BoreRow::radius);
  column(schema::bore_start, &BoreRow::start);
  const auto groups = source.all<std::int32_t>(schema::bore_group);
  for (std::size_t i = 0; i < bores.size(); ++i) {
    const bool exists = groups[i] >= 0 && static_cast<std::size_t>(groups[i]) < source.length(schema::Dim::group);
    if (!exists) throw Mismatch(fmt::format("bore {} belongs to group {}, which is not there", i + 1, groups[i]));
    bores[i].group = groups[i];
  }
  return bores;
}

}  // namespace

Header read_header(const Source& source) {
  Header header;
  read_attributes(source, header);
  header.has_heat_pump = source.has(schema::power);
  header.drill_length = source.all<double>(schema::drill_length).front();
  header.fluid_heat_capacity = source.all<double>(schema::fluid_heat_capacity).front();
  header.z_faces = faces_of(source.all<double>(schema::z_bounds));
  header.z = source.all<double>(schema::z);
  header.r_faces = faces_of(source.all<double>(schema::r_bounds));
  header.r = source.all<double>(schema::r);
  header.conductivity = source.all<double>(schema::conductivity);
  header.heat_capacity = source.all<double>(schema::heat_capacity);
  header.bores = read_bores(source);
  header.groups = static_cast<int>(source.length(schema::Dim::group));
  header.active_fraction = source.all<double>(schema::active_fraction);
  header.grout_storage = source.all<double>(schema::grout_storage);
  header.fluid_storage_down = source.all<double>(schema::fluid_storage_down);
  header.fluid_storage_up = source.all<double>(schema::fluid_storage_up);
  return header;
}

}  // namespace stillground::record::read
