#include "engine/screen/batch.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <atomic>
#include <cmath>
#include <exception>
#include <thread>
#include <utility>

#include "engine/field/layout.hpp"
#include "engine/response/single_bore.hpp"
#include "engine/screen/assemble.hpp"
#include "engine/screen/own_error.hpp"

namespace stillground::screen {

namespace {

constexpr double same_factor = 1e-6, same_length = 1e-3;

/// The middle with a run so long that its response, on another's clock, reaches to that one's end.
assembly::Assembly lengthened(model::Scenario middle, double faster) {
  middle.run.years = static_cast<int>(std::ceil(middle.run.years * faster));
  return assemble(std::move(middle));
}

[[noreturn]] void refuse(const model::Scenario& variant, const std::string& key, const std::string& why) {
  throw InputError(variant.place(key), key, "a batch of screenings has one geometry: " + why);
}

LayoutAnswers scaled(const LayoutAnswers& answers, double conductivity, double heat_capacity) {
  return {answers.parts, scaled(answers.field, conductivity, heat_capacity),
          scaled(answers.lone, conductivity, heat_capacity)};
}

}  // namespace

Batch::Batch(const model::Scenario& middle, double faster, std::shared_ptr<SectionsByBore> sections)
    : middle_(lengthened(middle, faster)),
      faster_(faster),
      answers_(layout_answers(middle_)),
      sections_(std::move(sections)) {
  model::Scenario circuit = response::lone_circuit(middle_, 1);
  circuit.run.years = static_cast<int>(std::ceil(faster));
  lone_ = layout_answers(assembly::assemble(std::move(circuit), middle_));
}

Batch::Factors Batch::factors(const model::Scenario& variant) const {
  const auto &ours = middle_.scenario.ground.layers, &theirs = variant.ground.layers;
  if (ours.size() != theirs.size())
    refuse(variant, "ground.layers", fmt::format("{} layers where it has {}", theirs.size(), ours.size()));
  const Factors factors{theirs[0].solid.conductivity / ours[0].solid.conductivity,
                        theirs[0].solid.heat_capacity / ours[0].solid.heat_capacity};
  const auto off = [](double ratio, double factor) { return std::abs(ratio / factor - 1) > same_factor; };
  for (std::size_t i = 0; i < ours.size(); ++i) {
    const bool moved = std::isfinite(ours[i].bottom) != std::isfinite(theirs[i].bottom) ||
                       (std::isfinite(ours[i].bottom) && std::abs(ours[i].bottom - theirs[i].bottom) > same_length);
    if (moved) refuse(variant, "ground.layers", fmt::format("layer {} ends at another depth", i + 1));
    if (off(theirs[i].solid.conductivity / ours[i].solid.conductivity, factors.conductivity) ||
        off(theirs[i].solid.heat_capacity / ours[i].solid.heat_capacity, factors.heat_capacity)) {
      refuse(variant, "ground.layers",
             fmt::format("layer {} has another factor of conductivity or heat capacity than layer 1", i + 1));
    }
  }
  const double faster = factors.conductivity / factors.heat_capacity;
  if (faster > faster_ * (1 + same_factor)) {
    refuse(variant, "ground.layers",
           fmt::format("ground {:.3g} times as diffusive as its middle's (allowed: up to {:.3g})", faster, faster_));
  }
  return factors;
}

void Batch::refuse_other_geometry(const assembly::Assembly& variant) const {
  const model::Scenario& scenario = variant.scenario;
  if (variant.bores.size() != middle_.bores.size())
    refuse(scenario, "field", fmt::format("{} bores where it has {}", variant.bores.size(), middle_.bores.size()));
  for (std::size_t i = 0; i < variant.bores.size(); ++i) {
    const bool there = field::distance(variant.bores[i], middle_.bores[i]) <= same_length;
    if (!there || !field::same_make(variant.bores[i], middle_.bores[i]))
      refuse(scenario, "field", fmt::format("bore {} stands elsewhere or is of another make", i + 1));
  }
  if (std::abs(scenario.bore.diameter - middle_.scenario.bore.diameter) > same_length)
    refuse(scenario, "bore.diameter", "another diameter");
  if (scenario.flow.in_series != middle_.scenario.flow.in_series)
    refuse(scenario, "flow.in_series", "circuits of another length");
  if (scenario.run.years > middle_.scenario.run.years / faster_ + 1e-9)
    refuse(scenario, "run.years", "more years than its middle has");
}

assembly::Assembly Batch::assembled(const model::Scenario& variant) const {
  model::Scenario scenario = variant;
  scenario.run.groups = model::Run::Groups::none;  // the middle's are put in their place
  assembly::Assembly plain = assembly::uncoupled(std::move(scenario), *middle_.kernels);
  plain.sections = sections_->of(variant.bore);
  refuse_other_geometry(plain);
  return assembly::regrouped(std::move(plain), middle_.groups);
}

Estimate Batch::screen(const model::Scenario& variant, const TakeYear& take) const {
  return screen(assembled(variant), take);
}

Estimate Batch::screen(const assembly::Assembly& variant, const TakeYear& take) const {
  const Factors by = factors(variant.scenario);
  return superposed(variant, scaled(answers_, by.conductivity, by.heat_capacity), take);
}

record::ScreeningError Batch::own_error(const assembly::Assembly& variant, const Estimate& estimate) const {
  const Factors by = factors(variant.scenario);
  return screen::own_error(variant, estimate, lone_circuit(variant), scaled(lone_, by.conductivity, by.heat_capacity));
}

std::vector<Estimate> Batch::screen(std::span<const model::Scenario> variants, const TakeVariantsYear& take,
                                    int threads) const {
  std::vector<Estimate> estimates(variants.size());
  std::vector<std::exception_ptr> thrown(variants.size());
  std::atomic<std::size_t> next{0};
  const auto work = [&] {
    for (std::size_t i = next++; i < variants.size(); i = next++) {
      try {
        estimates[i] = screen(variants[i], [&](std::span<const record::Hour> year) { take(i, year); });
      } catch (...) {
        thrown[i] = std::current_exception();
      }
    }
  };
  const std::size_t wanted = threads > 0 ? static_cast<std::size_t>(threads) : std::thread::hardware_concurrency();
  std::vector<std::jthread> others;
  for (std::size_t i = 1; i < std::min(wanted, variants.size()); ++i) others.emplace_back(work);
  work();
  others.clear();  // waits for them
  for (const std::exception_ptr& fault : thrown) {
    if (fault) std::rethrow_exception(fault);
  }
  return estimates;
}

}  // namespace stillground::screen
