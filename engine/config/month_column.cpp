#include "engine/config/month_column.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <charconv>

#include "engine/base/quote.hpp"

namespace stillground::config {
namespace {

constexpr std::array<std::string_view, 12> names = {"january",   "february", "march",    "april",
                                                    "may",       "june",     "july",     "august",
                                                    "september", "october",  "november", "december"};

/// A whole number from 1 to 12, all of the text.
std::optional<int> month_number(std::string_view text) {
  int number = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
  const bool whole = error == std::errc() && end == text.data() + text.size();
  return whole && number >= 1 && number <= 12 ? std::optional(number) : std::nullopt;
}

/// The English name, or its first three letters or more.
std::optional<int> named_month(std::string_view text) {
  std::string word(text);
  std::transform(word.begin(), word.end(), word.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  if (word.ends_with('.')) word.pop_back();
  if (word.size() < 3) return std::nullopt;
  const auto found = std::find_if(names.begin(), names.end(), [&](auto name) { return name.starts_with(word); });
  return found == names.end() ? std::nullopt : std::optional(static_cast<int>(found - names.begin()) + 1);
}

}  // namespace

std::optional<int> month_of(std::string_view cell) {
  const bool with_year = cell.size() == 7 && cell[4] == '-';
  if (const auto number = month_number(with_year ? cell.substr(5) : cell)) return number;
  return named_month(cell);
}

void check_months(const Csv& csv, Context& context) {
  const auto column = csv.find("month");
  if (!column) return;
  bool warned = false;
  for (std::size_t row = 0; row < csv.rows(); ++row) {
    const std::string_view cell = csv.cell(row, *column);
    const Where where = csv.where(row, *column);
    const std::string due = month_name(static_cast<int>(row) + 1);
    const auto month = month_of(cell);
    if (month && *month != static_cast<int>(row) + 1) {
      where.refuse(fmt::format("{} stands where {} is due: the rows go from January to December", quote(cell), due));
    }
    if (month || warned) continue;
    warned = true;
    context.warn(where.place, fmt::format("{} is no month that can be read: the row is taken for {}", quote(cell), due),
                 "rows from January to December");
  }
}

}  // namespace stillground::config
