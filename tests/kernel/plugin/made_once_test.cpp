#include "kernel/plugin/made_once.hpp"

#include <atomic>
#include <catch2/catch.hpp>
#include <stdexcept>
#include <thread>
#include <vector>

using namespace lamwright;

TEST_CASE("a value is made once, however many threads ask, and all get the same") {
  MadeOnce shared;
  std::atomic<int> made = 0;
  std::vector<std::shared_ptr<const std::string>> got(8);
  {
    std::vector<std::jthread> threads;
    for (auto& one : got)
      threads.emplace_back([&] {
        one = shared.get("press", [&] {
          ++made;
          std::this_thread::sleep_for(std::chrono::milliseconds(5));
          return std::string("drawn");
        });
      });
  }
  CHECK(made == 1);
  for (const auto& one : got) {
    REQUIRE(one);
    CHECK(one == got.front());
  }
  CHECK(*got.front() == "drawn");
}

TEST_CASE("each name, and each type under a name, has a value of its own") {
  MadeOnce shared;
  CHECK(*shared.get("a", [] { return 1; }) == 1);
  CHECK(*shared.get("b", [] { return 2; }) == 2);
  CHECK(*shared.get("a", [] { return 3; }) == 1);
  CHECK(*shared.get("a", [] { return std::string("text"); }) == "text");
}

TEST_CASE("making one value may ask for another") {
  MadeOnce shared;
  const auto sum = shared.get("sum", [&] { return *shared.get("part", [] { return 20; }) + 1; });
  CHECK(*sum == 21);
  CHECK(*shared.get("part", [] { return 0; }) == 20);
}

TEST_CASE("what making throws reaches everyone who asks") {
  MadeOnce shared;
  CHECK_THROWS_WITH(shared.get("press", []() -> int { throw std::runtime_error("no room"); }), "no room");
  CHECK_THROWS_WITH(shared.get("press", [] { return 1; }), "no room");
}

TEST_CASE("without exporters beside it a value is made for the caller alone") {
  int made = 0;
  const auto ask = [&] { return made_once(nullptr, "press", [&] { return ++made; }); };
  CHECK(*ask() == 1);
  CHECK(*ask() == 2);
}
