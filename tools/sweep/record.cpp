#include "tools/sweep/record.hpp"

#include <fmt/format.h>

#include <cmath>
#include <nlohmann/json.hpp>

namespace stillground::sweep {

namespace {

using Json = nlohmann::ordered_json;

double number(const Json& json) {
  return json.is_null() ? results::unknown : json.get<double>();
}

/// Calls `each(name, member)` for every plain figure of a record: what is written is what is read.
template <class Decision, class Each>
void figures_of(Decision& decision, Each each) {
  each("eft_min", decision.eft_min);
  each("eft_max", decision.eft_max);
  each("margin", decision.margin);
  each("drift", decision.drift);
  each("length", decision.length);
  each("power", decision.power);
  each("performance", decision.performance);
  each("error_month", decision.own_error.month);
  each("error_hour", decision.own_error.hour);
}

template <class Amounts, class Each>
void figures_of_amounts(Amounts& amounts, Each each) {
  each("bores", amounts.bores);
  each("grout", amounts.grout);
  each("pipe", amounts.pipe);
  each("trench", amounts.trench);
}

Record taken_from(const Json& json) {
  Record record;
  const auto take = [](const Json& from) {
    return [&from](const char* name, double& figure) { figure = number(from.at(name)); };
  };
  figures_of(record.decision, take(json.at("figures")));
  figures_of_amounts(record.amounts, take(json.at("amounts")));
  record.error = number(json.at("error"));
  json.at("method").get_to(record.decision.method);
  json.at("limit").get_to(record.decision.limit);
  json.at("warnings").get_to(record.decision.warnings);
  if (const Json& year = json.at("first_year_beyond"); !year.is_null()) record.decision.first_year_beyond = year;
  if (const Json& hours = json.at("hours_beyond"); !hours.is_null()) record.decision.hours_beyond = hours.get<long>();
  json.at("kept").get_to(record.kept);
  json.at("sure").get_to(record.sure);
  json.at("failed").get_to(record.failed);
  json.at("unfit").get_to(record.unfit);
  return record;
}

}  // namespace

Record record_of(const results::Decision& decision, const model::Scenario& scenario) {
  Record record{decision, points::amounts_of(scenario), results::kept(decision), results::is_sure(decision), 0, "",
                false};
  if (const auto* outcome = results::nearest(decision.limits)) record.error = results::error_at(decision, *outcome);
  record.decision.limits.clear();
  return record;
}

std::string text_of(const Record& record) {
  const results::Decision& decision = record.decision;
  Json figures, amounts;
  const auto put = [](Json& into) {
    return [&into](const char* name, double figure) { into[name] = std::isfinite(figure) ? Json(figure) : Json(); };
  };
  figures_of(decision, put(figures));
  figures_of_amounts(record.amounts, put(amounts));
  Json json{{"method", decision.method}, {"failed", record.failed}, {"unfit", record.unfit}, {"kept", record.kept},
            {"sure", record.sure},       {"limit", decision.limit}, {"error", record.error}};
  json["first_year_beyond"] = decision.first_year_beyond ? Json(*decision.first_year_beyond) : Json();
  json["hours_beyond"] = decision.hours_beyond ? Json(*decision.hours_beyond) : Json();
  json["figures"] = figures;
  json["amounts"] = amounts;
  json["warnings"] = decision.warnings;
  return json.dump(1, ' ', false, Json::error_handler_t::replace) + "\n";
}

Record record_from(const std::string& text, const std::string& file) {
  try {
    return taken_from(Json::parse(text));
  } catch (const nlohmann::json::exception& fault) {  // a fence: the library's exceptions end here
    throw SystemError(
        fmt::format("{}: is not a point's record ({}); delete it to have the point computed anew", file, fault.what()));
  }
}

}  // namespace stillground::sweep
