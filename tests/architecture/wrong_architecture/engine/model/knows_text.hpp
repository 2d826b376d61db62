#include "engine/units/quantity.hpp"
