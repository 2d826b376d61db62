#include "engine/units/quantity.hpp"

#include <fmt/format.h>

#include <charconv>
#include <cmath>
#include <string>

#include "engine/base/quote.hpp"
#include "engine/units/aliases.hpp"
#include "engine/units/expression.hpp"
#include "engine/units/udunits.hpp"

namespace stillground::units {
namespace {

/// What the error messages about one quantity share.
struct Question {
  std::string_view text;  ///< as written
  Dimension dimension;
  const Where& where;
  std::string_view examples;

  [[noreturn]] void refuse(const std::string& why) const {
    const std::string_view shown = examples.empty() ? facts(dimension).examples : examples;
    where.refuse(fmt::format("{} {} (try {})", quote(text), why, shown));
  }
};

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
  return text;
}

void refuse_what_nobody_knows(const Expression& expression, const Question& question) {
  for (const Factor& factor : expression.readings.front()) {
    const Alias* alias = find_alias(factor.token);
    if (alias && alias->meaning.empty()) {
      question.where.refuse(
          fmt::format("{}: the unit \"{}\" has two meanings: {}", quote(question.text), factor.token, alias->advice));
    }
    if (known_unit(factor.token)) continue;
    const auto near = nearest_unit(factor.token);
    question.refuse(fmt::format("has an unknown unit \"{}\"{}", factor.token,
                                near ? fmt::format(", did you mean \"{}\"?", *near) : ""));
  }
}

Conversion conversion_of(std::string_view unit, const Question& question) {
  const Expression expression = read_expression(unit);
  if (!expression.fault.empty()) {
    question.refuse(fmt::format("is not {}: {}", facts(question.dimension).name, expression.fault));
  }
  refuse_what_nobody_knows(expression, question);
  const auto& literal = expression.readings.front();
  if (question.dimension == Dimension::temperature) {
    const bool alone = literal.size() == 1 && literal[0].exponent == 1;
    const auto scale = alone ? find_temperature_scale(literal[0].token) : std::nullopt;
    if (!scale) question.refuse(fmt::format("is not {}", facts(question.dimension).name));
    return {scale->scale, scale->offset};
  }
  for (const auto& reading : expression.readings) {
    if (const auto scale = scale_to_si(reading, facts(question.dimension).si)) return {*scale, 0};
  }
  question.refuse(fmt::format("is not {}", facts(question.dimension).name));
}

struct Split {
  double number;
  std::string_view unit;
};

Split split(std::string_view text, const Question& question) {
  const bool plus = text.starts_with('+');
  if (plus) text.remove_prefix(1);
  const std::size_t sign = !plus && text.starts_with('-') ? 1 : 0;
  const bool begins = text.size() > sign && (std::isdigit(static_cast<unsigned char>(text[sign])) || text[sign] == '.');
  double number = 0;
  // from_chars would take "inf" and "nan" for numbers.
  const auto [end, error] = begins ? std::from_chars(text.data(), text.data() + text.size(), number)
                                   : std::from_chars_result{text.data(), std::errc::invalid_argument};
  if (error == std::errc::result_out_of_range) question.refuse("is beyond what a number can hold");
  if (error != std::errc{}) question.refuse("does not begin with a number");
  std::string_view rest = text.substr(static_cast<std::size_t>(end - text.data()));
  if (rest.starts_with(',')) question.refuse("has a comma in its number: decimals take a point, thousands no sign");
  return {number, trimmed(rest)};
}

}  // namespace

Conversion conversion(std::string_view unit, Dimension dimension, const Where& where, std::string_view examples) {
  const Question question{unit, dimension, where, examples};
  if (unit.size() > longest_text) question.refuse("is too long for a unit");
  const std::string plain = plain_letters(unit);
  if (trimmed(plain).empty() && dimension == Dimension::fraction) return {};
  return conversion_of(trimmed(plain), question);
}

double to_si(std::string_view text, Dimension dimension, const Where& where, std::string_view examples) {
  const Question question{text, dimension, where, examples};
  if (text.size() > longest_text) question.refuse("is too long for a quantity");
  const std::string plain = plain_letters(text);
  const Split parts = split(trimmed(plain), question);
  if (parts.unit.empty() && dimension != Dimension::fraction) question.refuse("has no unit");
  const Conversion to = parts.unit.empty() ? Conversion{} : conversion_of(parts.unit, question);
  const double value = to(parts.number);
  if (!std::isfinite(value)) question.refuse("is beyond what a number can hold");
  if (dimension == Dimension::temperature && value < 0) question.refuse("is below absolute zero");
  return value;
}

}  // namespace stillground::units
