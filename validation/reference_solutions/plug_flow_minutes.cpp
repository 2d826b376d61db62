#include "validation/reference_solutions/plug_flow_minutes.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <numbers>

namespace stillground::reference_solutions {

namespace {

constexpr double minute = 60;
constexpr int steps_a_minute = 120;
constexpr double step = minute / steps_a_minute;
// Of the bore, each with nodes and a wall of its own. Parcels in one warm by what their mean exchanges: with 40 parts a
// slow coaxial loop let ten minutes' peak through a third too high.
constexpr std::size_t parts = 120;

/// Stehfest's weights of order 12 (1970, Commun. ACM 13, 47-49 [pages from memory]).
std::array<double, 12> stehfest() {
  const auto factorial = [](int n) { return std::tgamma(n + 1.0); };
  std::array<double, 12> weights{};
  for (int i = 1; i <= 12; ++i) {
    double sum = 0;
    for (int k = (i + 1) / 2; k <= std::min(i, 6); ++k) {
      sum += std::pow(k, 6) * factorial(2 * k) /
             (factorial(6 - k) * factorial(k) * factorial(k - 1) * factorial(i - k) * factorial(2 * k - i));
    }
    weights[static_cast<std::size_t>(i - 1)] = ((i + 6) % 2 == 0 ? 1 : -1) * sum;
  }
  return weights;
}

/// Rise of the wall per W/m since t = 0: K0(x)/(2 pi k s x K1(x)), x = r sqrt(s/alpha), turned back.
double wall_response(const PlugBore& bore, double time) {
  static const auto weights = stehfest();
  const double diffusivity = bore.conductivity / bore.heat_capacity;
  double sum = 0;
  for (std::size_t i = 0; i < weights.size(); ++i) {
    const double s = static_cast<double>(i + 1) * std::numbers::ln2 / time;
    const double x = bore.radius * std::sqrt(s / diffusivity);
    // K0/K1 by its asymptote where both are too small for a double.
    const double ratio = x > 100 ? 1 - 1 / (2 * x) : std::cyl_bessel_k(0.0, x) / std::cyl_bessel_k(1.0, x);
    sum += weights[i] * ratio / (2 * std::numbers::pi * bore.conductivity * s * x);
  }
  return sum * std::numbers::ln2 / time;
}

/// Nodes of one part, and how fast they and the streams change at it.
struct Part {
  std::array<double, 2> inner{}, outer{};
};

/// `wall` [K]: without the heat of this minute, which warms it by `of_the_minute` [K m/W] in the mean.
struct Slopes {
  std::array<double, 2> stream{}, inner{}, outer{};
  double to_wall = 0;  ///< [W/m]
};

Slopes slopes(const std::array<PlugMode, 2>& modes, const std::array<double, 2>& capacity,
              const std::array<double, 2>& stream, const Part& part, double wall, double of_the_minute) {
  Slopes result;
  for (std::size_t m = 0; m < 2; ++m) {
    const PlugMode& mode = modes[m];
    const double end = m == 0 ? wall : 0, beyond = mode.outer + (m == 0 ? of_the_minute : 0);
    const double level = mode.reads[0] * stream[0] + mode.reads[1] * stream[1];
    double leaves = (level - end) / (mode.inner + mode.middle + beyond), out = leaves;
    if (mode.inner_grout > 0) {
      leaves = (level - part.inner[m]) / mode.inner;
      const double across = (part.inner[m] - part.outer[m]) / mode.middle;
      out = (part.outer[m] - end) / beyond;
      result.inner[m] = (leaves - across) / mode.inner_grout;
      result.outer[m] = (across - out) / mode.outer_grout;
    }
    for (std::size_t s = 0; s < 2; ++s) result.stream[s] -= mode.gives[s] * leaves / capacity[s];
    if (m == 0) result.to_wall = out;
  }
  return result;
}

/// Unknowns of a part: streams, inner nodes, outer nodes.
constexpr std::size_t unknowns = 6;
using Unknowns = std::array<double, unknowns>;

/// One step of backward Euler, y = inverse (y + step wall by_wall), and the heat to the wall, to_wall . (y, wall).
struct Implicit {
  std::array<Unknowns, unknowns> inverse{};
  Unknowns by_wall{};
  std::array<double, unknowns + 1> to_wall{};
};

Unknowns rates(const Slopes& slopes) {
  return {slopes.stream[0], slopes.stream[1], slopes.inner[0], slopes.inner[1], slopes.outer[0], slopes.outer[1]};
}

Implicit implicit(const std::array<PlugMode, 2>& modes, const std::array<double, 2>& capacity, double of_the_minute) {
  const auto at = [&](const Unknowns& y, double wall) {
    return slopes(modes, capacity, {y[0], y[1]}, {{y[2], y[3]}, {y[4], y[5]}}, wall, of_the_minute);
  };
  Implicit result;
  std::array<Unknowns, unknowns> matrix{};
  for (std::size_t j = 0; j < unknowns; ++j) {
    Unknowns unit{};
    unit[j] = 1;
    const Slopes by = at(unit, 0);
    for (std::size_t i = 0; i < unknowns; ++i) matrix[i][j] = (i == j ? 1 : 0) - step * rates(by)[i];
    result.inverse[j][j] = 1;
    result.to_wall[j] = by.to_wall;
  }
  result.by_wall = rates(at({}, 1));
  result.to_wall[unknowns] = at({}, 1).to_wall;
  for (std::size_t p = 0; p < unknowns; ++p) {  // Gauss and Jordan; the diagonal dominates
    const double pivot = matrix[p][p];
    for (std::size_t j = 0; j < unknowns; ++j) matrix[p][j] /= pivot, result.inverse[p][j] /= pivot;
    for (std::size_t i = 0; i < unknowns; ++i) {
      const double factor = i == p ? 0 : matrix[i][p];
      for (std::size_t j = 0; j < unknowns; ++j) {
        matrix[i][j] -= factor * matrix[p][j];
        result.inverse[i][j] -= factor * result.inverse[p][j];
      }
    }
  }
  return result;
}

/// Parcels of a stream in the order of flow, the first to come out last.
using Parcels = std::vector<double>;

class March {
 public:
  explicit March(const PlugBore& bore) : bore_(bore), parts_(parts), wall_(parts), sums_(parts), history_(parts) {
    constexpr int slices = 600;
    for (int n = 0; n < slices; ++n) of_the_minute_ += wall_response(bore, (n + 0.5) * minute / slices) / slices;
    response_.push_back(wall_response(bore, minute / 2));
    flowing_ = implicit(bore.flowing, bore.capacity, of_the_minute_);
    standing_ = implicit(bore.standing, bore.capacity, of_the_minute_);
    for (std::size_t s = 0; s < 2; ++s) {
      const double held = bore.capacity[s] * bore.length / (bore.heat_rate * step);
      stream_[s].assign(std::max<std::size_t>(parts, static_cast<std::size_t>(std::lround(held))), 0.0);
    }
  }

