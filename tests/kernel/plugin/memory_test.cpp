#include "kernel/plugin/memory.hpp"

#include <catch2/catch.hpp>

#include "shared/error.hpp"

using namespace lamwright;
using Names = std::vector<std::string>;

TEST_CASE("Files in memory are read by name, and another name is told as a file that is missing") {
  const MemorySources files(std::map<std::string, std::string>{{"arc.csv", "0,0\n"}});
  CHECK(files.read("arc.csv") == "0,0\n");
  try {
    files.read("gone.csv");
    FAIL("a file that is missing was read");
  } catch (const Error& error) {
    CHECK(error.kind() == ErrorKind::file);
    CHECK(std::string(error.what()) == "gone.csv: cannot be read: no such file");
  }
}

TEST_CASE("A sink in memory keeps any bytes by path and tells paths in the order they came") {
  MemorySink sink;
  CHECK(sink.written().empty());
  sink.write("b.bin", std::string("\0\xff", 2));
  sink.write("a/c.txt", "first");
  sink.write("a/c.txt", "second");
  CHECK(sink.written() == Names{"b.bin", "a/c.txt", "a/c.txt"});
  CHECK(sink.files() ==
        std::map<std::string, std::string>{{"a/c.txt", "second"}, {"b.bin", std::string("\0\xff", 2)}});
  const auto& kept = std::move(sink).files();
  CHECK(kept.size() == 2);
}
