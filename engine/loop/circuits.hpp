#pragma once

#include <cstddef>
#include <span>
#include <vector>

namespace stillground::loop {

/// A part of the circuits with one inlet and one outlet: a group of equal bores.
struct Link {
  static constexpr std::size_t none = static_cast<std::size_t>(-1);

  std::size_t upstream =
      none;             ///< the link whose outlet is its inlet, with a lower index; none: the heat pumps' outlet
  bool returns = true;  ///< its outlet goes back to the heat pumps
  double members = 1;   ///< equal parts it stands for, side by side
};

/// The field seen from the heat pumps within one implicit stage: EFT = gain T_in + offset, T_in = EFT + Q(EFT)/W.
struct FieldOutlet {
  double gain = 0;       ///< < 1; a shade below 0 where hardly anything comes back within a stage
  double offset = 0;     ///< [K]
  double heat_rate = 0;  ///< W, mass flow times specific heat of the whole field [W/K], > 0
};

/// How the links' outlets make the field's. Within an implicit stage every link's outlet is affine in its inlet,
///   T_out,g = a_g T_in,g + b_g,
/// and its inlet is what the heat pumps send out or its upstream link's outlet,
///   T_in,g = A_u T_in + B_u,   A = 1, B = 0 at the heat pumps' outlet;
/// so that from there on
///   T_out,g = A_g T_in + B_g,   A_g = a_g A_u,   B_g = a_g B_u + b_g,
/// and what comes back mixes by its flow, n members of w [W/K] each:
///   EFT = sum_r s_r T_out,r,   s_r = n_r w_r / W,   W = sum_r n_r w_r,   r: the links that return.
/// Equal input gives equal bits: all sums in the order of the links.
class Circuits {
 public:
  explicit Circuits(std::vector<Link> links);

  std::size_t size() const { return links_.size(); }

  /// Takes every link's gain a and the flow w of one of its members [W/K]; of a link without flow w = 0: neither
  /// counts.
  void set_gains(std::span<const double> gain, std::span<const double> heat_rate);

  /// Takes every link's offset b [K] (without flow: any); returns the field. Gains must have been set, with some flow.
  FieldOutlet set_offsets(std::span<const double> offset);

  /// What enters a link [K] at the heat pumps' outlet `field_inlet` [K], all its upstream links flowing.
  double inlet(std::size_t link, double field_inlet) const {
    const std::size_t upstream = links_[link].upstream;
    return upstream == Link::none ? field_inlet : gain_[upstream] * field_inlet + offset_[upstream];
  }

 private:
  std::vector<Link> links_;
  std::vector<double> own_gain_;      // [link] a
  std::vector<double> gain_;          // [link] A
  std::vector<double> offset_;        // [link] B [K]
  std::vector<double> share_;         // [link] s; 0: does not return, or no flow
  double field_gain_ = 0, flow_ = 0;  // of the whole field; W [W/K]
};

/// The field as its outlet's response to the heat it is given, EFT = unloaded + slope Q/W: with Q/W = T_in - EFT
///   EFT = slope/(1 + slope) T_in + unloaded/(1 + slope).
/// `unloaded`: EFT without heat [K]; `heat_rate`: W [W/K], > 0.
FieldOutlet outlet_under_load(double unloaded, double slope, double heat_rate);

}  // namespace stillground::loop
