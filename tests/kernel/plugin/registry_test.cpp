#include "kernel/plugin/registry.hpp"

#include <catch2/catch.hpp>

#include "shared/error.hpp"
#include "tests/support/jobs.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

// A press method as somebody else would add it: it suits everything and borrows the one-part layout.
class Weights : public PressMethod {
 public:
  std::string name() const override { return "weights"; }
  std::string summary() const override { return "sandbags"; }
  std::vector<KeyRow> keys() const override {
    return {{"bags", KeyType::integer, "4", 1, 100, {}, "sandbags"}};
  }
  Suits suits(const Panel&) const override { return {50, "Sandbags press anything."}; }
  PressPlan plan(const Job& job, const Panel& panel) const override {
    Registry registry;
    add_press_methods(registry);
    PressPlan plan = registry.method("one-part")->plan(job, panel);
    plan.method = name();
    return plan;
  }
};

const std::string kJob = job_text("width = 900\nprofile = [{bend = 110, radius = 415}]", birch(8));

}  // namespace

TEST_CASE("The automatic choice takes the method of the highest rank") {
  Registry registry;
  add_press_methods(registry);
  registry.add(std::make_unique<Weights>());
  Progress progress;
  CHECK(evaluate(kJob, "job.toml", MemorySources(), registry, progress).plan->method == "weights");
  CHECK(evaluate("[press]\nmethod = \"one-part\"\n" + kJob, "job.toml", MemorySources(), registry, progress)
            .plan->method == "one-part");
}

TEST_CASE("A method's own keys live in its own table and are checked") {
  Registry registry;
  add_press_methods(registry);
  registry.add(std::make_unique<Weights>());
  Progress progress;
  CHECK(evaluate("[press.weights]\nbags = 6\n" + kJob, "job.toml", MemorySources(), registry, progress).plan);
  const Evaluation wrong =
      evaluate("[press.weights]\nbag = 6\n" + kJob, "job.toml", MemorySources(), registry, progress);
  CHECK(only_error(wrong) == "job.toml:2:7: press.weights.bag: is not a known key; did you mean \"bags\"?");
}

TEST_CASE("An unknown method is refused with those that are known") {
  CHECK(only_error(evaluated("[press]\nmethod = \"onepart\"\n" + kJob)) ==
        "job.toml: press.method: read \"onepart\"; did you mean \"one-part\"? known: auto, "
        "one-part, two-part or crowned-flat");
}

TEST_CASE("A name is registered once") {
  Registry registry;
  add_press_methods(registry);
  CHECK_THROWS_AS(add_press_methods(registry), Error);
}

TEST_CASE("A progress that cancels stops the evaluation") {
  class Stop : public Progress {
    void step(std::string_view stage) override {
      if (stage == "press plan") throw Cancelled{};
    }
  } stop;
  Registry registry;
  add_press_methods(registry);
  CHECK_THROWS_AS(evaluate(kJob, "job.toml", MemorySources(), registry, stop), Cancelled);
}
