// temporary_folder.hpp: a folder of a test's own, gone when the test is over.
#pragma once

#include <cerrno>
#include <filesystem>
#include <string>
#include <system_error>

#include <stdlib.h>

namespace hydro {

/// Of this name and no other's, however many processes run the same test at once.
class TemporaryFolder {
 public:
  /// Throws std::system_error where none can be made.
  TemporaryFolder() {
    std::string name = (std::filesystem::temp_directory_path() / "hydro_test_XXXXXX").string();
    if (mkdtemp(name.data()) == nullptr)
      throw std::system_error(errno, std::generic_category(), name);
    path_ = name;
  }
  ~TemporaryFolder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  TemporaryFolder(const TemporaryFolder&) = delete;
  TemporaryFolder& operator=(const TemporaryFolder&) = delete;

  const std::filesystem::path& path() const { return path_; }
  std::filesystem::path operator/(const std::string& name) const { return path_ / name; }

 private:
  std::filesystem::path path_;
};

}  // namespace hydro
