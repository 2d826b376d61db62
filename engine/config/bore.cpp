#include <fmt/format.h>

#include <initializer_list>
#include <numbers>

#include "engine/config/catalogue.hpp"
#include "engine/config/parts.hpp"

namespace stillground::config {
namespace {

/// Sizes in inches and millimetres of one pipe differ by round-off.
constexpr double round_off = 1e-9;

model::Pipe read_pipe(const Section& bore, const char* leaf, Context& context) {
  const Section own = bore.section(leaf);
  const auto [pipe, source] = with_catalogue(own, "pipes", context);
  model::Pipe result;
  result.source = source;
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
  const auto [grout, source] = with_catalogue(own, "grouts", context);
  model::Grout result;
  if (!own.has("conductivity") || !own.has("heat_capacity")) result.source = source;
  if (own.has("use")) result.name = own.text("use");
  result.solid = {grout.quantity("conductivity"), grout.quantity("heat_capacity")};
  return result;
}

/// Where legs on a circle may stand: distances between opposite ones [m].
struct Spacings {
  double least = 0;  ///< they touch each other
  double most = 0;   ///< they touch the bore's wall
};

Spacings spacings(const Section& bore, double diameter, const model::Pipe& pipe, int legs) {
  const double neighbours = legs == 4 ? std::numbers::sqrt2 : 1.0;  // of four legs those beside touch first
  const Spacings range{neighbours * pipe.outer_diameter, diameter - pipe.outer_diameter};
  if (range.least > range.most + round_off) {
    bore.where("diameter")
        .refuse(fmt::format("{} legs of {:.4g} mm do not fit side by side in a bore of {:.4g} mm",
                            legs == 4 ? "four" : "two", 1e3 * pipe.outer_diameter, 1e3 * diameter));
  }
  return range;
}

double read_spacing(const Section& bore, double diameter, const model::Pipe& pipe, int legs) {
  const Spacings range = spacings(bore, diameter, pipe, legs);
  if (bore.one_of({"leg_spacing", "legs"}) == "legs") {
    const std::string where = bore.word("legs");
    return where == "touching" ? range.least : where == "midway" ? (range.least + range.most) / 2 : range.most;
  }
  const double spacing = bore.quantity("leg_spacing");
  if (spacing < range.least - round_off || spacing > range.most + round_off) {
    bore.where("leg_spacing")
        .refuse(fmt::format(
            "{:.4g} mm between the legs' centres: {} (allowed for this pipe and bore: {:.4g} mm to {:.4g} mm)",
            1e3 * spacing, spacing < range.least ? "the legs overlap" : "the legs do not fit in the bore",
            1e3 * range.least, 1e3 * range.most));
  }
  return spacing;
}

model::DoubleU read_double_u(const Section& bore, double diameter, const model::Pipe& pipe) {
  model::DoubleU loop;
  loop.leg_spacing = read_spacing(bore, diameter, pipe, 4);
  loop.connection =
      bore.word("connection") == "series" ? model::DoubleU::Connection::series : model::DoubleU::Connection::parallel;
  loop.crossed = bore.word("each_u") == "opposite";
  return loop;
}

model::Coaxial read_coaxial(const Section& bore, double diameter, const model::Pipe& outer, Context& context) {
  if (outer.outer_diameter > diameter + round_off) {
    bore.where("pipe").refuse(fmt::format("an outer pipe of {:.4g} mm does not fit in a bore of {:.4g} mm",
                                          1e3 * outer.outer_diameter, 1e3 * diameter));
  }
  model::Coaxial loop;
  loop.inner = read_pipe(bore, "inner_pipe", context);
  if (loop.inner.outer_diameter > 0.98 * outer.inner_diameter()) {
    bore.where("inner_pipe")
        .refuse(fmt::format("an inner pipe of {:.4g} mm leaves no annulus in an outer one of {:.4g} mm within",
                            1e3 * loop.inner.outer_diameter, 1e3 * outer.inner_diameter()));
  }
  loop.down = bore.word("down") == "inner" ? model::Coaxial::Down::inner : model::Coaxial::Down::annulus;
  return loop;
}

std::optional<model::MeasuredResistance> read_resistance(const Section& bore) {
  if (!bore.has("resistance")) return std::nullopt;
  if (bore.node("resistance").kind == Node::Kind::map) {
    const Section test = bore.section("resistance");
    return model::MeasuredResistance{test.quantity("effective"), test.optional_quantity("at_flow"),
                                     test.optional_quantity("over")};
  }
  return model::MeasuredResistance{bore.quantity("resistance"), {}, {}};
}

model::Loop read_loop(const Section& bore, double diameter, const model::Pipe& pipe, Context& context) {
  const std::string type = bore.word("loop");
  const auto only_for = [&](const char* loop, std::initializer_list<const char*> leaves) {
    for (const char* leaf : leaves) {
      if (type != loop) bore.forbid(leaf, fmt::format("belongs to \"loop: {}\"; here it is {}", loop, type));
    }
  };
  only_for("double-u", {"connection", "each_u"});
  only_for("coaxial", {"inner_pipe", "down"});
  if (type == "coaxial") {
    for (const char* leaf : {"leg_spacing", "legs"}) bore.forbid(leaf, "a coaxial loop has no legs");
    return read_coaxial(bore, diameter, pipe, context);
  }
  if (type == "double-u") return read_double_u(bore, diameter, pipe);
  return model::SingleU{read_spacing(bore, diameter, pipe, 2)};
}

}  // namespace

model::Bore read_bore(const Section& root, Context& context) {
  const Section bore = root.section("bore");
  model::Bore result;
  result.top = bore.quantity("top");
  result.depth = bore.quantity("depth");
  result.diameter = bore.quantity("diameter");
  result.pipe = read_pipe(bore, "pipe", context);
  result.loop = read_loop(bore, result.diameter, result.pipe, context);
  result.grout = read_grout(bore, context);
  result.resistance = read_resistance(bore);
  result.drilled_from_trench = bore.word("drilled_from") == "trench";
  return result;
}

}  // namespace stillground::config
