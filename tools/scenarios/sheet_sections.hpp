#pragma once

#include "tools/scenarios/sheet.hpp"

/// The parts of a sheet, each with its figures, rules and blanks.
namespace stillground::scenarios {

/// The mark of a rule that no text was read for.
inline constexpr const char* practice = "common practice, no source";

/// What the parts are made from.
struct SheetSource {
  const assembly::Assembly& assembly;
  const CrewFigures& figures;
  const Allowances& allowances;
  UnitSystem system;

  /// "121.8 m", "399.6 ft"; see units::text.
  std::string say(double kept, const char* kind, int digits) const;

  /// Of a pressure [Pa], in bar and in psi, whatever the system: gauges on site show either.
  std::string pressure(double pascals) const;
};

SheetSection drilling_section(const SheetSource& source);
SheetSection pipe_section(const SheetSource& source);
SheetSection grout_section(const SheetSource& source);
SheetSection flushing_section(const SheetSource& source);
SheetSection fluid_section(const SheetSource& source);
SheetSection test_section(const SheetSource& source);
SheetSection trench_section(const SheetSource& source);
SheetSection signature_section();

}  // namespace stillground::scenarios
