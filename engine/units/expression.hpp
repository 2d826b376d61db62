#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace stillground::units {

/// A named unit to a whole power.
struct Factor {
  std::string token;
  int exponent = 1;
};

/// Longer texts are no quantities.
inline constexpr std::size_t longest_text = 120;

/// A unit as written, or what is wrong with it.
struct Expression {
  std::vector<std::vector<Factor>> readings;  ///< most literal first
  std::string fault;                          ///< empty if there is none
};

/// Small signs of other alphabets in plain letters: degrees, micro, dots and crosses, raised digits, wide and
/// unbreakable spaces, the typographic minus.
std::string plain_letters(std::string_view text);

/// Reads a product of units: `W/(m K)`, `Btu/(h ft degF)`, `W m-1 K-1`, `m2/s`, `K/decade`, `W/m-K`. A hyphen before a
/// letter joins, before a digit it is a minus. `W/m K`, `W/m-K` and `W/mK` are common in the trade for W/(m K), while
/// the literal reading multiplies by K: all readings are returned and the dimension that is asked for decides. `text`
/// is in plain letters already.
Expression read_expression(std::string_view text);

}  // namespace stillground::units
