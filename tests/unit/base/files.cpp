#include "engine/base/files.hpp"

#include <sys/stat.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>

#include "tests/catch.hpp"
#include "tests/unit/base/scratch.hpp"

namespace fs = std::filesystem;
using namespace stillground;
using stillground::testing::Contains;
using stillground::testing::Scratch;

TEST_CASE("A file is read byte for byte", "[base]") {
  const Scratch scratch;
  const std::string content("a\0b\r\n\xff", 6);
  std::ofstream(scratch.folder / "x", std::ios::binary) << content;
  CHECK(read_file(scratch.folder / "x") == content);
}

TEST_CASE("What cannot be read is refused where it was asked for, with the reason", "[base]") {
  const Scratch scratch;
  const Where where{{"site.yaml", 3, 9}, "loads.file"};
  CHECK_THROWS_WITH(read_file(scratch.folder / "none", where),
                    Contains("site.yaml:3:9: loads.file: cannot read \"") && Contains("no such file"));
  CHECK_THROWS_WITH(read_file(scratch.folder, where), Contains("it is a folder"));
  CHECK_THROWS_WITH(read_file("/dev/zero", where), Contains("it is not a regular file"));
  CHECK_THROWS_AS(read_file(scratch.folder / "none", where), InputError);
}

TEST_CASE("A named pipe is refused at once instead of waited for", "[base]") {
  const Scratch scratch;
  const fs::path pipe = scratch.folder / "pipe";
  REQUIRE(::mkfifo(pipe.c_str(), 0600) == 0);
  CHECK_THROWS_WITH(read_file(pipe), Contains("not a regular file"));
}

TEST_CASE("A file beyond the size that is allowed is refused before it is read", "[base]") {
  const Scratch scratch;
  std::ofstream(scratch.folder / "x") << "12345";
  CHECK(read_file(scratch.folder / "x", {}, 5) == "12345");
  CHECK_THROWS_WITH(read_file(scratch.folder / "x", {}, 4), Contains("it has 5 bytes, 4 are allowed"));
}
