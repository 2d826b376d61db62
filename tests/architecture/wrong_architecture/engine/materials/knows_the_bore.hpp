#include "engine/bore/multipole.hpp"
