#pragma once

#include "engine/record/frames.hpp"
#include "engine/record/journal/bytes.hpp"

/// Frames as records of the journal. Decoding throws std::out_of_range where the bytes end too early.
namespace stillground::record {

Bytes encode(std::span<const Hour> hours);
Bytes encode(const Snapshot& snapshot);
Bytes encode(const YearMean& mean);
Bytes encode(const YearBalance& balance);

std::vector<Hour> decode_hours(std::span<const std::byte> bytes);
Snapshot decode_snapshot(std::span<const std::byte> bytes);
YearMean decode_year_mean(std::span<const std::byte> bytes);
YearBalance decode_year_balance(std::span<const std::byte> bytes);

}  // namespace stillground::record
