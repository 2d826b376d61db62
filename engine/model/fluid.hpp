#pragma once

namespace stillground::model {

/// The table of antifreezes: each one's enumerator, which is also the name of its object in materials/, and the
/// scenario's word. All else about it stands in its file there, see materials::Mixture.
// clang-format off
#define STILLGROUND_ANTIFREEZES(row)        \
  row(propylene_glycol, "propylene glycol") \
  row(ethylene_glycol, "ethylene glycol")   \
  row(ethanol, "ethanol")                   \
  row(methanol, "methanol")                 \
  row(potassium_acetate, "potassium acetate")
// clang-format on

#define STILLGROUND_ENUMERATOR(name, word) name,
enum class Antifreeze { none, STILLGROUND_ANTIFREEZES(STILLGROUND_ENUMERATOR) };
#undef STILLGROUND_ENUMERATOR

/// A row of that table.
struct NamedAntifreeze {
  Antifreeze base = Antifreeze::none;
  const char* word = "";
};

#define STILLGROUND_ROW(name, word) NamedAntifreeze{Antifreeze::name, word},
inline constexpr NamedAntifreeze antifreezes[] = {STILLGROUND_ANTIFREEZES(STILLGROUND_ROW)};
#undef STILLGROUND_ROW

/// Water, or water with an antifreeze.
struct Fluid {
  enum class Basis { mass, volume };

  Antifreeze base = Antifreeze::none;
  double fraction = 0;        ///< of the antifreeze, 0..1
  Basis basis = Basis::mass;  ///< volume: of the parts before mixing, at 15 degC
};

struct Flow {
  enum class Amount { per_bore, total };
  enum class Runs { with_load, always };
  enum class Varies {
    never,      ///< full flow whenever it runs
    with_load,  ///< in proportion to the load, not below `least`
    in_stages   ///< as many equal stages as the load needs
  };

  double rate = 0;  ///< at full flow [m3/s]
  Amount amount = Amount::per_bore;
  Runs runs = Runs::with_load;
  Varies varies = Varies::never;
  double least = 0.3;          ///< part of full flow that is never fallen below while it runs, 0..1
  int stages = 1;              ///< of the heat pumps, each with its own pump
  int in_series = 1;           ///< bores one after the other on a circuit, in the layout's order
  double reynolds_min = 2300;  ///< of the loops' flow at the design hour, below which the user is warned
};

}  // namespace stillground::model
