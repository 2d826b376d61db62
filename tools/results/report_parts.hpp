#pragma once

#include <string>

#include "tools/results/report.hpp"

/// The parts of a report about one result, as HTML. `number` keeps their pictures and links apart from other results',
/// `of` names the result in their headings, or is empty.
namespace stillground::results {

std::string fluid_part(const Reported& one, const std::string& number, const std::string& of, UnitSystem units);
std::string energy_part(const Reported& one, const std::string& number, const std::string& of, UnitSystem units);
std::string ground_part(const Reported& one, const std::string& number, const std::string& of, UnitSystem units);
std::string plan_part(const Reported& one, const std::string& number, const std::string& of, UnitSystem units);
std::string input_part(const Reported& one, const std::string& number, const std::string& of);

/// A picture with an id of its own.
std::string picture(present::Figure figure, const std::string& number);

}  // namespace stillground::results
