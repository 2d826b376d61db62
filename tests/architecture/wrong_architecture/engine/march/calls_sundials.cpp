#include <cvode/cvode.h>
#include <sundials/sundials_types.h>
#include <arkode/arkode_arkstep.h>
#include <nvector/nvector_serial.h>
#include <kinsol/kinsol.h>
