#pragma once

#include <Eigen/Core>
#include <cstddef>
#include <utility>
#include <vector>

#include "engine/bore/network.hpp"
#include "engine/screen/wall_answers.hpp"

namespace stillground::screen {

/// Row after row, as the stages' solver goes through them.
using RowMatrix = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;

/// What the fluid of one circuit passes through: equal bores one after the other, the wall of each in pieces that have
/// a temperature of their own, each piece cut into equal layers.
struct CircuitShape {
  std::size_t bores = 1;
  std::size_t passes = 1;            ///< down and up each of them
  std::vector<double> wall_heights;  ///< of a bore's pieces from its top down [m]
  std::size_t layers_of_a_wall = 1;

  std::size_t walls_of_a_bore() const { return wall_heights.size(); }
  std::size_t walls() const { return bores * wall_heights.size(); }
  std::size_t layers() const { return wall_heights.size() * layers_of_a_wall; }  ///< of a bore
  double layer_height(std::size_t layer) const {                                 ///< [m]
    return wall_heights[layer / layers_of_a_wall] / static_cast<double>(layers_of_a_wall);
  }
  double depth() const;                    ///< of a bore [m]
  double part_of(std::size_t wall) const;  ///< of the circuit's metres
};

/// The ground as every piece of a bore's wall feels it within an hour: it answers the mean heat through it at once, by
/// terms, and in proportion to the heat so far (all terms too slow to bend within an hour).
struct NearGround {
  std::vector<double> instant;  ///< [piece], K m/W
  WallAnswers terms;            ///< the quick ones
  std::vector<double> drift;    ///< [piece], K m/W per s
};

/// d/dt state = of_state state + of_inputs inputs.
struct Rates {
  RowMatrix of_state;   ///< [1/s]
  RowMatrix of_inputs;  ///< columns: every wall's ambient, then the load
};

/// One circuit as linear differential equations: streams and nodes of every layer by the very network that the march
/// has (bore::Network), exchanging like it at the mean of a layer's inlet and outlet; of every piece of wall the near
/// ground's terms and the heat that has gone through it. Driven by every wall's ambient, which is its temperature
/// without what its heat does within the hour [K], and by the heat that the heat pumps give the circuit [W].
class Circuit {
 public:
  Circuit(CircuitShape shape, NearGround ground);

  const CircuitShape& shape() const { return shape_; }
  Eigen::Index size() const { return static_cast<Eigen::Index>(shape_.walls_of_a_bore() * block()); }
  Eigen::Index walls() const { return static_cast<Eigen::Index>(shape_.walls()); }

  /// Place of the heat [J/m] through the mean metre of a wall since the hour's start: does not last from hour to hour.
  Eigen::Index heat(std::size_t wall) const;

  /// `heat_rate`: m c of the circuit [W/K]; 0: the fluid stands.
  Rates rates(const bore::Network& network, double heat_rate) const;

  // Parts of the state that add up to: the stream that leaves the circuit; the topmost cell of that which enters; the
  // mean fluid; the near ground's terms, mean over the walls [K].
  Eigen::RowVectorXd outlet() const;
  Eigen::RowVectorXd topmost_down() const;
  Eigen::RowVectorXd mean_fluid() const;
  Eigen::RowVectorXd near_ground() const;

  /// Parts of the state that add up to the heat that fluid, pipes and grout have stored [J/m per K], mean over the
  /// circuit's metres: streams and the even mode's nodes.
  Eigen::VectorXd stored_heat(const bore::Network& network) const;

  /// At rest with these ambients [wall] of its own and no heat.
  Eigen::VectorXd at_rest(const std::vector<double>& ambient) const;

 private:
  using Index = Eigen::Index;
  using Sum = std::vector<std::pair<Index, double>>;  // places in state and inputs, and how much of each

  std::size_t streams() const { return 2 * shape_.passes; }
  std::size_t block() const;  // entries of a piece of wall of all bores
  Index stream(std::size_t bore, std::size_t layer, std::size_t s) const;
  Index node(std::size_t bore, std::size_t layer, std::size_t mode, std::size_t which) const;
  Index term(std::size_t wall, std::size_t j) const;
  std::size_t terms() const { return ground_.terms.time_constants.size(); }
  std::size_t piece_of(std::size_t wall) const { return wall % shape_.walls_of_a_bore(); }
  double part_of_layer(std::size_t layer) const {
    return shape_.part_of(layer / shape_.layers_of_a_wall) / static_cast<double>(shape_.layers_of_a_wall);
  }
  std::size_t wall_of(std::size_t bore, std::size_t layer) const;
  Sum wall(std::size_t wall) const;
  Sum inlet(std::size_t bore, std::size_t layer, std::size_t s, double heat_rate) const;
  void add(Rates& rates, Index row, const Sum& sum, double factor) const;
  void add_layer(Rates& rates, std::size_t bore, std::size_t layer, const bore::Network& network,
                 double heat_rate) const;
  void add_wall_heat(Rates& rates, std::size_t wall, const Sum& heat) const;

  CircuitShape shape_;
  NearGround ground_;
};

}  // namespace stillground::screen
