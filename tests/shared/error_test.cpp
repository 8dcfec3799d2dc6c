#include "shared/error.hpp"

#include "shared/text.hpp"
#include "tests/support/expect.hpp"

using namespace lamwright;
using namespace lamwright::test;

TEST_CASE("A message reads place, problem, remedy") {
  const Error error(ErrorKind::job, {"desk.toml", 7, 13, "layup.cover"}, "-3 is not allowed", "give 0 to 50");
  CHECK(std::string(error.what()) == "desk.toml:7:13: layup.cover: -3 is not allowed; give 0 to 50");
  CHECK(error.kind() == ErrorKind::job);
  CHECK(error.where().key == "layup.cover");
  CHECK(error.problem() == "-3 is not allowed");
  CHECK(error.remedy() == "give 0 to 50");
}

TEST_CASE("What is not known is left out of a message") {
  CHECK(std::string(Error(ErrorKind::internal, {}, "broken").what()) == "broken");
  CHECK(std::string(Error(ErrorKind::job, {}, "broken", "mend it").what()) == "broken; mend it");
  CHECK(std::string(job_error({"", 0, 0, "panel.width"}, "missing").what()) == "panel.width: missing");
  CHECK(std::string(job_error({"desk.toml", 0, 0, ""}, "is empty").what()) == "desk.toml: is empty");
  CHECK(to_text(Place{"desk.toml", 3, 5, ""}) == "desk.toml:3:5");
  CHECK(to_text(Place{"desk.toml", 3, 0, ""}) == "desk.toml:3");
  CHECK(to_text(Place{}).empty());
}

TEST_CASE("The short forms carry their kinds") {
  CHECK(job_error({}, "x").kind() == ErrorKind::job);
  CHECK(geometry_error("bend 2", "x").kind() == ErrorKind::geometry);
  CHECK(geometry_error("bend 2", "collapses", "raise the radius").where().key == "bend 2");
  CHECK(std::string(geometry_error("bend 2", "collapses", "raise the radius").what()) ==
        "bend 2: collapses; raise the radius");
  CHECK(file_error("out", "x").kind() == ErrorKind::file);
  CHECK(std::string(file_error("out", "cannot be written").what()) == "out: cannot be written");
}

TEST_CASE("A message stays one line whatever is quoted in it") {
  const Error error = job_error({"a\nb.toml", 2, 0, "x\ty"}, "read \"\x1B[2J\"", "give \x7F\r");
  CHECK(std::string(error.what()) == "a\\nb.toml:2: x\\ty: read \"\\x1B[2J\"; give \\x7F\\x0D");
  CHECK(error.problem() == "read \"\\x1B[2J\"");
}

TEST_CASE("A message stays short, and no letter is cut in two") {
  const std::string umlauts = "x" + [] {
    std::string text;
    for (int i = 0; i < 2000; ++i) text += "\xC3\xA4";
    return text;
  }();
  const Error error = job_error({umlauts, 0, 0, umlauts}, umlauts, umlauts);
  CHECK(std::string(error.what()).size() < 4096);
  CHECK(!utf8_fault(error.what()));
  // 1500 bytes would end amid a letter: x and 749 of them are 1499.
  CHECK(error.problem() == umlauts.substr(0, 1499) + "...");
  CHECK(error.where().key == umlauts.substr(0, 299) + "...");
}

TEST_CASE("A broken rule of the program is an internal error that names the rule") {
  CHECK_NOTHROW(ensure(true, "holds"));
  REQUIRE_ERROR(ErrorKind::internal, ensure(false, "stations rise"));
  CHECK(holds(message_of([] { ensure(false, "stations rise"); }), "stations rise"));
}
