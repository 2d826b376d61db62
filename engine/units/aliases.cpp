#include "engine/units/aliases.hpp"

#include <algorithm>
#include <array>
#include <cctype>

#include "engine/base/spelling.hpp"
#include "engine/base/temperature.hpp"

namespace stillground::units {
namespace {

// Exact definitions: US gallon 231 in3, foot 0.3048 m, pound 0.45359237 kg, international-table Btu 1055.05585262 J,
// ton of refrigeration 12 000 Btu/h. Source: NIST SP 811 (2008), appendix B (from memory). A year is 365 days here and
// a decade ten of them, as in the run's calendar: UDUNITS-2 has the tropical year.
constexpr std::array aliases = {
    // not in UDUNITS-2
    Alias{"gpm", "6.30901964e-5 m3/s", ""},
    Alias{"GPM", "6.30901964e-5 m3/s", ""},
    Alias{"usgpm", "6.30901964e-5 m3/s", ""},
    Alias{"gph", "1.0515032733333333e-6 m3/s", ""},
    Alias{"lpm", "L/min", ""},
    Alias{"LPM", "L/min", ""},
    Alias{"lps", "L/s", ""},
    Alias{"LPS", "L/s", ""},
    Alias{"cfm", "ft3/min", ""},
    Alias{"CFM", "ft3/min", ""},
    Alias{"cfs", "ft3/s", ""},
    Alias{"Wh", "3600 J", ""},
    Alias{"kWh", "3.6e6 J", ""},
    Alias{"MWh", "3.6e9 J", ""},
    Alias{"GWh", "3.6e12 J", ""},
    Alias{"MBH", "293071.07017222222e-3 W", ""},
    Alias{"mbh", "293071.07017222222e-3 W", ""},
    Alias{"kBtuh", "293071.07017222222e-3 W", ""},
    Alias{"Btuh", "0.29307107017222222 W", ""},
    Alias{"BTUH", "0.29307107017222222 W", ""},
    Alias{"btuh", "0.29307107017222222 W", ""},
    Alias{"MMBtu", "1.05505585262e9 J", ""},
    Alias{"MMBTU", "1.05505585262e9 J", ""},
    Alias{"kBTU", "1.05505585262e6 J", ""},
    Alias{"psia", "psi", ""},
    Alias{"lbm", "0.45359237 kg", ""},
    Alias{"lbs", "0.45359237 kg", ""},
    Alias{"mins", "min", ""},
    Alias{"hrs", "h", ""},
    Alias{"decade", "3.1536e8 s", ""},
    Alias{"decades", "3.1536e8 s", ""},
    Alias{"century", "3.1536e9 s", ""},
    // another meaning, or fewer digits, in UDUNITS-2
    Alias{"gal", "3.785411784e-3 m3", ""},
    Alias{"gals", "3.785411784e-3 m3", ""},
    Alias{"gallon", "3.785411784e-3 m3", ""},
    Alias{"gallons", "3.785411784e-3 m3", ""},
    Alias{"USgal", "3.785411784e-3 m3", ""},
    Alias{"year", "3.1536e7 s", ""},
    Alias{"years", "3.1536e7 s", ""},
    Alias{"yr", "3.1536e7 s", ""},
    Alias{"yrs", "3.1536e7 s", ""},
    Alias{"ton", "3516.8528420666667 W", ""},
    Alias{"tons", "3516.8528420666667 W", ""},
    Alias{"tonR", "3516.8528420666667 W", ""},
    Alias{"TR", "3516.8528420666667 W", ""},
    Alias{"tonref", "3516.8528420666667 W", ""},
    // two meanings
    Alias{"a", "", R"(a year or an are? Write "year" or "m2")"},
    Alias{"month", "", R"(months differ: write days or hours)"},
    Alias{"months", "", R"(months differ: write days or hours)"},
    Alias{"hp", "", R"(horsepower differs between countries: write "kW" or "Btu/h")"},
    Alias{"HP", "", R"(horsepower differs between countries: write "kW" or "Btu/h")"},
    Alias{"horsepower", "", R"(horsepower differs between countries: write "kW" or "Btu/h")"},
    Alias{"MBtu", "", R"(a thousand or a million Btu? Write "kBtu" or "MMBtu")"},
    Alias{"MBTU", "", R"(a thousand or a million Btu? Write "kBtu" or "MMBtu")"},
    Alias{"psig", "", R"(gauge or absolute is said by the key: write "psi")"},
    Alias{"barg", "", R"(gauge or absolute is said by the key: write "bar")"},
    Alias{"bara", "", R"(gauge or absolute is said by the key: write "bar")"},
    Alias{"'", "", R"(feet or minutes of arc? Write "ft")"},
    Alias{"\"", "", R"(inches or seconds of arc? Write "in")"},
};

constexpr std::array<std::string_view, 30> well_known = {
    "m",  "mm", "cm", "km",  "ft",  "in",  "W",   "kW",  "MW",   "Btu",  "kBtu", "MBH",  "J",     "kJ",     "MJ",
    "Wh", "K",  "s",  "min", "day", "gpm", "psi", "kPa", "degC", "degF", "year", "hour", "liter", "gallon", "decade"};

std::string lower(std::string_view text) {
  std::string result(text);
  for (char& c : result) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  return result;
}

constexpr TemperatureScale kelvin{1, 0};
constexpr TemperatureScale celsius{1, zero_celsius};
constexpr TemperatureScale fahrenheit{5.0 / 9.0, 459.67 * 5.0 / 9.0};
constexpr TemperatureScale rankine{5.0 / 9.0, 0};

struct NamedScale {
  std::string_view token;  ///< in small letters
  TemperatureScale scale;
};

constexpr std::array named_scales = {
    NamedScale{"k", kelvin},
    NamedScale{"kelvin", kelvin},
    NamedScale{"kelvins", kelvin},
    NamedScale{"degk", kelvin},
    NamedScale{"c", celsius},
    NamedScale{"degc", celsius},
    NamedScale{"deg_c", celsius},
    NamedScale{"celsius", celsius},
    NamedScale{"f", fahrenheit},
    NamedScale{"degf", fahrenheit},
    NamedScale{"deg_f", fahrenheit},
    NamedScale{"fahrenheit", fahrenheit},
    NamedScale{"degr", rankine},
    NamedScale{"rankine", rankine},
    NamedScale{"r", rankine},
    NamedScale{"degcelsius", celsius},
    NamedScale{"degfahrenheit", fahrenheit},
};

}  // namespace

const Alias* find_alias(std::string_view token) {
  const auto found = std::find_if(aliases.begin(), aliases.end(), [&](const Alias& a) { return a.token == token; });
  return found == aliases.end() ? nullptr : &*found;
}

std::optional<TemperatureScale> find_temperature_scale(std::string_view token) {
  // "k", "c", "f" and "r" alone are not temperatures in small letters.
  if (token.size() == 1 && std::islower(static_cast<unsigned char>(token[0]))) return std::nullopt;
  const std::string small = lower(token);
  for (const NamedScale& named : named_scales) {
    if (named.token == small) return named.scale;
  }
  return std::nullopt;
}

std::optional<std::string> nearest_unit(const std::string& token) {
  for (const std::string_view unit : well_known) {
    if (lower(unit) == lower(token)) return std::string(unit);
  }
  if (token.size() < 3) return std::nullopt;
  return nearest_word(token, {well_known.begin(), well_known.end()});
}

}  // namespace stillground::units
