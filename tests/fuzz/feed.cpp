// feed.cpp: a fuzzing target fed with the files of folders, in place of a fuzzer. With any compiler.
#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <vector>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

int main(int argc, char** argv) {
  std::size_t fed = 0;
  for (int i = 1; i < argc; ++i) {
    std::vector<std::filesystem::path> files;
    for (const auto& file : std::filesystem::directory_iterator(argv[i]))
      files.push_back(file.path());
    std::ranges::sort(files);
    for (const std::filesystem::path& file : files) {
      std::fprintf(stderr, "%s\n", file.c_str());  // the last one told is the one that fails
      std::ifstream stream(file, std::ios::binary);
      const std::vector<char> bytes{std::istreambuf_iterator<char>(stream), {}};
      LLVMFuzzerTestOneInput(reinterpret_cast<const std::uint8_t*>(bytes.data()), bytes.size());
      ++fed;
    }
  }
  std::printf("%zu files\n", fed);
  return fed > 0 ? 0 : 1;
}
