// write_file_test.cpp: a file is written whole, or it is left as it was.
#include "hydro/text/write_file.hpp"

#include "hydro/quantities/error.hpp"

#include <algorithm>
#include <csignal>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

#include "sample_layouts.hpp"
#include "temporary_folder.hpp"
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/resource.h>
#include <unistd.h>

namespace hydro {
namespace {

using testing::AllOf;
using testing::ElementsAre;
using testing::HasSubstr;

class WriteFile : public testing::Test {
 protected:
  std::filesystem::path file(const std::string& name) const { return folder_ / name; }
  std::vector<std::string> all_files() const {
    std::vector<std::string> names;
    for (const auto& entry : std::filesystem::directory_iterator(folder_.path()))
      names.push_back(entry.path().filename().string());
    std::sort(names.begin(), names.end());
    return names;
  }
  static std::string contents(const std::filesystem::path& path) {
    std::ifstream stream(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(stream), {}};
  }

  const TemporaryFolder folder_;
};

TEST_F(WriteFile, WritesByteForByte) {
  const std::string text("a\nb\r\n\0c\xFF", 8);
  write_file(file("new.csv"), text);
  EXPECT_EQ(contents(file("new.csv")), text);
  write_file(file("new.csv"), "");
  EXPECT_EQ(contents(file("new.csv")), "");
  EXPECT_THAT(all_files(), ElementsAre("new.csv"));
}

TEST_F(WriteFile, KeepsPermissionsAndFollowsLinks) {
  namespace fs = std::filesystem;
  write_file(file("kept.csv"), "old");
  fs::permissions(file("kept.csv"), fs::perms::owner_read | fs::perms::owner_write);
  fs::create_symlink("kept.csv", file("link.csv"));
  write_file(file("link.csv"), "new");
  EXPECT_EQ(contents(file("kept.csv")), "new");
  EXPECT_TRUE(fs::is_symlink(file("link.csv")));
  EXPECT_EQ(fs::status(file("kept.csv")).permissions(),
            fs::perms::owner_read | fs::perms::owner_write);
  EXPECT_THAT(all_files(), ElementsAre("kept.csv", "link.csv"));
}

TEST_F(WriteFile, RefusesWhatIsNoFile) {
  EXPECT_THAT(refusal([&] { write_file(folder_.path(), "text"); }),
              AllOf(HasSubstr(folder_.path().string()), HasSubstr("is a directory")));
  EXPECT_THAT(refusal([&] { write_file(folder_ / "", "text"); }), HasSubstr("is a directory"));
  EXPECT_THAT(refusal([] { write_file("", "text"); }), HasSubstr("path: is empty"));
  EXPECT_THAT(refusal([] { write_file("/dev/full", "text"); }),
              HasSubstr("/dev/full: is not a regular file"));
  EXPECT_THAT(refusal([&] { write_file(file("no such folder/f.csv"), "text"); }),
              AllOf(HasSubstr("no such folder/f.csv"), HasSubstr("cannot be written: ")));
  std::filesystem::create_symlink("nowhere", file("link"));
  EXPECT_THAT(refusal([&] { write_file(file("link"), "text"); }), HasSubstr("leads nowhere"));
  EXPECT_THAT(all_files(), ElementsAre("link"));
}

TEST_F(WriteFile, RefusesWhatIsReadOnly) {
  write_file(file("old.csv"), "old");
  std::filesystem::permissions(file("old.csv"), std::filesystem::perms::owner_read);
  EXPECT_THAT(refusal([&] { write_file(file("old.csv"), "new"); }), HasSubstr("is read-only"));
  EXPECT_EQ(contents(file("old.csv")), "old");
  EXPECT_THAT(all_files(), ElementsAre("old.csv"));
}

TEST_F(WriteFile, RefusesAFolderThatIsReadOnly) {
  if (geteuid() == 0) GTEST_SKIP() << "this user may write everywhere";
  namespace fs = std::filesystem;
  write_file(file("old.csv"), "old");
  fs::permissions(folder_.path(), fs::perms::owner_read | fs::perms::owner_exec);
  const std::string of_old = refusal([&] { write_file(file("old.csv"), "new"); });
  const std::string of_new = refusal([&] { write_file(file("new.csv"), "new"); });
  fs::permissions(folder_.path(), fs::perms::owner_all);
  EXPECT_THAT(of_old, HasSubstr("old.csv: cannot be written: "));
  EXPECT_THAT(of_new, HasSubstr("new.csv: cannot be written: "));
  EXPECT_EQ(contents(file("old.csv")), "old");
  EXPECT_THAT(all_files(), ElementsAre("old.csv"));
}

TEST_F(WriteFile, GivesANewFileThePermissionsOfAnyNewFile) {
  write_file(file("new.csv"), "text");
  std::ofstream(file("other.csv")) << "text";
  EXPECT_EQ(std::filesystem::status(file("new.csv")).permissions(),
            std::filesystem::status(file("other.csv")).permissions());
}

TEST_F(WriteFile, LeavesTheOldFileWhenThereIsNoRoom) {
  write_file(file("old.csv"), "old");
  rlimit kept{};
  ASSERT_EQ(getrlimit(RLIMIT_FSIZE, &kept), 0);
  const auto handler = std::signal(SIGXFSZ, SIG_IGN);
  rlimit small = kept;
  small.rlim_cur = 10'000;
  ASSERT_EQ(setrlimit(RLIMIT_FSIZE, &small), 0);
  const std::string said = refusal([&] { write_file(file("old.csv"), std::string(50'000, 'x')); });
  const std::string of_new = refusal([&] { write_file(file("new"), std::string(50'000, 'x')); });
  setrlimit(RLIMIT_FSIZE, &kept);
  std::signal(SIGXFSZ, handler);
  EXPECT_THAT(said, AllOf(HasSubstr("old.csv: cannot be written: "), HasSubstr("large")));
  EXPECT_THAT(of_new, HasSubstr("cannot be written: "));
  EXPECT_EQ(contents(file("old.csv")), "old");
  EXPECT_THAT(all_files(), ElementsAre("old.csv"));
}

TEST_F(WriteFile, LeavesAStrangersFileAlone) {
  write_file(file(".hydro-0.part"), "a stranger's");
  write_file(file("new.csv"), "new");
  EXPECT_EQ(contents(file(".hydro-0.part")), "a stranger's");
  EXPECT_THAT(all_files(), ElementsAre(".hydro-0.part", "new.csv"));
}

}  // namespace
}  // namespace hydro
