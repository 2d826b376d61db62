#include "engine/app/starting_scenario.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>
#include <string_view>
#include <vector>

#include "engine/config/keys.hpp"

namespace stillground::app {

namespace {

using config::Key;
using config::Kind;
using config::Need;

constexpr std::size_t comment_column = 44;

/// What every starting scenario gives besides the keys that a scenario must give: one of each set of choices.
constexpr std::array<std::string_view, 15> chosen = {
    "title",
    "ground.layers[].material",
    "ground.layers[].heat_capacity",
    "ground.undisturbed.surface_mean",
    "ground.undisturbed.surface_swing",
    "ground.undisturbed.coldest_day",
    "ground.undisturbed.heat_flow",
    "bore.loop",
    "bore.pipe.use",
    "fluid.mass_fraction",
    "flow.per_bore",
    "loads.to_ground",
    "limits",
    "limits.eft_min",
    "limits.eft_max",
};

using Paths = std::vector<std::string_view>;
using Values = std::map<std::string_view, std::string>;

/// What one kind of them gives besides, and where it says something else than the table's example.
struct Choice {
  Paths given;
  Values values;
  bool us = false;  ///< quantities in the units of the United States
};

Choice choice_of(Like like, const std::string& outline) {
  const Paths in_grid = {"bore.leg_spacing", "field.grid", "field.grid.spacing"};
  switch (like) {
    case Like::grid:
      return {.given = in_grid, .values = {}};
    case Like::us:
      return {.given = {"units", "bore.leg_spacing", "field.grid", "field.grid.spacing"}, .values = {}, .us = true};
    case Like::plot:
      return {.given = {"bore.leg_spacing", "field.plot", "field.plot.spacing"},
              .values = {{"field.plot.outline", outline}}};
    case Like::coaxial:
      return {.given = {"bore.inner_pipe", "bore.down", "field.grid", "field.grid.spacing"},
              .values = {{"bore.loop", "coaxial"},
                         {"bore.pipe.use", "pe100-sdr11-63mm"},
                         {"bore.inner_pipe", "{use: pe100-sdr11-32mm}"},
                         {"flow.per_bore", "0.9 L/s"}}};
  }
  return {};
}

bool is_child(const Key& key, std::string_view parent) {
  const std::string prefix = std::string(parent) + ".";
  return key.path.starts_with(prefix) && key.path.find('.', prefix.size()) == std::string_view::npos;
}

bool has_children(const Key& key) {
  return std::any_of(config::keys().begin(), config::keys().end(), [&](const Key& k) { return is_child(k, key.path); });
}

/// Range, allowed words and preset, in the words of the table.
std::string remark(const Key& key) {
  std::vector<std::string> parts;
  if (!key.help.empty()) parts.emplace_back(key.help);
  if (!key.words.empty() && key.kind == Kind::word) {
    std::string words;
    for (const auto& word : config::words(key)) words += (words.empty() ? "" : ", ") + word;
    parts.push_back(words);
  }
  if (!key.least.empty() && !key.most.empty()) parts.push_back(fmt::format("{} to {}", key.least, key.most));
  const bool only_word = key.preset == key.words;
  if (!key.preset.empty() && !only_word) parts.push_back(fmt::format("{} if absent", key.preset));
  return fmt::format("{}", fmt::join(parts, "; "));
}

std::string line(const std::string& indent, bool given, const std::string& text, const Key& key) {
  std::string shown = indent + (given ? "" : "# ") + text;
  const std::string comment = remark(key);
  if (comment.empty()) return shown + "\n";
  if (shown.size() + 2 < comment_column) shown.resize(comment_column, ' ');
  return shown + (shown.ends_with(' ') ? "# " : "  # ") + comment + "\n";
}

/// Writes one kind of starting scenario, key by key in the table's order.
class Writer {
 public:
  explicit Writer(Choice choice) : choice_(std::move(choice)) {}

  std::string entry(const Key& key, const std::string& indent, bool parent_given) const {
    const bool given = parent_given && is_given(key);
    const std::string head = std::string(key.leaf()) + ":";
    if (key.kind == Kind::list) return line(indent, given, head, key) + item(key, indent + "  ", given);
    if (key.kind == Kind::map && has_children(key)) {
      return line(indent, given, head, key) + section(key.path, indent + "  ", given);
    }
    return line(indent, given, head + " " + value_of(key), key) + section(key.path, indent + "  ", false);
  }

 private:
  bool is_given(const Key& key) const {
    const auto among = [&](const auto& paths) {
      return std::find(paths.begin(), paths.end(), key.path) != paths.end();
    };
    if (among(chosen) || among(choice_.given)) return true;
    // A catalogue entry named by `use` brings its required values with it.
    return key.need == Need::required && !key.path.starts_with("bore.pipe.");
  }

  std::string value_of(const Key& key) const {
    const auto own = choice_.values.find(key.path);
    if (own != choice_.values.end()) return own->second;
    // A date's preset is said in words, not as it would be written.
    const bool given = is_given(key);
    if (!given && !key.preset.empty() && key.kind != Kind::date) return std::string(key.preset);
    return std::string(choice_.us && given && !key.example2.empty() ? key.example2 : key.example);
  }

  /// One item, whose dash stands before its first key, in force if the list is.
  std::string item(const Key& list, const std::string& indent, bool given) const {
    if (list.inside.find("[]") == std::string_view::npos) return "";  // its keys are those of a map shown already
    if (given) {
      std::string text = section(list.inside, indent + "  ", true);
      std::size_t at = 0;
      while (text[text.find_first_not_of(' ', at)] == '#') at = text.find('\n', at) + 1;
      return text.replace(at + indent.size(), 1, "-");
    }
    std::string text = section(list.inside, indent, false);
    for (std::size_t at = 0; at < text.size(); at = text.find('\n', at) + 1) {
      text.insert(at + indent.size() + 2, at == 0 ? "- " : "  ");
    }
    return text;
  }

  std::string section(std::string_view parent, const std::string& indent, bool given) const {
    std::string text;
    for (const Key& key : config::keys()) {
      if (is_child(key, parent)) text += entry(key, indent, given);
    }
    return text;
  }

  Choice choice_;
};

}  // namespace

std::string starting_scenario(Like like, const std::string& outline) {
  const Writer writer(choice_of(like, outline));
  std::string text =
      "# A starting scenario. Quantities carry their units: \"120 m\" or \"400 ft\". Keys behind a \"#\" are not in "
      "force.\n";
  for (const Key& key : config::keys()) {
    if (key.path.find('.') == std::string_view::npos) text += "\n" + writer.entry(key, "", true);
  }
  return text;
}

std::string starting_outline() {
  return "# A plot of land to begin with: corners in order.\nx [m],y [m]\n0,0\n36,0\n36,14\n18,14\n18,30\n0,30\n";
}

}  // namespace stillground::app
