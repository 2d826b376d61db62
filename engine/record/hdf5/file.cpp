#include "engine/record/hdf5/file.hpp"

#include <fcntl.h>
#include <sys/mman.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>

namespace stillground::record::hdf5 {

namespace {

Handle access_properties() {
  Handle access(H5Pcreate(H5P_FILE_ACCESS), H5Pclose, "file access properties");
  // 1.8's object headers: attributes beyond 64 KB need them, and every netCDF-4 library reads them.
  checked(H5Pset_libver_bounds(access.id(), H5F_LIBVER_V18, H5F_LIBVER_V18), "format bounds");
  // A result is written under a temporary name and never changed afterwards: a lock would only fail on network disks.
  checked(H5Pset_file_locking(access.id(), false, true), "file locking");
  // Nothing is held back that would fail where nobody asks: see Dataset::create.
  checked(H5Pset_sieve_buf_size(access.id(), 0), "sieve buffer");
  return access;
}

}  // namespace

File File::create(const std::filesystem::path& path) {
  prepare_library();
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
  prepare_library();
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
  reserve();
  checked(H5Fflush(file_.id(), H5F_SCOPE_LOCAL), "cannot be written");
  file_.close("cannot be closed");
}

int* File::descriptor() const {
  void* descriptor = nullptr;
  return H5Fget_vfd_handle(file_.id(), H5P_DEFAULT, &descriptor) < 0 ? nullptr : static_cast<int*>(descriptor);
}

void File::reserve() const {
  hsize_t size = 0;
  checked(H5Fget_filesize(file_.id(), &size), "has no size");
  const int* number = descriptor();
  if (number == nullptr) return;
  const int error = ::posix_fallocate(*number, 0, static_cast<off_t>(size));
  if (error != 0 && error != EINVAL && error != EOPNOTSUPP) throw Failure("cannot be written", std::strerror(error));
}

void File::abandon() noexcept {
  // On a full disk the library could not close the file. So its descriptor is pointed at memory: what it has left to
  // write goes there, and the disk gets its blocks back as soon as the file is deleted. Where memory has the same limit
  // (`ulimit -f`) the library keeps its part of the file to the program's end; nothing worse.
  const int* number = descriptor();
  const int memory = number == nullptr ? -1 : ::memfd_create("abandoned", MFD_CLOEXEC);
  if (memory >= 0) {
    ::dup2(memory, *number);
    ::close(memory);
  }
  file_ = Handle();
}

}  // namespace stillground::record::hdf5
