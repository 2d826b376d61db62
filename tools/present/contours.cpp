#include "tools/present/contours.hpp"

#include <algorithm>
#include <array>
#include <cstddef>

namespace stillground::present {

namespace {

constexpr std::size_t none = static_cast<std::size_t>(-1);

/// The field with a ring of nodes below every level about it, which lie where the edge's nodes do: so every line
/// closes, along the edge where it has to.
class Padded {
 public:
  Padded(const Field& field, double level)
      : field_(field), level_(level), nx_(field.x.size() + 2), ny_(field.y.size() + 2), next_(2 * nx_ * ny_, none) {
    for (std::size_t j = 0; j + 1 < ny_; ++j) {
      for (std::size_t i = 0; i + 1 < nx_; ++i) cross(i, j);
    }
  }

  std::vector<Loop> loops() {
    std::vector<Loop> all;
    for (std::size_t first = 0; first < next_.size(); ++first) {
      if (next_[first] == none) continue;
      Loop loop;
      for (std::size_t edge = first; next_[edge] != none;) {
        const std::size_t to = next_[edge];
        next_[edge] = none;
        loop.points.push_back(point(edge));
        loop.on_edge.push_back(outside(edge) || outside(to));
        edge = to;
      }
      all.push_back(std::move(loop));
    }
    return all;
  }

 private:
  // An edge from node (i, j) on: 2 (j nx + i) to the right, 1 more upwards.
  std::size_t right(std::size_t i, std::size_t j) const { return 2 * (j * nx_ + i); }
  std::size_t up(std::size_t i, std::size_t j) const { return right(i, j) + 1; }

  bool ring(std::size_t i, std::size_t j) const { return i == 0 || j == 0 || i == nx_ - 1 || j == ny_ - 1; }
  double value(std::size_t i, std::size_t j) const { return field_.values[(j - 1) * (nx_ - 2) + i - 1]; }
  bool above(std::size_t i, std::size_t j) const { return !ring(i, j) && value(i, j) >= level_; }

  /// Whether an edge has an end on the ring.
  bool outside(std::size_t edge) const {
    const std::size_t i = edge / 2 % nx_, j = edge / 2 / nx_;
    return ring(i, j) || (edge % 2 == 0 ? ring(i + 1, j) : ring(i, j + 1));
  }

  Point at(std::size_t i, std::size_t j) const {
    return {field_.x[std::clamp<std::size_t>(i, 1, nx_ - 2) - 1], field_.y[std::clamp<std::size_t>(j, 1, ny_ - 2) - 1]};
  }

  Point point(std::size_t edge) const {
    const std::size_t i = edge / 2 % nx_, j = edge / 2 / nx_, i2 = i + (edge % 2 == 0 ? 1 : 0), j2 = j + edge % 2;
    const Point a = at(i, j), b = at(i2, j2);
    if (outside(edge)) return a;  // its ends lie on one place
    const double part = (level_ - value(i, j)) / (value(i2, j2) - value(i, j));
    return {a.x + part * (b.x - a.x), a.y + part * (b.y - a.y)};
  }

  /// The mean of a cell's four nodes, none of them on the ring.
  double middle(std::size_t i, std::size_t j) const {
    return (value(i, j) + value(i + 1, j) + value(i, j + 1) + value(i + 1, j + 1)) / 4;
  }

  /// Enters the pieces of a cell, the higher ground at their left.
  void cross(std::size_t i, std::size_t j) {
    // Round the cell counter-clockwise: the edge that leads from each corner to the next.
    const std::array<bool, 4> high = {above(i, j), above(i + 1, j), above(i + 1, j + 1), above(i, j + 1)};
    const std::array<std::size_t, 4> edge = {right(i, j), up(i + 1, j), right(i, j + 1), up(i, j)};
    // A line comes in where the corners' way round goes up to high ground's end, and leaves where that begins.
    std::vector<std::size_t> in, out;
    for (std::size_t c = 0; c < 4; ++c) {
      const bool here = high.at(c), next = high.at((c + 1) % 4);
      if (here && !next) out.push_back(c);
      if (!here && next) in.push_back(c);
    }
    if (in.empty()) return;
    if (in.size() == 1) {
      link(edge.at(out[0]), edge.at(in[0]));
      return;
    }
    // A saddle: its high corners hang together where the middle is high. Then each low corner is cut off alone.
    const bool joined = middle(i, j) >= level_;
    for (const std::size_t o : out) {
      const std::size_t low_corner = (o + 1) % 4;  // after the edge where high ground ends
      const std::size_t partner = joined ? low_corner : (o + 3) % 4;
      link(edge.at(o), edge.at(partner));
    }
  }

  /// High ground at the left of the way from the edge where it ends to that where it begins.
  void link(std::size_t from, std::size_t to) { next_[from] = to; }

  Field field_;
  double level_;
  std::size_t nx_, ny_;
  std::vector<std::size_t> next_;
};

}  // namespace

std::vector<Loop> loops_above(const Field& field, double level) {
  return Padded(field, level).loops();
}

std::vector<std::vector<Point>> level_lines(const std::vector<Loop>& loops) {
  std::vector<std::vector<Point>> lines;
  for (const Loop& loop : loops) {
    const std::size_t n = loop.points.size();
    const auto gap =
        static_cast<std::size_t>(std::find(loop.on_edge.begin(), loop.on_edge.end(), true) - loop.on_edge.begin());
    std::vector<Point> line;
    for (std::size_t k = 0; k < n; ++k) {
      const std::size_t piece = (gap + k) % n;  // from a piece on the edge on, if there is one
      if (loop.on_edge[piece]) {
        if (line.size() > 1) lines.push_back(line);
        line.clear();
        continue;
      }
      if (line.empty()) line.push_back(loop.points[piece]);
      line.push_back(loop.points[(piece + 1) % n]);
    }
    if (line.size() > 1) lines.push_back(line);
  }
  return lines;
}

}  // namespace stillground::present
