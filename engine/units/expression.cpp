#include "engine/units/expression.hpp"

#include <array>
#include <cctype>
#include <regex>
#include <utility>

#include "engine/base/quote.hpp"

namespace stillground::units {
namespace {

bool letter(char c) {
  return std::isalpha(static_cast<unsigned char>(c)) || c == '_' || c == '%' || c == '\'' || c == '"';
}
bool digit(char c) {
  return std::isdigit(static_cast<unsigned char>(c));
}

/// Recursive descent over one text; what follows a `/` is a divisor to the end of its bracket if `greedy`.
class Reading {
 public:
  Reading(std::string_view text, bool greedy) : text_(text), greedy_(greedy) {}

  std::vector<Factor> factors;
  std::string fault;

  void read() {
    product(1);
    if (fault.empty() && at_ < text_.size()) fault = quote(text_.substr(at_)) + " was not expected in a unit";
  }

 private:
  void product(int sign) {
    int next = sign;
    while (fault.empty()) {
      term(next);
      if (!fault.empty()) return;
      spaces();
      if (at_ >= text_.size() || text_[at_] == ')') return;
      next = joint() ? -sign : (greedy_ ? next : sign);
    }
  }

  /// Steps over what stands between two units; true if it divides.
  bool joint() {
    if (take("/")) return true;
    if (text_.substr(at_).starts_with("per ")) {
      at_ += 4;
      return true;
    }
    if (take("*") || take(".") || take("-")) spaces();
    return false;
  }

  void term(int sign) {
    spaces();
    if (take("(")) {
      const std::size_t first = factors.size();
      product(sign);
      if (fault.empty() && !take(")")) fault = "a bracket is not closed";
      const int power = exponent();
      for (std::size_t i = first; i < factors.size(); ++i) factors[i].exponent *= power;
      return;
    }
    if (text_.substr(at_).starts_with("1/")) {
      ++at_;
      return;
    }
    const std::string token = name();
    if (token.empty()) {
      const bool number = at_ < text_.size() && digit(text_[at_]);
      fault = number ? "a quantity has one number and one unit" : "a unit is missing";
      return;
    }
    factors.push_back({token, sign * exponent()});
  }

  std::string name() {
    const std::size_t first = at_;
    while (at_ < text_.size() && letter(text_[at_])) ++at_;
    const std::string_view found = text_.substr(first, at_ - first);
    // The only names with a figure in them: columns of water.
    if (found.ends_with('H') && take("2O")) return std::string(text_.substr(first, at_ - first));
    return std::string(found);
  }

  int exponent() {
    const std::size_t first = at_;
    if (!take("**")) take("^");
    const bool minus = take("-");
    if (!minus) take("+");
    if (at_ >= text_.size() || !digit(text_[at_])) {
      at_ = first;
      return 1;
    }
    const int value = text_[at_++] - '0';
    if (at_ < text_.size() && digit(text_[at_])) fault = "an exponent has one figure";
    return minus ? -value : value;
  }

  void spaces() {
    while (at_ < text_.size() && text_[at_] == ' ') ++at_;
  }

  bool take(std::string_view expected) {
    if (!text_.substr(at_).starts_with(expected)) return false;
    at_ += expected.size();
    return true;
  }

  std::string_view text_;
  bool greedy_;
  std::size_t at_ = 0;
};

/// `mK` in a divisor of the trade is m K, not a millikelvin.
std::vector<Factor> millikelvin_apart(std::vector<Factor> factors) {
  for (std::size_t i = 0; i < factors.size(); ++i) {
    if (factors[i].token != "mK") continue;
    factors[i].token = "m";
    factors.push_back({"K", factors[i].exponent});
  }
  return factors;
}

std::string replaced(std::string text, std::string_view from, std::string_view to) {
  for (std::size_t at = text.find(from); at != std::string::npos; at = text.find(from, at + to.size())) {
    text.replace(at, from.size(), to);
  }
  return text;
}

}  // namespace

std::string plain_letters(std::string_view text) {
  static constexpr std::array<std::pair<std::string_view, std::string_view>, 27> signs = {{
      {"\u207b\u00b9", "^-1"}, {"\u207b\u00b2", "^-2"},
      {"\u207b\u00b3", "^-3"}, {"\u00b0", "deg"},
      {"\u00ba", "deg"},       {"\u2103", "degC"},
      {"\u2109", "degF"},      {"\u00b5", "u"},
      {"\u03bc", "u"},         {"\u00b7", "*"},
      {"\u22c5", "*"},         {"\u00d7", "*"},
      {"\u2219", "*"},         {"\u2022", "*"},
      {"\u2212", "-"},         {"\u2013", "-"},
      {"\u00b9", "^1"},        {"\u00b2", "^2"},
      {"\u00b3", "^3"},        {"\u00a0", " "},
      {"\u2009", " "},         {"\u202f", " "},
      {"\u2007", " "},         {"\u2044", "/"},
      {"\u2215", "/"},         {"\t", " "},
      {"\u2032", "'"},
  }};
  std::string result(text);
  for (const auto& [from, to] : signs) result = replaced(std::move(result), from, to);
  return result;
}

Expression read_expression(std::string_view text) {
  static const std::regex degrees(R"(\bdeg(?:rees|ree|s|\.)?[ _]*([CFKR]|[Cc]elsius|[Ff]ahrenheit)(?![A-Za-z]))");
  static const std::regex cooling_tons(R"(\btons?[ _](?:of[ _])?(?:refrigeration|cooling)\b)");
  std::string joined = std::regex_replace(std::string(text), degrees, "deg$1");
  joined = std::regex_replace(joined, cooling_tons, "tonR");
  Expression expression;
  for (const bool greedy : {false, true}) {
    Reading reading(joined, greedy);
    reading.read();
    if (!reading.fault.empty()) return {{}, reading.fault};
    expression.readings.push_back(reading.factors);
  }
  for (const std::size_t i : {std::size_t{0}, std::size_t{1}}) {
    expression.readings.push_back(millikelvin_apart(expression.readings[i]));
  }
  return expression;
}

}  // namespace stillground::units
