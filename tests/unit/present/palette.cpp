#include "tools/present/palette.hpp"

#include <cmath>
#include <set>

#include "tests/catch.hpp"
#include "tools/present/ramp.hpp"

using namespace stillground::present;

namespace {

/// Luminance Y of "#rrggbb", white being 1 (sRGB: IEC 61966-2-1, from memory).
double luminance(const std::string& colour) {
  const auto linear = [&](std::size_t at) {
    const double v = std::stoi(colour.substr(at, 2), nullptr, 16) / 255.0;
    return v <= 0.04045 ? v / 12.92 : std::pow((v + 0.055) / 1.055, 2.4);
  };
  return 0.2126 * linear(1) + 0.7152 * linear(3) + 0.0722 * linear(5);
}

/// CIE lightness L*, 0 black to 100 white: what a grey print keeps (CIE 1976, from memory).
double lightness(const std::string& colour) {
  return 116 * std::cbrt(luminance(colour)) - 16;
}

double apart(const std::string& a, const std::string& b) {
  return std::abs(lightness(a) - lightness(b));
}

}  // namespace

TEST_CASE("One colour means one thing") {
  std::vector<std::string> inks = {ink,
                                   quiet_ink,
                                   grid_ink,
                                   limit_ink,
                                   first_year_ink,
                                   last_year_ink,
                                   block_ink,
                                   middle_ink,
                                   undisturbed_ink,
                                   bore_ink,
                                   every_year_ink,
                                   outline_ink,
                                   block_fill,
                                   setback_fill,
                                   kept_clear_ink,
                                   kept_clear_fill,
                                   first_year_fill,
                                   last_year_fill,
                                   every_year_fill};
  for (const Stroke& stroke : side_by_side_strokes) inks.push_back(stroke.colour);
  CHECK(std::set<std::string>(inks.begin(), inks.end()).size() == inks.size());
}

// 15 of 100: two greys that nobody confuses side by side (common practice, no source).
TEST_CASE("What meets in one picture stays apart in a grey print") {
  CHECK(apart(first_year_ink, last_year_ink) > 15);
  CHECK(apart(block_ink, middle_ink) > 15);
  CHECK(apart(block_ink, undisturbed_ink) > 15);
  CHECK(apart(kept_clear_ink, bore_ink) > 15);
  for (std::size_t i = 0; i + 1 < side_by_side_strokes.size(); ++i) {
    CHECK(apart(side_by_side_strokes[i].colour, side_by_side_strokes[i + 1].colour) > 15);
  }
}

TEST_CASE("Series of one picture differ in their dashes") {
  std::set<std::string> dashes;
  for (const Stroke& stroke : side_by_side_strokes) dashes.insert(stroke.dash);
  CHECK(dashes.size() == side_by_side_strokes.size());
}

// 3:1 for graphical objects: Web Content Accessibility Guidelines 2.1 (2018), 1.4.11.
TEST_CASE("Every ink that draws a line stands out from white paper") {
  std::vector<std::string> inks = {limit_ink,  first_year_ink,  last_year_ink, every_year_ink, block_ink,
                                   middle_ink, undisturbed_ink, bore_ink,      outline_ink,    kept_clear_ink};
  for (const Stroke& stroke : side_by_side_strokes) inks.push_back(stroke.colour);
  for (const std::string& each : inks) {
    CAPTURE(each);
    CHECK(1.05 / (luminance(each) + 0.05) >= 3);
  }
}

TEST_CASE("A map's colours rise in lightness from band to band, so that a grey print tells them apart") {
  for (const std::size_t levels : {1U, 4U, 9U}) {
    for (std::size_t band = 0; band < levels; ++band) {
      CHECK(lightness(ramp_colour(band + 1, levels)) > lightness(ramp_colour(band, levels)) + 5);
    }
  }
  CHECK(apart(ramp_colour(0, 9), ramp_colour(9, 9)) > 70);
}
