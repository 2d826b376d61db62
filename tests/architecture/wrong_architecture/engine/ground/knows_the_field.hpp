#include "engine/field/groups.hpp"
