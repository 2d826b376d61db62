#include <fmt/format.h>

#include "engine/config/catalogue.hpp"
#include "engine/config/parts.hpp"

namespace stillground::config {
namespace {

/// Sizes in inches and millimetres of one pipe differ by round-off.
constexpr double round_off = 1e-9;

model::Pipe read_pipe(const Section& bore, Context& context) {
  const Section own = bore.section("pipe");
  const Section pipe = with_catalogue(own, "pipes", context);
  model::Pipe result;
  if (own.has("use")) result.name = own.text("use");
  result.outer_diameter = pipe.quantity("outer_diameter");
  result.wall = pipe.quantity("wall");
  result.conductivity = pipe.quantity("conductivity");
  result.heat_capacity = pipe.quantity("heat_capacity");
  result.roughness = pipe.quantity("roughness");
  // A bore narrower than this carries no flow worth a loop.
  if (result.inner_diameter() < 0.2 * result.outer_diameter) {
    pipe.where("wall").refuse(fmt::format("{:.4g} mm is too thick for a pipe of {:.4g} mm (allowed: up to {:.4g} mm)",
                                          1e3 * result.wall, 1e3 * result.outer_diameter, 400 * result.outer_diameter));
  }
  if (result.roughness > 0.05 * result.inner_diameter()) {
    pipe.where("roughness")
        .refuse(fmt::format("{:.4g} mm is too rough for an inner diameter of {:.4g} mm (allowed: 5 %)",
                            1e3 * result.roughness, 1e3 * result.inner_diameter()));
  }
  return result;
}

model::Grout read_grout(const Section& bore, Context& context) {
  const Section own = bore.section("grout");
  const Section grout = with_catalogue(own, "grouts", context);
  model::Grout result;
  if (own.has("use")) result.name = own.text("use");
  result.solid = {grout.quantity("conductivity"), grout.quantity("heat_capacity")};
  return result;
}

model::SingleU read_single_u(const Section& bore, double diameter, const model::Pipe& pipe) {
  const double least = pipe.outer_diameter, most = diameter - pipe.outer_diameter;
  if (least > most + round_off) {
    bore.where("diameter")
        .refuse(fmt::format("two legs of {:.4g} mm do not fit side by side in a bore of {:.4g} mm",
                            1e3 * pipe.outer_diameter, 1e3 * diameter));
  }
  const double spacing = bore.quantity("leg_spacing");
  if (spacing < least - round_off || spacing > most + round_off) {
    bore.where("leg_spacing")
        .refuse(fmt::format(
            "{:.4g} mm between the legs' centres: {} (allowed for this pipe and bore: {:.4g} mm to {:.4g} mm)",
            1e3 * spacing, spacing < least ? "the legs overlap" : "the legs do not fit in the bore", 1e3 * least,
            1e3 * most));
  }
  return {spacing};
}

void refuse_other_loops(const Section& bore) {
  if (!bore.has("loop")) return;
  const std::string& given = bore.node("loop").text;
  if (given == "double-u" || given == "coaxial") {
    bore.where("loop").refuse(fmt::format("\"{}\" is not available yet (allowed: single-u)", given));
  }
}

}  // namespace

model::Bore read_bore(const Section& root, Context& context) {
  const Section bore = root.section("bore");
  model::Bore result;
  result.top = bore.quantity("top");
  result.depth = bore.quantity("depth");
  result.diameter = bore.quantity("diameter");
  refuse_other_loops(bore);
  bore.word("loop");
  result.pipe = read_pipe(bore, context);
  result.loop = read_single_u(bore, result.diameter, result.pipe);
  result.grout = read_grout(bore, context);
  result.resistance = bore.optional_quantity("resistance");
  result.drilled_from_trench = bore.word("drilled_from") == "trench";
  return result;
}

}  // namespace stillground::config
