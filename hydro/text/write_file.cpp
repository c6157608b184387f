#include "hydro/text/write_file.hpp"

#include "hydro/quantities/error.hpp"

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <optional>
#include <string>
#include <system_error>
#include <utility>

namespace hydro {
namespace {

namespace fs = std::filesystem;

[[noreturn]] void refuse(const fs::path& path, const std::string& reason) {
  std::string name = path.string();
  std::replace_if(name.begin(), name.end(), is_control, '?');
  throw InvalidInput(name.empty() ? "path" : name, reason);
}
[[noreturn]] void refuse(const fs::path& path, const std::error_code& error) {
  refuse(path, "cannot be written: " + error.message());
}

std::error_code last_error() {
  return {errno != 0 ? errno : EIO, std::generic_category()};
}

/// Where the file really lies. @throws InvalidInput for a link that leads nowhere.
fs::path followed(const fs::path& path) {
  std::error_code error;
  if (!fs::is_symlink(path, error)) return path;
  fs::path end = fs::canonical(path, error);
  if (error) refuse(path, "is a link that leads nowhere");
  return end;
}

/// Those of the old file; none: there is none. @throws InvalidInput when it must not be replaced.
std::optional<fs::perms> old_permissions(const fs::path& path) {
  std::error_code error;
  const fs::file_status old = fs::status(path, error);
  if (fs::is_directory(old) || !path.has_filename()) refuse(path, "is a directory");
  if (!fs::exists(old)) return std::nullopt;
  if (!fs::is_regular_file(old)) refuse(path, "is not a regular file");
  constexpr fs::perms writable =
      fs::perms::owner_write | fs::perms::group_write | fs::perms::others_write;
  if ((old.permissions() & writable) == fs::perms::none) refuse(path, "is read-only");
  return old.permissions();
}

/// A new file beside the one that is wanted; it goes away again unless it takes that one's place.
class FileBeside {
 public:
  explicit FileBeside(const fs::path& wanted) : wanted_(wanted) {
    constexpr int most_names = 1000;
    for (int i = 0; i < most_names && !file_; ++i) {
      path_ = wanted.parent_path() / (".hydro-" + std::to_string(i) + ".part");
      errno = 0;
      file_ = std::fopen(path_.string().c_str(), "wbx");  // x: never one that is there already
      if (!file_ && errno != EEXIST) break;
    }
    if (!file_) refuse(wanted_, last_error());
  }
  FileBeside(const FileBeside&) = delete;
  FileBeside& operator=(const FileBeside&) = delete;
  ~FileBeside() {
    if (file_) std::fclose(file_);
    std::error_code ignored;
    if (!in_place_) fs::remove(path_, ignored);
  }

  void write(std::string_view text) {
    errno = 0;
    if (std::fwrite(text.data(), 1, text.size(), file_) != text.size())
      refuse(wanted_, last_error());
    if (std::fclose(std::exchange(file_, nullptr)) != 0)  // it still writes
      refuse(wanted_, last_error());
  }

  void take_place(const std::optional<fs::perms>& permissions) {
    std::error_code error;
    if (permissions) fs::permissions(path_, *permissions, error);
    if (!error) fs::rename(path_, wanted_, error);
    if (error) refuse(wanted_, error);
    in_place_ = true;
  }

 private:
  fs::path wanted_;
  fs::path path_;
  std::FILE* file_ = nullptr;
  bool in_place_ = false;
};

}  // namespace

void write_file(const fs::path& path, std::string_view text) {
  if (path.empty()) refuse(path, "is empty, must name a file");
  const fs::path wanted = followed(path);
  const std::optional<fs::perms> permissions = old_permissions(wanted);
  FileBeside beside(wanted);
  beside.write(text);
  beside.take_place(permissions);
}

}  // namespace hydro
