#pragma once

#include <string>
#include <vector>

#include "engine/record/frames.hpp"
#include "engine/record/journal/bytes.hpp"

namespace stillground::record {

/// What must be equal for a run to go on from another's checkpoint: everything in the header that the march depends on,
/// or that stands in the result and would then be wrong. Warnings are left out: their wording may name another path.
struct Identity {
  struct Part {
    std::string name;   ///< "scenario text", "input file loads.csv"
    std::string value;  ///< as people read it, or raw bytes
    bool readable = true;
  };
  std::vector<Part> parts;
};

Identity identity_of(const Header& header);

/// The instruction set that the run was marched with; empty where that is not said.
std::string instruction_set(const Identity& identity);

Bytes encode(const Identity& identity);

/// Throws std::out_of_range if the bytes are no identity.
Identity decode_identity(std::span<const std::byte> bytes);

/// What differs, in words, one entry a part: `engine version ("0.1.0" then, "0.2.0" now)`; empty if nothing does.
std::vector<std::string> differences(const Identity& then, const Identity& now);

}  // namespace stillground::record
