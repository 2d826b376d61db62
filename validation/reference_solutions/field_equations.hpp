#pragma once

#include <cstddef>
#include <functional>
#include <span>
#include <vector>

/// The equations of a bore field on a given grid, still continuous in time, in the form that a general-purpose
/// integrator of ordinary differential equations wants. Written down anew from the balance of heat: an independent
/// statement of what a march of the same grid should solve. SI, kelvin.
namespace stillground::reference_solutions {

/// Two nodes with heat capacity between a fluid and an end, per metre of bore: fluid - inner - node - middle - node -
/// outer - end.
struct Chain {
  double inner = 0, middle = 0, outer = 0;        ///< [K m/W]
  double inner_capacity = 0, outer_capacity = 0;  ///< [J/(m K)]
};

/// Between fluid and bore wall in one layer. The legs' mean M ends in the wall, half their difference D at zero.
struct Section {
  Chain even, odd;
  double fluid_capacity = 0;  ///< of one leg [J/(m K)]
};

/// What flows, and the sections that hold at it.
struct Flow {
  double heat_rate = 0;           ///< mass flow times specific heat of one bore [W/K]; 0: the fluid stands
  std::vector<Section> sections;  ///< [z]
};

/// A part of a neighbour's own rise that is felt at a bore's wall.
struct Share {
  std::size_t source = 0;  ///< bore
  std::size_t ring = 0;
  double weight = 0;
};

/// One bore, or several equal ones.
struct FieldBore {
  std::vector<double> fraction;  ///< [z]: part of the layer's height that it fills
  double members = 1;
  std::vector<Share> neighbours;
};

struct Field {
  std::vector<double> r_faces;        ///< from the bore wall out [m]; nodes are h^2/18 in ln r outside their geometric
                                      ///< means, h the rings' width in ln r
  std::vector<double> z_faces;        ///< from the surface down [m]
  std::vector<double> conductivity;   ///< [z] [W/(m K)]
  std::vector<double> heat_capacity;  ///< [z] [J/(m3 K)]
  double surface_film = 0;            ///< [W/(m2 K)]; 0: none
  std::vector<FieldBore> bores;       ///< all starting in the same layer
  std::function<void(double, std::span<double>)> undisturbed;  ///< T0 [z] at a time
};

/// State, layer by layer: in each the integral of the field's outlet temperature (in the first layer with bores; zero
/// elsewhere), then for every bore fluid down, fluid up, two even nodes, two odd nodes [K] and the rings' rise [K]. So
/// nothing depends on anything farther off than `band()`.
class FieldEquations {
 public:
  /// Throws std::invalid_argument if the bores do not start in the same layer.
  explicit FieldEquations(Field field);

  std::size_t band() const { return layer_; }
  std::size_t size() const { return layer_ * layers(); }

  /// At rest: fluid and grout as the undisturbed ground at `time`.
  std::vector<double> at_rest(double time) const;

  /// dy/dt under `heat` [W] into the whole field. With `homogeneous`, without T0 and heat: the part linear in y.
  void rate(double time, const double* y, double heat, const Flow& flow, double* rate, bool homogeneous = false) const;

  /// Mixed outlet of all bores; of standing fluid the mean of the topmost cells that flow upwards [K].
  double outlet(const double* y) const;

  /// Where the integral of `outlet` stands.
  std::size_t integral() const { return first_ * layer_; }

 private:
  std::size_t rings() const { return node_.size(); }
  std::size_t layers() const { return field_.conductivity.size(); }
  std::size_t at(std::size_t k, std::size_t bore) const { return k * layer_ + 1 + bore * (6 + rings()); }
  void add_ground(std::size_t bore, const double* y, double* rate) const;
  void add_bore(std::size_t bore, double inlet, const Flow& flow, const double* y, std::span<const double> undisturbed,
                double* rate) const;

  Field field_;
  std::vector<double> node_;     // [r]
  std::vector<double> area_;     // [r]
  std::vector<double> between_;  // [z]: conductance per area of the face above layer k
  std::size_t first_ = 0;        // layer with the bores' tops
  std::size_t layer_ = 0;        // entries of a layer
};

}  // namespace stillground::reference_solutions
