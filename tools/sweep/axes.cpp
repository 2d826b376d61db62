#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <string_view>

#include "engine/base/quote.hpp"
#include "engine/base/spelling.hpp"
#include "engine/base/where.hpp"
#include "tools/sweep/plan_parts.hpp"

namespace stillground::sweep {

namespace {

using config::Node;

/// A number as written, and what follows it.
struct Written {
  double value = 0;
  int decimals = 0;
  std::string unit;
};

Written parted(const Node& range, const std::string& leaf, const std::string& key) {
  const config::Entry* entry = range.find(leaf);
  if (entry == nullptr) {
    Where{range.place, key}.refuse(
        fmt::format("{} is missing (a range is {{from: 90 m, to: 150 m, step: 15 m}})", leaf));
  }
  const std::string& text = plain_text(entry->value, key + "." + leaf);
  Written written;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), written.value);
  if (error != std::errc{} || !std::isfinite(written.value)) {
    Where{entry->value.place, key + "." + leaf}.refuse(quote(text) + " is not a number with its unit");
  }
  const std::string number(text.data(), end);
  if (const auto point = number.find('.'); point != number.npos) {
    written.decimals = static_cast<int>(std::min(number.find_first_of("eE"), number.size()) - point) - 1;
  }
  written.unit = std::string(end, text.data() + text.size());
  return written;
}

Node plain_node(const std::string& text, const Place& place) {
  return config::plain_override("", text, place).value;
}

std::vector<Value> values_of_range(const Node& range, const std::string& key) {
  check_keys(range, key, {"from", "to", "step"});
  const Written from = parted(range, "from", key), to = parted(range, "to", key), step = parted(range, "step", key);
  const Where where{range.place, key};
  if (from.unit != to.unit || from.unit != step.unit) where.refuse("from, to and step need one unit");
  const double steps = (to.value - from.value) / step.value;
  if (step.value == 0 || !std::isfinite(steps) || steps < 0)
    where.refuse("the range is empty: step does not lead from from to to");
  if (steps > static_cast<double>(most_points)) {
    where.refuse(fmt::format("the range has {:.0f} values (allowed: up to {})", std::floor(steps) + 1, most_points));
  }
  std::vector<Value> values;
  const int decimals = std::max(from.decimals, step.decimals);
  for (int i = 0; i <= static_cast<int>(std::floor(steps + 1e-9)); ++i) {
    const std::string text = fmt::format("{:.{}f}{}", from.value + i * step.value, decimals, from.unit);
    values.push_back({text, plain_node(text, range.place)});
  }
  return values;
}

/// A block may have a `name` beside the scenario's keys.
Value value_of_item(const Node& item, const std::string& key) {
  if (item.kind == Node::Kind::none) Where{item.place, key}.refuse("an item of the list has no value");
  if (item.kind == Node::Kind::scalar) return {item.text, item};
  Value value{"", item};
  const auto named = [](const config::Entry& entry) { return entry.key == "name"; };
  auto& entries = value.node.entries;
  if (const auto name = std::find_if(entries.begin(), entries.end(), named); name != entries.end()) {
    value.name = plain_text(name->value, key + ".name");
    entries.erase(name);
  }
  if (value.name.empty()) value.name = config::on_one_line(value.node);
  return value;
}

std::vector<Value> values_of(const Node& node, const std::string& key) {
  if (node.kind == Node::Kind::map) return values_of_range(node, key);
  if (node.kind != Node::Kind::list) {
    Where{node.place, key}.refuse("a list of values is expected, or a range {from: 90 m, to: 150 m, step: 15 m}");
  }
  std::vector<Value> values;
  for (const Node& item : node.items) values.push_back(value_of_item(item, key));
  if (values.empty()) Where{node.place, key}.refuse("the list is empty");
  return values;
}

}  // namespace

void check_keys(const Node& map, const std::string& path, const std::vector<std::string>& known) {
  for (const config::Entry& entry : map.entries) {
    if (std::find(known.begin(), known.end(), entry.key) != known.end()) continue;
    const auto near = nearest_word(entry.key, known);
    const std::string advice =
        near ? fmt::format("did you mean \"{}\"?", *near) : fmt::format("known here: {}", fmt::join(known, ", "));
    Where{entry.place, path}.refuse(fmt::format("unknown key {} ({})", quote(entry.key), advice));
  }
}

const std::string& plain_text(const Node& value, const std::string& key) {
  if (value.kind != Node::Kind::scalar || value.text.empty())
    Where{value.place, key}.refuse("a single value is expected");
  return value.text;
}

std::vector<Axis> read_axes(const Node& vary) {
  if (vary.kind != Node::Kind::map || vary.entries.empty()) {
    Where{vary.place, "vary"}.refuse(
        "keys of the scenario with their values are expected (for example \"bore.depth: [100 m, 120 m]\")");
  }
  std::vector<Axis> axes;
  for (const config::Entry& entry : vary.entries) {
    axes.push_back({entry.key, entry.place, values_of(entry.value, "vary." + entry.key)});
  }
  return axes;
}

}  // namespace stillground::sweep
