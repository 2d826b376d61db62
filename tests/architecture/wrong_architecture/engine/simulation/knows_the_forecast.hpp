#include "engine/forecast/merging.hpp"
