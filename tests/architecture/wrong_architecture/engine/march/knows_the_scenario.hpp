#include "engine/model/scenario.hpp"
