#include "engine/bore/same_section.hpp"

#include <tuple>

namespace stillground::bore {

namespace {

// Taken apart member by member, so that one more does not compile until it has been thought of.

auto of(const model::Solid& solid) {
  const auto& [conductivity, heat_capacity] = solid;
  return std::tuple(conductivity, heat_capacity);
}

auto of(const model::Pipe& pipe) {
  const auto& [name, outer_diameter, wall, conductivity, heat_capacity, roughness, source] = pipe;
  return std::tuple(outer_diameter, wall, conductivity, heat_capacity, roughness);
}

auto of(const model::SingleU& loop) {
  const auto& [leg_spacing] = loop;
  return std::tuple(leg_spacing);
}

auto of(const model::DoubleU& loop) {
  const auto& [leg_spacing, connection, opposite_legs] = loop;
  return std::tuple(leg_spacing, connection, opposite_legs);
}

auto of(const model::Coaxial& loop) {
  const auto& [inner, down] = loop;
  return std::tuple(of(inner), down);
}

bool same(const model::Loop& a, const model::Loop& b) {
  return a.index() == b.index() && std::visit(
                                       [&](const auto& loop) {
                                         using Type = std::decay_t<decltype(loop)>;
                                         return of(loop) == of(std::get<Type>(b));
                                       },
                                       a);
}

}  // namespace

bool same_section(const model::Bore& a, const model::Bore& b) {
  return a.diameter == b.diameter && same(a.loop, b.loop) && of(a.pipe) == of(b.pipe) &&
         of(a.grout.solid) == of(b.grout.solid);
}

}  // namespace stillground::bore
