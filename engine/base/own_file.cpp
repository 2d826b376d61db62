#include "engine/base/own_file.hpp"

#include <dlfcn.h>
#include <link.h>

#include "engine/base/errors.hpp"

namespace stillground {

std::filesystem::path own_file() {
  Dl_info ignored{};
  link_map* map = nullptr;
  const int found =
      ::dladdr1(reinterpret_cast<const void*>(&own_file), &ignored, reinterpret_cast<void**>(&map), RTLD_DL_LINKMAP);
  // The dynamic linker knows the program itself by an empty name.
  const bool shared = found != 0 && map != nullptr && map->l_name != nullptr && map->l_name[0] != '\0';
  const std::filesystem::path file = shared ? map->l_name : "/proc/self/exe";
  std::error_code error;
  const std::filesystem::path real = std::filesystem::canonical(file, error);
  if (error) throw SystemError(file.string() + " cannot be followed: " + error.message());
  return real;
}

}  // namespace stillground
