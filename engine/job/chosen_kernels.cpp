#include "engine/job/chosen_kernels.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <string>

#include "engine/record/journal/journal.hpp"

namespace stillground::job {

namespace {

using march::fused::Kernels;

const Kernels* named(const std::string& name, const std::vector<const Kernels*>& available) {
  const auto found =
      std::find_if(available.begin(), available.end(), [&](const Kernels* k) { return k->name == name; });
  return found == available.end() ? nullptr : *found;
}

std::string names(const std::vector<const Kernels*>& available) {
  std::vector<std::string> all;
  for (const Kernels* kernels : available) all.emplace_back(kernels->name);
  return fmt::format("{}", fmt::join(all, ", "));
}

const Kernels& asked_for(const std::string& name, const std::vector<const Kernels*>& available) {
  if (const Kernels* kernels = named(name, available)) return *kernels;
  throw InputError(
      fmt::format("--instruction-set: this processor cannot run {} (it can run: {})", name, names(available)));
}

}  // namespace

const Kernels& chosen_kernels(const Options& options, const std::vector<const Kernels*>& available) {
  const std::string& asked = options.instruction_set;
  std::string begun;
  if (options.resume) {
    if (const auto saved = record::Journal::look(options.result)) begun = saved->instruction_set;
  }
  if (begun.empty()) return asked.empty() ? *available.front() : asked_for(asked, available);
  if (!asked.empty() && asked != begun) {
    throw InputError(
        fmt::format("--instruction-set {}: {}.spool was begun with {}, and another set would end with other "
                    "bytes; go on with --instruction-set {}, or without that option",
                    asked, options.result.string(), begun, begun));
  }
  if (const Kernels* kernels = named(begun, available)) return *kernels;
  throw InputError(
      {options.result.string() + ".spool"}, "",
      fmt::format("was begun with the instruction set {}, which this processor cannot run (it can run: {}); "
                  "resume it where it was begun, or start again with --fresh",
                  begun, names(available)));
}

}  // namespace stillground::job
