#include "engine/record/hdf5/file.hpp"

#include <fcntl.h>
#include <unistd.h>

namespace stillground::record::hdf5 {

namespace {

Handle access_properties() {
  Handle access(H5Pcreate(H5P_FILE_ACCESS), H5Pclose, "file access properties");
  // 1.8's object headers: attributes beyond 64 KB need them, and every netCDF-4 library reads them.
  checked(H5Pset_libver_bounds(access.id(), H5F_LIBVER_V18, H5F_LIBVER_V18), "format bounds");
  // A result is written under a temporary name and never changed afterwards: a lock would only fail on network disks.
  checked(H5Pset_file_locking(access.id(), false, true), "file locking");
  return access;
}

}  // namespace

File File::create(const std::filesystem::path& path) {
  silence();
  const Handle creation(H5Pcreate(H5P_FILE_CREATE), H5Pclose, "file creation properties");
  constexpr unsigned in_order = H5P_CRT_ORDER_TRACKED | H5P_CRT_ORDER_INDEXED;
  checked(H5Pset_link_creation_order(creation.id(), in_order), "order of links");
  checked(H5Pset_attr_creation_order(creation.id(), in_order), "order of attributes");
  checked(H5Pset_obj_track_times(creation.id(), false), "no time stamps");
  const Handle access = access_properties();
  return File(Handle(H5Fcreate(path.c_str(), H5F_ACC_TRUNC, creation.id(), access.id()), H5Fclose, "cannot be created"),
              true);
}

File File::open(const std::filesystem::path& path) {
  silence();
  const Handle access = access_properties();
  return File(Handle(H5Fopen(path.c_str(), H5F_ACC_RDONLY, access.id()), H5Fclose, "cannot be opened"), false);
}

File::~File() {
  if (writable_ && file_.id() >= 0) abandon();
}

bool File::has(const char* name) const {
  return H5Lexists(file_.id(), name, H5P_DEFAULT) > 0;
}

void File::close() {
  try {
    checked(H5Fflush(file_.id(), H5F_SCOPE_LOCAL), "cannot be written");
  } catch (...) {
    abandon();
    throw;
  }
  file_.close("cannot be closed");
}

void File::abandon() noexcept {
  // On a full disk the library can neither flush nor close the file, keeps it open and tries again when the program
  // ends. So its descriptor is pointed at nothing: what it has left to write goes there, and the file closes.
  void* descriptor = nullptr;
  if (H5Fget_vfd_handle(file_.id(), H5P_DEFAULT, &descriptor) >= 0 && descriptor != nullptr) {
    const int nothing = ::open("/dev/null", O_RDWR | O_CLOEXEC);
    if (nothing >= 0) {
      ::dup2(nothing, *static_cast<int*>(descriptor));
      ::close(nothing);
    }
  }
  file_ = Handle();
}

}  // namespace stillground::record::hdf5
