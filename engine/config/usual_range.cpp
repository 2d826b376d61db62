#include "engine/config/usual_range.hpp"

#include <fmt/format.h>

#include "engine/base/quote.hpp"
#include "engine/config/keys.hpp"
#include "engine/units/quantity.hpp"

namespace stillground::config {
namespace {

/// The quantity of that name below `pattern`; null if there is none.
const Key* quantity_row(const std::string& pattern, const std::string& leaf) {
  for (const Key* row : keys_below(pattern)) {
    if (row->leaf() == leaf && row->kind == Kind::quantity) return row;
  }
  return nullptr;
}

/// "1.9 to 4.6 W/(m K)": one unit behind both numbers.
UsualRange read_range(const Entry& given, const Key& row, const Where& where) {
  const std::string& text = given.value.text;
  const std::size_t to = text.find(" to "), unit = to == text.npos ? to : text.find(' ', to + 4);
  if (unit == text.npos) {
    where.refuse(fmt::format("{} is not a range (for example \"1.9 to 4.6 W/(m K)\")", quote(text)));
  }
  return {given.key, units::to_si(text.substr(0, to) + text.substr(unit), row.dimension, where, examples(row)),
          units::to_si(text.substr(to + 4), row.dimension, where, examples(row)), text};
}

void check_own_value(const Node& entry, const UsualRange& range, const Key& row, const std::string& path) {
  const Entry* own = entry.find(range.leaf);
  const double value = units::to_si(own->value.text, row.dimension, {own->value.place, path}, examples(row));
  // The same number in the range and in the value may differ by the round-off of their conversion.
  const double round_off = 1e-12 * range.most;
  if (value < range.least - round_off || value > range.most + round_off) {
    Where{own->value.place, path}.refuse(
        fmt::format("{} lies outside its own range, {}", quote(own->value.text), range.text));
  }
}

}  // namespace

std::vector<UsualRange> usual_ranges(const Node& entry, const std::string& pattern, const std::string& path) {
  const Entry* given = entry.find("range");
  if (!given) return {};
  const std::string at = path + ".range";
  if (given->value.kind != Node::Kind::map) {
    Where{given->place, at}.refuse("a map is expected (for example \"conductivity: 1.9 to 4.6 W/(m K)\")");
  }
  std::vector<UsualRange> ranges;
  for (const Entry& one : given->value.entries) {
    const Where where{one.value.place, fmt::format("{}.{}", at, one.key)};
    const Key* row = quantity_row(pattern, one.key);
    if (!row || !entry.find(one.key)) Where{one.place, where.key}.refuse("is no quantity of this entry");
    ranges.push_back(read_range(one, *row, where));
    if (ranges.back().least > ranges.back().most) where.refuse("ends below its beginning");
    check_own_value(entry, ranges.back(), *row, fmt::format("{}.{}", path, one.key));
  }
  return ranges;
}

std::string in_words(const std::vector<UsualRange>& ranges) {
  std::string text;
  for (const UsualRange& range : ranges) {
    text += fmt::format("{} {} {}", text.empty() ? "usual range:" : ",", range.leaf, range.text);
  }
  return text;
}

}  // namespace stillground::config
