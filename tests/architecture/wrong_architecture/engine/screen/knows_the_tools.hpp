#include "tools/present/table.hpp"
