#include "engine/record/spool/spool.hpp"
