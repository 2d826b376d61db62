#include "engine/bore/loop_type.hpp"

#include <variant>

namespace stillground::bore {

const LoopType& loop_type(const model::Loop& loop) {
  return std::visit([](const auto& type) -> const LoopType& { return type_of(type); }, loop);
}

std::span<const NamedLoopType> loop_types() {
#define STILLGROUND_ROW(type, word, what) {word, what, type_of(model::type{})},
  static const NamedLoopType all[] = {STILLGROUND_LOOP_TYPES(STILLGROUND_ROW)};
#undef STILLGROUND_ROW
  return all;
}

}  // namespace stillground::bore
