#include <fmt/format.h>

#include <charconv>
#include <cmath>
#include <string_view>

#include "engine/base/quote.hpp"
#include "engine/base/where.hpp"
#include "engine/units/quantity.hpp"
#include "tools/sweep/plan_parts.hpp"

namespace stillground::sweep {

namespace {

/// What a price is for: a bore, a metre or a cubic metre.
struct Priced {
  const char* leaf;
  double Prices::*price;
  int power;  ///< of a length
  const char* example;
};

constexpr Priced priced[] = {{"drilling", &Prices::drilling, 1, "48 /m"},
                             {"bore", &Prices::bore, 0, "350"},
                             {"grout", &Prices::grout, 3, "410 /m3"},
                             {"pipe", &Prices::pipe, 1, "3.1 /m"},
                             {"trench", &Prices::trench, 1, "60 /m"}};

/// How many metres, or cubic metres, the unit behind the stroke is: `m`, `ft`, `yd3`, `m3`.
double size_of(std::string unit, int power, const Where& where, const std::string& wrong) {
  if (power == 3) {
    if (!unit.ends_with('3')) where.refuse(wrong);
    unit.pop_back();
  }
  const double length = units::conversion(unit, units::Dimension::length, where)(1);
  return std::pow(length, power);
}

double price_at(const config::Node& value, const Priced& one) {
  const std::string& text = plain_text(value, std::string("prices.") + one.leaf);
  const Where where{value.place, std::string("prices.") + one.leaf};
  const std::string wrong = fmt::format("{} is not a price here (for example \"{}\")", quote(text), one.example);
  double number = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
  if (error != std::errc{} || !std::isfinite(number) || number < 0) where.refuse(wrong);
  std::string_view rest(end, static_cast<std::size_t>(text.data() + text.size() - end));
  while (rest.starts_with(' ')) rest.remove_prefix(1);
  if (one.power == 0) {
    if (!rest.empty()) where.refuse(wrong);
    return number;
  }
  if (!rest.starts_with('/')) where.refuse(wrong);
  rest.remove_prefix(1);
  while (rest.starts_with(' ')) rest.remove_prefix(1);
  return number / size_of(std::string(rest), one.power, where, wrong);
}

}  // namespace

Prices read_prices(const config::Node& node) {
  if (node.kind != config::Node::Kind::map || node.entries.empty()) {
    Where{node.place, "prices"}.refuse("prices are expected (for example {drilling: 48 /m, bore: 350})");
  }
  std::vector<std::string> known;
  for (const Priced& one : priced) known.emplace_back(one.leaf);
  check_keys(node, "prices", known);
  Prices prices;
  for (const Priced& one : priced) {
    if (const config::Entry* entry = node.find(one.leaf)) prices.*one.price = price_at(entry->value, one);
  }
  return prices;
}

}  // namespace stillground::sweep
