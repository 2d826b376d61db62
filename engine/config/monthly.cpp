#include "engine/config/monthly.hpp"

#include <fmt/format.h>

#include <cmath>

#include "engine/base/energy.hpp"
#include "engine/base/quote.hpp"
#include "engine/config/month_column.hpp"
#include "engine/config/parts.hpp"

namespace stillground::config {
namespace {

constexpr std::size_t months = 12;

/// One duty's columns.
class DutyColumns {
 public:
  DutyColumns(const Csv& csv, const std::string& duty)
      : csv_(csv),
        energy_(csv.find(duty + "_energy")),
        peak_(csv.find(duty + "_peak")),
        hours_(csv.find(duty + "_peak_hours")) {
    if (energy_) to_joule_ = csv.conversion(*energy_, units::Dimension::energy);
    if (peak_) to_watt_ = csv.conversion(*peak_, units::Dimension::power);
    if (hours_) to_second_ = csv.conversion(*hours_, units::Dimension::time);
    if (!energy_ && (peak_ || hours_)) refuse_head(peak_ ? *peak_ : *hours_, duty + "_energy");
    if (peak_ && !hours_) refuse_head(*peak_, duty + "_peak_hours");
    if (hours_ && !peak_) refuse_head(*hours_, duty + "_peak");
  }

  bool given() const { return energy_.has_value(); }

  /// Hours of one month [W].
  void append(std::size_t month, std::vector<double>& values) const {
    const int hours = 24 * days_of_month.at(month);
    const double energy = number(month, *energy_, to_joule_);
    const double peak = peak_ ? number(month, *peak_, to_watt_) : 0;
    const int peak_hours = peak_ ? whole_hours(month, hours) : 0;
    const double in_peak = peak * peak_hours * seconds_per_hour;
    if (in_peak > energy * (1 + 1e-9)) {
      csv_.where(month, *peak_)
          .refuse(fmt::format("{:.4g} kW for {} h are more than the month's energy of {:.4g} kWh", peak / 1e3,
                              peak_hours, energy / joules_per_kwh));
    }
    const double base = hours > peak_hours ? (energy - in_peak) / ((hours - peak_hours) * seconds_per_hour) : 0;
    if (peak_hours > 0 && peak < base) {
      csv_.where(month, *peak_)
          .refuse(fmt::format("the peak of {:.4g} kW lies below the mean of the other hours, {:.4g} kW", peak / 1e3,
                              base / 1e3));
    }
    for (int hour = 0; hour < hours; ++hour) values.push_back(hour < hours - peak_hours ? base : peak);
  }

 private:
  [[noreturn]] void refuse_head(std::size_t column, const std::string& missing) const {
    Where{csv_.columns[column].place, csv_.columns[column].name}.refuse(
        fmt::format("needs the column {} beside it", quote(missing)));
  }

  double number(std::size_t row, std::size_t column, const units::Conversion& to_si) const {
    const double value = csv_.number(row, column, to_si);
    if (value < 0) {
      csv_.where(row, column)
          .refuse(fmt::format("{} is below zero; the column says the direction", quote(csv_.cell(row, column))));
    }
    return value;
  }

  int whole_hours(std::size_t row, int most) const {
    const double hours = number(row, *hours_, to_second_) / seconds_per_hour;
    if (std::abs(hours - std::round(hours)) > 1e-6 || hours > most) {
      csv_.where(row, *hours_)
          .refuse(fmt::format("{} is not a whole number of hours of the month (allowed: 0 to {})",
                              quote(csv_.cell(row, *hours_)), most));
    }
    return static_cast<int>(std::round(hours));
  }

  const Csv& csv_;
  std::optional<std::size_t> energy_, peak_, hours_;
  units::Conversion to_joule_, to_watt_, to_second_;
};

void check_columns(const Csv& csv) {
  for (const CsvColumn& column : csv.columns) {
    bool known = column.name == "month";
    for (const char* duty : {"heating", "hot_water", "cooling"}) {
      for (const char* what : {"_energy", "_peak", "_peak_hours"})
        known = known || column.name == std::string(duty) + what;
    }
    if (!known) {
      Where{column.place, ""}.refuse(fmt::format(
          "unknown column {} (known here: month, heating_energy, heating_peak, heating_peak_hours, the same of cooling "
          "and hot_water)",
          quote(column.name)));
    }
  }
}

}  // namespace

model::BuildingLoads read_monthly(const Section& section, Context& context) {
  const Csv csv = read_input(section, "monthly", context);
  check_columns(csv);
  if (csv.rows() != months) {
    Where{{csv.file, csv.lines.empty() ? 1 : csv.lines.back(), 0}, ""}.refuse(
        fmt::format("{} rows; one a month from January to December is needed", csv.rows()));
  }
  const DutyColumns heating(csv, "heating"), hot_water(csv, "hot_water"), cooling(csv, "cooling");
  if (!heating.given() && !hot_water.given() && !cooling.given()) {
    Where{{csv.file, 1, 0}, ""}.refuse(
        "no energy is given: heating_energy, hot_water_energy or cooling_energy is needed");
  }
  check_months(csv, context);
  const bool direct = section.word("cooling_by") == "fluid";
  model::BuildingLoads loads;
  for (std::size_t month = 0; month < months; ++month) {
    if (heating.given()) heating.append(month, loads.heating.values);
    if (hot_water.given()) hot_water.append(month, loads.hot_water.values);
    if (cooling.given()) cooling.append(month, (direct ? loads.cooling_direct : loads.cooling).values);
  }
  return loads;
}

}  // namespace stillground::config
