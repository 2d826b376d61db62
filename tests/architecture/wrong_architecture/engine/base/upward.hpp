#include "engine/model/solid.hpp"
