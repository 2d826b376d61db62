#include "engine/base/pending_file.hpp"

#include <fstream>
#include <iterator>
#include <string>

#include <unistd.h>
#include "engine/base/errors.hpp"
#include "tests/catch.hpp"

namespace fs = std::filesystem;
using namespace stillground;
using stillground::testing::Contains;

namespace {

/// A folder of its own for each test, gone at its end.
struct Folder {
  fs::path path = fs::temp_directory_path() / ("pending_file_" + std::to_string(::getpid()));
  Folder() { fs::create_directories(path); }
  ~Folder() { fs::remove_all(path); }
};

std::string content(const fs::path& file) {
  std::ifstream in(file);
  return {std::istreambuf_iterator<char>(in), {}};
}

}  // namespace

TEST_CASE("A file written whole replaces what stood there and leaves nothing beside it") {
  const Folder folder;
  const fs::path file = folder.path / "curve.csv";
  write_whole(file, "old");
  write_whole(file, "new");
  CHECK(content(file) == "new");
  CHECK(std::distance(fs::directory_iterator(folder.path), {}) == 1);
}

TEST_CASE("Without a commit the old file stays as it was") {
  const Folder folder;
  const fs::path file = folder.path / "curve.csv";
  write_whole(file, "old");
  {
    const PendingFile pending(file);
    std::ofstream(pending.temporary()) << "half";
  }
  CHECK(content(file) == "old");
  CHECK(std::distance(fs::directory_iterator(folder.path), {}) == 1);
}

TEST_CASE("A folder that does not exist is an error that names the file") {
  CHECK_THROWS_WITH(write_whole("/no/such/folder/curve.csv", "x"),
                    Contains("/no/such/folder/curve.csv") && Contains("No such file"));
}
