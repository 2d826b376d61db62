#pragma once

#include <CLI/CLI.hpp>
#include <string>

namespace stillground::program {

/// The options of a program for who completes them in a shell, a line each, parts set apart by tabs: its names ("-o
/// --output"), what it takes ("FILE", "si|us", empty for a flag), and what it is. Arguments without a name come first
/// with the name they are shown by.
std::string options_list(const CLI::App& app);

}  // namespace stillground::program
