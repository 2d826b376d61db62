#pragma once

#include <Eigen/Core>
#include <cstddef>
#include <vector>

#include "engine/bore/network.hpp"
#include "engine/response/exponentials.hpp"

namespace stillground::screen {

/// What the fluid of one circuit passes through: equal bores one after the other, each cut into equal layers.
struct CircuitShape {
  std::size_t bores = 1;
  std::size_t passes = 1;       ///< down and up each of them
  double layer_height = 0;      ///< [m]
  std::vector<double> profile;  ///< [layer]: how far the undisturbed ground lies above its mean over the bore [K]
};

/// The ground as a circuit feels it within an hour: the wall answers the mean heat through it at once, by terms, and in
/// proportion to the heat so far (all terms too slow to bend within an hour).
struct NearGround {
  double instant = 0;  ///< [K m/W]
  std::vector<response::Exponential> terms;
  double drift = 0;  ///< [K m/W per s]
};

/// One circuit as linear differential equations, d/dt state = rates state: streams and nodes of every layer, by the
/// very network that the march has (bore::Network) and exchanging like it at the mean of a layer's inlet and outlet;
/// then the near ground's terms; then what drives it. All circuits of a field share one wall temperature, at every
/// depth alike but for the undisturbed profile.
class Circuit {
 public:
  Circuit(CircuitShape shape, NearGround ground);

  // Places in the state. What comes first lasts from hour to hour: temperatures [K].
  Eigen::Index lasting() const { return heat(); }
  Eigen::Index heat() const { return first_term() + static_cast<Eigen::Index>(ground_.terms.size()); }  ///< see below
  Eigen::Index ambient() const { return heat() + 1; }  ///< of the wall without the hour's own heat [K]
  Eigen::Index change() const { return heat() + 2; }   ///< of that within an hour [K]
  Eigen::Index profile() const { return heat() + 3; }  ///< 1: the undisturbed profile counts
  Eigen::Index load() const { return heat() + 4; }     ///< heat that the heat pumps give the circuit [W]
  Eigen::Index size() const { return heat() + 5; }

  /// d/dt of the state, where `heat` [J/m] counts what has gone through the mean metre of wall. `heat_rate`: m c of the
  /// circuit [W/K]; 0: the fluid stands.
  Eigen::MatrixXd rates(const bore::Network& network, double heat_rate) const;

  /// Parts of the state that add up to: the stream that leaves the circuit; the topmost cell of that which enters; the
  /// mean fluid; the near ground's terms [K].
  Eigen::RowVectorXd outlet() const;
  Eigen::RowVectorXd topmost_down() const;
  Eigen::RowVectorXd mean_fluid() const;
  Eigen::RowVectorXd near_ground() const;

  /// At rest with an ambient of 1 K, and with the undisturbed profile.
  Eigen::VectorXd at_rest() const;
  Eigen::VectorXd profile_at_rest() const;

 private:
  using Index = Eigen::Index;
  std::size_t streams() const { return 2 * shape_.passes; }
  std::size_t layers() const { return shape_.profile.size(); }
  Index stream(std::size_t bore, std::size_t layer, std::size_t s) const;
  Index node(std::size_t bore, std::size_t layer, std::size_t mode, std::size_t which) const;
  Index first_term() const { return static_cast<Index>(shape_.bores * layers() * 3 * streams()); }
  Eigen::RowVectorXd of(Index place) const;
  Eigen::RowVectorXd wall(std::size_t layer) const;
  Eigen::RowVectorXd inlet(std::size_t bore, std::size_t layer, std::size_t s, double heat_rate) const;
  Eigen::VectorXd filled(const std::vector<double>& per_layer) const;

  CircuitShape shape_;
  NearGround ground_;
};

}  // namespace stillground::screen
