#include "validation/harness/entry.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <fstream>
#include <nlohmann/json.hpp>
#include <stdexcept>

namespace stillground::validation {

namespace {

using Json = nlohmann::json;

// JSON has no NaN: a missing number is one.
Json number(double value) {
  return std::isfinite(value) ? Json(value) : Json(nullptr);
}

double number(const Json& json) {
  return json.is_null() ? std::nan("") : json.get<double>();
}

Json to_json(const Row& row) {
  Json json{{"at", row.at},
            {"reference", number(row.reference)},
            {"ours", number(row.ours)},
            {"miss", number(row.miss)},
            {"allowed", row.allowed},
            {"is_relative", row.is_relative}};
  if (row.range) json["range"] = {row.range->first, row.range->second};
  if (row.known) json["known"] = {{"bound", row.known->bound}, {"reason", row.known->reason}};
  return json;
}

Row row_from(const Json& json) {
  Row row{json.at("at"),
          number(json.at("reference")),
          number(json.at("ours")),
          number(json.at("miss")),
          json.at("allowed"),
          json.at("is_relative"),
          {},
          {}};
  if (json.contains("range")) row.range = {json["range"][0].get<double>(), json["range"][1].get<double>()};
  if (json.contains("known")) row.known = KnownMiss{json["known"]["bound"], json["known"]["reason"]};
  return row;
}

Json to_json(const Plot& plot) {
  Json curves = Json::array();
  for (const Curve& curve : plot.curves) {
    curves.push_back({{"label", curve.label}, {"points", curve.points}, {"is_reference", curve.is_reference}});
  }
  return {{"title", plot.title}, {"x", plot.x},         {"y", plot.y},
          {"log_x", plot.log_x}, {"log_y", plot.log_y}, {"curves", curves}};
}

Plot plot_from(const Json& json) {
  Plot plot{json.at("title"), json.at("x"), json.at("y"), json.at("log_x"), json.at("log_y"), {}};
  for (const Json& curve : json.at("curves")) {
    plot.curves.push_back({curve.at("label"), curve.at("points"), curve.at("is_reference")});
  }
  return plot;
}

Json to_json(const Entry& entry) {
  const Heading& h = entry.heading;
  Json rows = Json::array(), plots = Json::array();
  for (const Row& row : entry.rows) rows.push_back(to_json(row));
  for (const Plot& plot : entry.plots) plots.push_back(to_json(plot));
  return {{"id", h.id},         {"claim", h.claim}, {"origin", static_cast<int>(Origin{h.origin})},
          {"source", h.source}, {"setup", h.setup}, {"tolerance", h.tolerance},
          {"rows", rows},       {"plots", plots}};
}

Entry entry_from(const Json& json) {
  Entry entry{{json.at("id"), json.at("claim"), static_cast<Origin>(json.at("origin").get<int>()), json.at("source"),
               json.at("setup"), json.at("tolerance")},
              {},
              {}};
  for (const Json& row : json.at("rows")) entry.rows.push_back(row_from(row));
  for (const Json& plot : json.at("plots")) entry.plots.push_back(plot_from(plot));
  return entry;
}

}  // namespace

bool Row::held() const {
  const double size = std::abs(miss);
  if (known) return size > allowed && size <= known->bound;
  return size <= allowed;
}

Verdict verdict(const Entry& entry) {
  Verdict v;
  v.rows = entry.rows.size();
  for (const Row& row : entry.rows) {
    if (!row.held()) ++v.missed;
    if (row.known) {
      ++v.known;
    } else if (row.allowed > 0) {
      v.worst = std::max(v.worst, std::abs(row.miss) / row.allowed);
    }
  }
  return v;
}

const char* title(Topic topic) {
  constexpr std::array<const char*, 7> titles = {"Fluid and film", "Bore",           "Ground",  "Field",
                                                 "March",          "Error estimate", "Practice"};
  return titles.at(static_cast<std::size_t>(topic));
}

const char* mark(Origin origin) {
  constexpr std::array<const char*, 6> marks = {"published",
                                                "computed from a published formula",
                                                "general-purpose library",
                                                "common practice, no source",
                                                "from memory",
                                                "self-consistency"};
  return marks.at(static_cast<std::size_t>(origin));
}

void write_entries(const std::filesystem::path& file, const Entries& entries) {
  Json all = Json::array();
  for (const Entry& entry : entries.entries) all.push_back(to_json(entry));
  std::filesystem::create_directories(file.parent_path());
  std::ofstream out(file);
  out << Json{{"topic", static_cast<int>(entries.topic)}, {"entries", all}}.dump(1) << '\n';
  out.close();
  if (!out) throw std::runtime_error("cannot write " + file.string());
}

Entries read_entries(const std::filesystem::path& file) {
  std::ifstream in(file);
  if (!in) throw std::runtime_error("cannot read " + file.string());
  const Json json = Json::parse(in);
  Entries result{static_cast<Topic>(json.at("topic").get<int>()), {}};
  for (const Json& entry : json.at("entries")) result.entries.push_back(entry_from(entry));
  return result;
}

}  // namespace stillground::validation
