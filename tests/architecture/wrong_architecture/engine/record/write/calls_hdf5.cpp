#include <vector>
#include <hdf5.h>
  #  include <H5public.h>
