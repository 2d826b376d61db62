#include "engine/config/section.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <charconv>
#include <cmath>
#include <stdexcept>
#include <utility>
#include <vector>

#include "engine/base/quote.hpp"
#include "engine/base/spelling.hpp"
#include "engine/units/quantity.hpp"

namespace stillground::config {
namespace {

double value_of(std::string_view text, const Key& row, const Where& where) {
  if (row.kind == Kind::quantity || row.kind == Kind::either) {
    return units::to_si(text, row.dimension, where, examples(row));
  }
  return plain_number(text, where, row.example);
}

std::string missing(const Key& row) {
  if (row.kind == Kind::map && row.example.empty()) {
    std::vector<std::string> below;
    for (const Key* child : keys_below(row.path)) below.emplace_back(child->leaf());
    return fmt::format("missing (a map with keys such as {})", fmt::join(below, ", "));
  }
  if (row.kind == Kind::list) return "missing (a list, one item per layer)";
  return fmt::format("missing (for example \"{}: {}\")", row.leaf(), row.example);
}

}  // namespace

void check_range(double value, std::string_view shown, const Key& row, const Where& where) {
  // A bound that is written in another unit than the value may differ from it by round-off.
  const auto beyond = [&](std::string_view bound, double sign) {
    if (bound.empty()) return false;
    const double limit = value_of(bound, row, where);
    return sign * (value - limit) > 1e-12 * std::abs(limit);
  };
  if (beyond(row.least, -1) || beyond(row.most, 1)) {
    where.refuse(fmt::format("{} is out of range (allowed: {} to {})", quote(shown), row.least, row.most));
  }
}

double plain_number(std::string_view text, const Where& where, std::string_view example) {
  const std::string_view digits = text.starts_with('+') ? text.substr(1) : text;
  double value = 0;
  const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), value);
  if (error != std::errc{} || end != digits.data() + digits.size() || !std::isfinite(value)) {
    where.refuse(fmt::format("{} is not a number (for example {})", quote(text), example));
  }
  return value;
}

Section::Section(const Node& map, std::string pattern, std::string path, Place place)
    : map_(&map), pattern_(std::move(pattern)), path_(std::move(path)), place_(std::move(place)) {}

Section Section::over(const Node& entry) const {
  Section result = *this;
  result.under_ = &entry;
  return result;
}

bool Section::has(std::string_view leaf) const {
  return map_->find(leaf) != nullptr;
}

const Entry* Section::find(std::string_view leaf) const {
  const Entry* own = map_->find(leaf);
  return own || !under_ ? own : under_->find(leaf);
}

const Key& Section::row(std::string_view leaf) const {
  return key(pattern_.empty() ? std::string(leaf) : fmt::format("{}.{}", pattern_, leaf));
}

Where Section::where(std::string_view leaf) const {
  const Entry* entry = find(leaf);
  return {entry ? entry->value.place : place_, path_.empty() ? std::string(leaf) : fmt::format("{}.{}", path_, leaf)};
}

const Entry& Section::need(std::string_view leaf) const {
  const Entry* entry = find(leaf);
  if (!entry) where(leaf).refuse(missing(row(leaf)));
  return *entry;
}

const Node& Section::node(std::string_view leaf) const {
  return need(leaf).value;
}

double Section::quantity(std::string_view leaf) const {
  if (const auto given = optional_quantity(leaf)) return *given;
  const Key& absent = row(leaf);
  if (absent.preset.empty()) need(leaf);
  return value_of(absent.preset, absent, where(leaf));
}

std::optional<double> Section::optional_quantity(std::string_view leaf) const {
  const Entry* entry = find(leaf);
  if (!entry) return std::nullopt;
  const double value = value_of(entry->value.text, row(leaf), where(leaf));
  check_range(value, entry->value.text, row(leaf), where(leaf));
  return value;
}

std::string Section::text_or_preset(std::string_view leaf) const {
  const Key& asked = row(leaf);
  return !find(leaf) && !asked.preset.empty() ? std::string(asked.preset) : need(leaf).value.text;
}

double Section::number(std::string_view leaf) const {
  const std::string text = text_or_preset(leaf);
  const double value = plain_number(text, where(leaf), row(leaf).example);
  check_range(value, text, row(leaf), where(leaf));
  return value;
}

int Section::whole(std::string_view leaf) const {
  const std::string text = text_or_preset(leaf);
  int value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  const bool complete = end == text.data() + text.size();
  if (error == std::errc::invalid_argument || !complete) {
    where(leaf).refuse(fmt::format("{} is not a whole number (for example {})", quote(text), row(leaf).example));
  }
  // A number too large for an int is out of every range.
  check_range(error == std::errc{} ? value : HUGE_VAL, text, row(leaf), where(leaf));
  return value;
}

std::string Section::text(std::string_view leaf) const {
  const std::string& text = need(leaf).value.text;
  if (text.empty()) where(leaf).refuse(fmt::format("is empty (for example \"{}\")", row(leaf).example));
  for (const char c : text) {
    if (static_cast<unsigned char>(c) < 0x20) where(leaf).refuse(quote(text) + " is more than one line of text");
  }
  if (text.size() > 200) where(leaf).refuse(quote(text) + " is longer than 200 letters");
  return text;
}

std::optional<std::string> Section::optional_text(std::string_view leaf) const {
  if (!find(leaf)) return std::nullopt;
  return text(leaf);
}

std::string Section::word(std::string_view leaf) const {
  const std::string given = text_or_preset(leaf);
  const std::vector<std::string> allowed = words(row(leaf));
  for (const std::string& one : allowed) {
    if (one == given) return given;
  }
  const auto near = nearest_word(given, allowed);
  where(leaf).refuse(fmt::format("{} is not known here (allowed: {}{})", quote(given), fmt::join(allowed, ", "),
                                 near ? fmt::format("; did you mean \"{}\"?", *near) : ""));
}

Date Section::date(std::string_view leaf) const {
  const std::string& text = need(leaf).value.text;
  try {
    return parse_date(text);
  } catch (const std::invalid_argument& fault) {  // a fence: the calendar does not know where the text stands
    where(leaf).refuse(fmt::format("{}: {}", quote(text), fault.what()));
  }
}

Section Section::section(std::string_view leaf) const {
  const Entry& entry = need(leaf);
  const Key& below = row(leaf);
  return {entry.value, std::string(below.inside.empty() ? below.path : below.inside), where(leaf).key, entry.place};
}

std::optional<Section> Section::optional_section(std::string_view leaf) const {
  if (!has(leaf)) return std::nullopt;
  return section(leaf);
}

std::string Section::one_of(std::initializer_list<std::string_view> leaves) const {
  for (const Node* node : {map_, under_}) {
    std::string_view given;
    for (const std::string_view leaf : leaves) {
      if (!node || !node->find(leaf)) continue;
      if (!given.empty()) where(leaf).refuse(fmt::format("cannot stand beside {}; give one of them", given));
      given = leaf;
    }
    if (!given.empty()) return std::string(given);
  }
  const Key& first = row(*leaves.begin());
  where().refuse(fmt::format("one of {} is needed (for example \"{}: {}\")", fmt::join(leaves, ", "), first.leaf(),
                             first.example));
}

void Section::forbid(std::string_view leaf, const std::string& why) const {
  if (has(leaf)) where(leaf).refuse(why);
}

}  // namespace stillground::config
