#include "engine/config/overrides.hpp"

#include <fmt/format.h>

#include <charconv>
#include <string_view>
#include <utility>

#include "engine/base/quote.hpp"
#include "engine/base/where.hpp"

namespace stillground::config {
namespace {

/// One name of a path, with the number of the item that stands behind it; 0: none.
struct Step {
  std::string name;
  std::size_t item = 0;
};

Step step_of(std::string_view part, const Where& where) {
  const std::size_t bracket = std::min(part.find('['), part.size());
  Step step{std::string(part.substr(0, bracket))};
  if (step.name.empty()) where.refuse("is not a path of keys (for example \"bore.depth\")");
  if (bracket == part.size()) return step;
  const std::string_view number = part.substr(bracket + 1);
  const auto [end, error] = std::from_chars(number.data(), number.data() + number.size(), step.item);
  const bool closed = std::string_view(end, static_cast<std::size_t>(number.data() + number.size() - end)) == "]";
  if (error != std::errc{} || !closed || step.item == 0) {
    where.refuse(fmt::format("{} is not an item of a list (the first is \"{}[1]\")", quote(part), step.name));
  }
  return step;
}

std::vector<Step> steps_of(const std::string& path, const Where& where) {
  std::vector<Step> steps;
  for (std::string_view rest = path;;) {
    const std::size_t dot = rest.find('.');
    steps.push_back(step_of(rest.substr(0, dot), where));
    if (dot == rest.npos) return steps;
    rest.remove_prefix(dot + 1);
  }
}

Node& child(Node& map, const std::string& key, const Place& place) {
  for (Entry& entry : map.entries) {
    if (entry.key == key) return entry.value;
  }
  map.entries.push_back({key, place, Node{}});
  map.entries.back().value.place = place;
  return map.entries.back().value;
}

Node& item_of(Node& list, const Step& step, const Where& where) {
  if (list.kind != Node::Kind::list) where.refuse(fmt::format("{} is no list in this scenario", quote(step.name)));
  if (step.item > list.items.size()) {
    where.refuse(fmt::format("{} has {} items in this scenario", quote(step.name), list.items.size()));
  }
  return list.items[step.item - 1];
}

/// Where the key itself is named, errors point to the plan.
void name_place(Node& map, const std::string& key, const Place& place) {
  for (Entry& entry : map.entries) {
    if (entry.key == key) entry.place = place;
  }
}

}  // namespace

Override plain_override(const std::string& path, const std::string& text, const Place& place) {
  Override plain{path, place, Node{}};
  plain.value.kind = Node::Kind::scalar;
  plain.value.place = place;
  plain.value.text = text;
  return plain;
}

void put_in_place(const Override& given, Node& tree) {
  const Where where{given.place, given.path};
  const std::vector<Step> steps = steps_of(given.path, where);
  Node* at = &tree;
  for (std::size_t i = 0; i < steps.size(); ++i) {
    const bool last = i + 1 == steps.size();
    if (at->kind == Node::Kind::none) at->kind = Node::Kind::map;
    if (at->kind != Node::Kind::map) {
      where.refuse(fmt::format("{} stands below a plain value or a list of this scenario", quote(steps[i].name)));
    }
    Node* next = &child(*at, steps[i].name, given.place);
    if (last && steps[i].item == 0) name_place(*at, steps[i].name, given.place);
    at = steps[i].item > 0 ? &item_of(*next, steps[i], where) : next;
  }
  *at = given.value;
}

}  // namespace stillground::config
