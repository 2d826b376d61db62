#include "engine/record/journal/frame_bytes.hpp"

namespace stillground::record {

// A member added to one of these must be added to its record: the sizes remind of it.
static_assert(sizeof(Hour) == 11 * sizeof(double) && sizeof(YearBalance) == 5 * sizeof(double));

Bytes encode(std::span<const Hour> hours) {
  return Encoder().array(hours).bytes();
}

Bytes encode(const YearBalance& balance) {
  return Encoder().number(balance).bytes();
}

Bytes encode(const YearMean& mean) {
  return Encoder().array(mean.rise).bytes();
}

Bytes encode(const Snapshot& snapshot) {
  Encoder encoder;
  encoder.number(snapshot.time).array(snapshot.rise).array(snapshot.undisturbed);
  encoder.array(snapshot.wall_temperature).array(snapshot.fluid_down).array(snapshot.fluid_up).array(snapshot.grout);
  encoder.array(snapshot.fluid_heat);
  return encoder.bytes();
}

std::vector<Hour> decode_hours(std::span<const std::byte> bytes) {
  return Decoder(bytes).array<Hour>();
}

YearBalance decode_year_balance(std::span<const std::byte> bytes) {
  return Decoder(bytes).number<YearBalance>();
}

YearMean decode_year_mean(std::span<const std::byte> bytes) {
  return {Decoder(bytes).array<float>()};
}

Snapshot decode_snapshot(std::span<const std::byte> bytes) {
  Decoder decoder(bytes);
  Snapshot snapshot;
  snapshot.time = decoder.number<double>();
  snapshot.rise = decoder.array<float>();
  snapshot.undisturbed = decoder.array<double>();
  snapshot.wall_temperature = decoder.array<double>();
  snapshot.fluid_down = decoder.array<double>();
  snapshot.fluid_up = decoder.array<double>();
  snapshot.grout = decoder.array<double>();
  snapshot.fluid_heat = decoder.array<double>();
  return snapshot;
}

}  // namespace stillground::record
