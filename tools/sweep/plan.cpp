#include "tools/sweep/plan.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <charconv>

#include "engine/base/files.hpp"
#include "engine/base/quote.hpp"
#include "engine/base/spelling.hpp"
#include "engine/base/where.hpp"
#include "engine/config/read.hpp"
#include "tools/sweep/plan_parts.hpp"
#include "tools/sweep/walk.hpp"

namespace stillground::sweep {

namespace {

using config::Node;

constexpr std::size_t largest_plan = std::size_t{1} << 22;
constexpr std::string_view both_words = "screening, then march the best ";

Where where(const Node& value, const std::string& key) {
  return {value.place, key};
}

bool read_flag(const Node& value, const std::string& key) {
  const std::string& text = plain_text(value, key);
  if (text != "true" && text != "false") where(value, key).refuse(quote(text) + " is neither true nor false");
  return text == "true";
}

void read_method(const Node& value, Plan& plan) {
  const std::string& text = plain_text(value, "method");
  if (text == "march" || text == "screening") {
    plan.method = text == "march" ? Method::march : Method::screening;
    return;
  }
  const char *from = text.data() + both_words.size(), *to = text.data() + text.size();
  const bool begins = text.starts_with(both_words);
  const auto [end, error] = begins ? std::from_chars(from, to, plan.best) : std::from_chars_result{from, std::errc{}};
  if (!begins || end != to || error != std::errc{}) {
    where(value, "method")
        .refuse(fmt::format("{} is not known here (allowed: march; screening; {}3, or another number)", quote(text),
                            both_words));
  }
}

void read_rank(const Node& value, Plan& plan) {
  const std::string& text = plain_text(value, "rank");
  std::vector<std::string> allowed;
  for (const Rank rank : {Rank::length, Rank::cost, Rank::power}) {
    allowed.push_back(text_of(rank));
    if (text != allowed.back() && "least " + text + " that keeps the limits" != allowed.back()) continue;
    plan.rank = rank;
    if (rank == Rank::cost && !plan.prices) where(value, "rank").refuse("a cost needs prices");
    return;
  }
  where(value, "rank").refuse(fmt::format("{} is not known here (allowed: {})", quote(text), fmt::join(allowed, "; ")));
}

void read_keep(const Node& value, Plan& plan) {
  const std::string& text = plain_text(value, "keep");
  if (text != "results") where(value, "keep").refuse(quote(text) + " is not known here (allowed: results)");
  plan.keep_results = true;
}

const Node& needed(const Node& tree, const Plan& plan, const std::string& key, const char* example) {
  const config::Entry* entry = tree.find(key);
  if (entry == nullptr) {
    throw InputError({plan.file.string(), 1, 1}, key, fmt::format("missing (for example \"{}: {}\")", key, example));
  }
  return entry->value;
}

/// Each value in a scenario that has the first ones of the other keys: names alone are judged, figures are the points'.
void check_names(const Plan& plan) {
  const Walk walk(plan);
  for (std::size_t axis = 0; axis < plan.axes.size(); ++axis) {
    for (std::size_t value = 0; value < plan.axes[axis].values.size(); ++value) {
      std::vector<std::size_t> choice(plan.axes.size(), plan.paired ? value : 0);
      choice[axis] = value;
      config::check_overrides(plan.scenario, walk.overrides(choice));
    }
  }
}

}  // namespace

std::string text_of(Rank rank) {
  const char* of = rank == Rank::length ? "length" : rank == Rank::cost ? "cost" : "power";
  return fmt::format("least {} that keeps the limits", of);
}

std::string text_of(Method method, std::size_t best) {
  if (method == Method::both) return fmt::format("{}{}", both_words, best);
  return method == Method::march ? "march" : "screening";
}

Plan read_plan(const std::filesystem::path& file) {
  Plan plan;
  plan.file = file;
  const Node tree = config::read_tree(read_file(file, {}, largest_plan), file.string());
  check_keys(tree, "", {"scenario", "vary", "paired", "method", "rank", "prices", "keep"});
  plan.scenario = file.parent_path() / plain_text(needed(tree, plan, "scenario", "site.yaml"), "scenario");
  plan.axes = read_axes(needed(tree, plan, "vary", "{bore.depth: [100 m, 120 m]}"));
  if (const auto* entry = tree.find("paired")) plan.paired = read_flag(entry->value, "paired");
  if (const auto* entry = tree.find("method")) read_method(entry->value, plan);
  if (const auto* entry = tree.find("prices")) plan.prices = read_prices(entry->value);
  if (plan.prices) plan.rank = Rank::cost;
  if (const auto* entry = tree.find("rank")) read_rank(entry->value, plan);
  if (const auto* entry = tree.find("keep")) read_keep(entry->value, plan);
  read_file(plan.scenario, where(tree.find("scenario")->value, "scenario"));  // there is one
  config::read_scenario(plan.scenario);
  check_names(plan);
  return plan;
}

}  // namespace stillground::sweep
