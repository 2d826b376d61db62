#pragma once

namespace stillground::model {

enum class Antifreeze { none, propylene_glycol, ethylene_glycol, ethanol, methanol };

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
