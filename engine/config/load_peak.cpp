#include "engine/config/load_peak.hpp"

#include <fmt/format.h>

#include <string>

#include "engine/base/calendar.hpp"
#include "engine/base/quote.hpp"
#include "engine/units/quantity.hpp"

namespace stillground::config {

namespace {

constexpr double greatest_factor = 20;
constexpr double shortest = 60;  // what is told apart [s]

}  // namespace

std::optional<model::LoadPeak> read_load_peak(const Section& root) {
  const Section loads = root.section("loads");
  if (!loads.has("peak")) return std::nullopt;
  const Where where = loads.where("peak");
  const std::string text = loads.text("peak");
  if (text == loads.row("peak").preset) return std::nullopt;
  constexpr std::string_view between = " times for ";
  const std::size_t at = text.find(between);
  if (at == std::string::npos) {
    where.refuse(fmt::format("{} is no peak within the hour (write \"{}\")", quote(text), loads.row("peak").example));
  }
  const model::LoadPeak peak{
      plain_number(text.substr(0, at), where, "1.4"),
      units::to_si(text.substr(at + between.size()), units::Dimension::time, where, R"("10 min")")};
  if (peak.factor < 1 || peak.factor > greatest_factor) {
    where.refuse(fmt::format("{:g} times is out of range (allowed: 1 to {:g} times)", peak.factor, greatest_factor));
  }
  if (peak.duration < shortest || peak.duration > seconds_per_hour) {
    where.refuse(fmt::format("{:g} min is out of range (allowed: 1 min to 60 min)", peak.duration / 60));
  }
  if (peak.factor * peak.duration > seconds_per_hour * (1 + 1e-9)) {
    where.refuse(
        fmt::format("{:g} times for {:g} min is more than the hour's load: nothing is left for its rest "
                    "(allowed: {:g} times for at most {:.3g} min)",
                    peak.factor, peak.duration / 60, peak.factor, 60 / peak.factor));
  }
  return peak;
}

}  // namespace stillground::config
