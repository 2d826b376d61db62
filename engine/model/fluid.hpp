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

  double rate = 0;  ///< [m3/s]
  Amount amount = Amount::per_bore;
  Runs runs = Runs::with_load;
};

}  // namespace stillground::model
