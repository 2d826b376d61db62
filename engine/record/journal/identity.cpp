#include "engine/record/journal/identity.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace stillground::record {

namespace {

constexpr const char* instruction_set_part = "instruction set";

/// Longer values (a scenario's text, a compiler's flags) are not quoted in a message.
constexpr std::size_t longest_quoted = 40;

std::string raw(const Encoder& encoder) {
  const Bytes& bytes = encoder.bytes();
  return {reinterpret_cast<const char*>(bytes.data()), bytes.size()};
}

Encoder layout_of(const Header& header) {
  Encoder encoder;
  for (const BoreRow& bore : header.bores) {
    encoder.number(bore.x).number(bore.y).number(bore.top).number(bore.depth);
    encoder.number(bore.radius).number(bore.start).number(bore.group);
  }
  return encoder;
}

Encoder grid_of(const Header& header) {
  Encoder encoder;
  encoder.array(header.z_faces).array(header.z).array(header.r_faces).array(header.r);
  encoder.number(header.groups).array(header.active_fraction);
  return encoder;
}

Encoder materials_of(const Header& header) {
  Encoder encoder;
  encoder.array(header.conductivity).array(header.heat_capacity);
  encoder.array(header.grout_storage)
      .array(header.fluid_storage_down)
      .array(header.fluid_storage_up)
      .number(header.fluid_heat_capacity);
  return encoder;
}

Encoder limits_of(const Header& header) {
  Encoder encoder;
  encoder.number(header.drill_length);
  for (const LimitRow& limit : header.limits) {
    encoder.text(limit.name).text(limit.quantity).number(limit.is_least).text(limit.over).number(limit.value);
  }
  return encoder;
}

const Identity::Part* find(const Identity& identity, const std::string& name) {
  const auto part = std::find_if(identity.parts.begin(), identity.parts.end(),
                                 [&](const Identity::Part& candidate) { return candidate.name == name; });
  return part == identity.parts.end() ? nullptr : &*part;
}

std::string difference(const Identity::Part& then, const Identity::Part& now) {
  if (!then.readable || std::max(then.value.size(), now.value.size()) > longest_quoted) return now.name;
  return fmt::format("{} (\"{}\" then, \"{}\" now)", now.name, then.value, now.value);
}

}  // namespace

Identity identity_of(const Header& header) {
  Identity identity;
  const auto add = [&](std::string name, std::string value) {
    identity.parts.push_back({std::move(name), std::move(value), true});
  };
  add("title", header.title);
  add("scenario text", header.scenario_text);
  for (const auto& [file, digest] : header.inputs) add("input file " + file, digest);
  add("engine version", header.engine_version);
  add("build", header.build);
  add(instruction_set_part, header.instruction_set);
  add("method", header.method);
  add("start", iso(header.start));
  add("years", std::to_string(header.years));
  add("step in seconds", fmt::format("{}", header.step));
  add("recorded fields", header.fields);
  add("heat pump", header.has_heat_pump ? "yes" : "no");
  identity.parts.push_back({"layout of the bores", raw(layout_of(header)), false});
  identity.parts.push_back({"grid", raw(grid_of(header)), false});
  identity.parts.push_back({"materials", raw(materials_of(header)), false});
  identity.parts.push_back({"limits", raw(limits_of(header)), false});
  return identity;
}

std::string instruction_set(const Identity& identity) {
  const Identity::Part* part = find(identity, instruction_set_part);
  return part ? part->value : "";
}

Bytes encode(const Identity& identity) {
  Encoder encoder;
  for (const Identity::Part& part : identity.parts) {
    encoder.text(part.name).text(part.value).number(part.readable);
  }
  return encoder.bytes();
}

Identity decode_identity(std::span<const std::byte> bytes) {
  Identity identity;
  for (Decoder decoder(bytes); !decoder.empty();) {
    Identity::Part part;
    part.name = decoder.text();
    part.value = decoder.text();
    part.readable = decoder.number<std::uint8_t>() != 0;
    identity.parts.push_back(std::move(part));
  }
  return identity;
}

std::vector<std::string> differences(const Identity& then, const Identity& now) {
  std::vector<std::string> found;
  for (const Identity::Part& part : now.parts) {
    const Identity::Part* before = find(then, part.name);
    if (before == nullptr) {
      found.push_back(part.name + " (not there then)");
    } else if (before->value != part.value) {
      found.push_back(difference(*before, part));
    }
  }
  for (const Identity::Part& part : then.parts) {
    if (find(now, part.name) == nullptr) found.push_back(part.name + " (not there now)");
  }
  return found;
}

}  // namespace stillground::record
