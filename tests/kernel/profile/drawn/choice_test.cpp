#include "kernel/profile/drawn/choice.hpp"

#include "tests/support/drawn.hpp"
#include "tests/support/expect.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

DrawnFile drawing() {
  const Segment some = line({0, 0}, {100, 0});
  return {{drawn({some}, "inner", {"PROFILE"}), drawn({some}, "outer", {"PROFILE", "second"}),
           drawn({some}, "", {"FRAME"})},
          {}};
}

}  // namespace

TEST_CASE("Nothing chosen means every curve") { CHECK(chosen(drawing(), {}).size() == 3); }

TEST_CASE("Curves are chosen by id, by a group around them, by layer, and by both") {
  CHECK(chosen(drawing(), {"inner", ""}).size() == 1);
  CHECK(chosen(drawing(), {"second", ""}).front().id == "outer");
  CHECK(chosen(drawing(), {"", "PROFILE"}).size() == 2);
  CHECK(chosen(drawing(), {"outer", "PROFILE"}).size() == 1);
}

TEST_CASE("A name that the drawing does not have is told with those that it has") {
  const std::string path = message_of([] { chosen(drawing(), {"iner", ""}); });
  CHECK(path ==
        "profile: no path is called \"iner\"; did you mean \"inner\"? the drawing has inner and outer");
  CHECK(chosen(drawing(), {"", "profile"}).size() == 2);
  const std::string layer = message_of([] { chosen(drawing(), {"", "profil"}); });
  CAPTURE(layer);
  CHECK(holds(layer, "nothing is drawn on layer \"profil\""));
  CHECK(holds(layer, "the drawing has FRAME, PROFILE and second"));
  REQUIRE_ERROR(ErrorKind::geometry, chosen(drawing(), {"inner", "FRAME"}));
  REQUIRE_ERROR(ErrorKind::geometry, chosen({}, {}));
}

TEST_CASE("A drawing with many names lists a dozen and how many more there are") {
  DrawnFile many;
  for (int i = 0; i < 30; ++i)
    many.curves.push_back(drawn({line({0, 0}, {1, 0})}, "p" + std::to_string(100 + i)));
  CHECK(holds(message_of([&] { chosen(many, {"nothing of the kind", ""}); }), "and 18 more"));
}
