#include <CLI/CLI.hpp>
#include <spdlog/spdlog.h>
