#pragma once

#include "engine/assembly/assembly.hpp"
#include "engine/record/frames.hpp"

namespace stillground::job {

/// Everything about the run that is known before its first step, as the result file carries it; the error estimate is
/// made here.
record::Header make_header(const assembly::Assembly& assembly, const std::vector<Warning>& warnings);

/// Warnings as the result keeps them: files by name, without the folders of the machine that ran.
std::vector<std::string> stored_lines(const std::vector<Warning>& warnings);

}  // namespace stillground::job
