#include <udunits2.h>