  /// The minute that begins at `start` [s].
  double one_minute(double start, const std::function<double(double)>& heat) {
    const bool stands = heat(start) == 0;
    const Implicit& by = stands ? standing_ : flowing_;
    double came_back = 0;
    for (int n = 0; n < steps_a_minute; ++n) {
      exchange(by);
      if (stands) continue;
      const double back = stream_[1].back();
      came_back += back / steps_a_minute;
      move(stream_[1], stream_[0].back());
      move(stream_[0], back + heat(start + (n + 0.5) * step) / bore_.heat_rate);
    }
    warm_wall();
    return stands ? std::numeric_limits<double>::quiet_NaN() : came_back;
  }

 private:
  static void move(Parcels& parcels, double entering) {
    std::rotate(parcels.begin(), parcels.end() - 1, parcels.end());
    parcels.front() = entering;
  }

  /// The parcels of stream s that stand in a part: down from the top, up from the toe.
  std::pair<std::size_t, std::size_t> standing_in(std::size_t s, std::size_t part) const {
    const std::size_t place = s == 0 ? part : parts - 1 - part, n = stream_[s].size();
    return {place * n / parts, (place + 1) * n / parts};
  }

  void exchange(const Implicit& by) {
    for (std::size_t p = 0; p < parts; ++p) {
      Unknowns old{0, 0, parts_[p].inner[0], parts_[p].inner[1], parts_[p].outer[0], parts_[p].outer[1]}, now{};
      for (std::size_t s = 0; s < 2; ++s) {
        const auto [first, end] = standing_in(s, p);
        for (std::size_t i = first; i < end; ++i) old[s] += stream_[s][i] / static_cast<double>(end - first);
      }
      double to_wall = by.to_wall[unknowns] * wall_[p];
      for (std::size_t i = 0; i < unknowns; ++i) {
        for (std::size_t j = 0; j < unknowns; ++j) {
          now[i] += by.inverse[i][j] * (old[j] + step * wall_[p] * by.by_wall[j]);
        }
        to_wall += by.to_wall[i] * now[i];
      }
      for (std::size_t s = 0; s < 2; ++s) {
        const auto [first, end] = standing_in(s, p);
        for (std::size_t i = first; i < end; ++i) stream_[s][i] += now[s] - old[s];
      }
      parts_[p] = {{now[2], now[3]}, {now[4], now[5]}};
      sums_[p] += to_wall / steps_a_minute;
    }
  }

  /// The walls in the middle of the next minute, for the heat of all before it.
  void warm_wall() {
    response_.push_back(wall_response(bore_, (static_cast<double>(response_.size()) + 0.5) * minute));
    for (std::size_t p = 0; p < parts; ++p) {
      history_[p].push_back(sums_[p]);
      sums_[p] = wall_[p] = 0;
      for (std::size_t i = 0; i < history_[p].size(); ++i) {
        const std::size_t age = history_[p].size() - i;
        wall_[p] += history_[p][i] * (response_[age] - response_[age - 1]);
      }
    }
  }

  const PlugBore& bore_;
  std::array<Parcels, 2> stream_;
  Implicit flowing_, standing_;
  std::vector<Part> parts_;
  std::vector<double> wall_, sums_;           // [part]: rise [K]; heat of the minute so far [W/m]
  std::vector<std::vector<double>> history_;  // [part][minute] [W/m]
  std::vector<double> response_;              // [minute]: in its middle [K m/W]
  double of_the_minute_ = 0;                  // mean over a minute of the wall's rise by its own heat [K m/W]
};

}  // namespace

std::vector<double> plug_flow_minutes(const PlugBore& bore, std::size_t minutes,
                                      const std::function<double(double)>& heat) {
  return plug_flow_minutes(bore, minutes, 0, {heat}).front();
}

std::vector<std::vector<double>> plug_flow_minutes(const PlugBore& bore, std::size_t minutes, std::size_t alike,
                                                   const std::vector<std::function<double(double)>>& heats) {
  March begun(bore);
  std::vector<double> first;
  const auto at = [](std::size_t n) { return static_cast<double>(n) * minute; };
  for (std::size_t n = 0; n < alike; ++n) first.push_back(begun.one_minute(at(n), heats.front()));
  std::vector<std::vector<double>> courses;
  for (const auto& heat : heats) {
    March march = begun;
    courses.push_back(first);
    for (std::size_t n = alike; n < minutes; ++n) courses.back().push_back(march.one_minute(at(n), heat));
  }
  return courses;
}

}  // namespace stillground::reference_solutions
