#include "engine/ground/grid.hpp"
