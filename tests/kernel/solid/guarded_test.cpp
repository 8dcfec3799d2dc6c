#include "kernel/solid/guarded.hpp"

#include <BRepBuilderAPI_MakeEdge.hxx>
#include <Standard_Failure.hxx>
#include <TopoDS_Edge.hxx>
#include <gp_Pnt.hxx>
#include <stdexcept>

#include "kernel/plugin/exporter.hpp"
#include "tests/support/expect.hpp"

using namespace lamwright;
using namespace lamwright::test;

TEST_CASE("a guarded call returns what it computes", "[solid]") {
  CHECK(guarded("adding", [] { return 2 + 3; }) == 5);
  int ran = 0;
  guarded("running", [&] { ++ran; });
  CHECK(ran == 1);
}

TEST_CASE("a failure of the modelling kernel, which is no standard exception, becomes an error of ours",
          "[solid]") {
  const auto degenerate = [] { return BRepBuilderAPI_MakeEdge(gp_Pnt(1, 2, 3), gp_Pnt(1, 2, 3)).Edge(); };
  bool standard = true;
  try {
    (void)degenerate();
  } catch (const std::exception&) {
  } catch (const Standard_Failure&) {
    standard = false;
  }
  CHECK_FALSE(standard);
  const auto error = error_of([&] { (void)guarded("edge of length 0", degenerate); });
  REQUIRE(error);
  CHECK(error->kind() == ErrorKind::internal);
  CHECK(std::string(error->what()) ==
        "edge of length 0: the modelling kernel failed with StdFail_NotDone (BRep_API: command not done); "
        "please report it with the job file");
}

TEST_CASE("a standard exception becomes an error of ours", "[solid]") {
  CHECK(message_of([] { guarded("solid of beam", [] { throw std::runtime_error("no memory"); }); }) ==
        "solid of beam: no memory; please report it with the job file");
}

TEST_CASE("our own errors and a cancellation pass a guarded call unchanged", "[solid]") {
  CHECK(message_of([] {
          guarded("anything", [] { throw geometry_error("beam", "too short", "make it longer"); });
        }) == "beam: too short; make it longer");
  CHECK_THROWS_AS(guarded("anything", [] { throw Cancelled{}; }), Cancelled);
}
