#include "engine/run/run.hpp"
