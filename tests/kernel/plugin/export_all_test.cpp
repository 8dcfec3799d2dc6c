#include "kernel/plugin/export_all.hpp"

#include <atomic>
#include <catch2/catch.hpp>
#include <thread>

#include "exporters/drawing/sheets.hpp"
#include "kernel/plugin/memory.hpp"
#include "tests/support/jobs.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

// How many of a kind work at this moment, and the most that ever did.
struct Watch {
  std::atomic<int> now{0}, most{0};
  void enter() {
    const int here = ++now;
    int seen = most;
    while (here > seen && !most.compare_exchange_weak(seen, here)) continue;
  }
};

// Writes a file of its name after some turns, as an exporter that has work to do.
class Slow : public Exporter {
 public:
  Slow(std::string name, ExportNeeds needs, Watch& watch, bool fails = false)
      : name_(std::move(name)), needs_(needs), watch_(watch), fails_(fails) {}
  std::string name() const override { return name_; }
  std::string summary() const override { return "a file"; }
  ExportNeeds needs() const override { return needs_; }
  void write(const ExportInput& input, Sink& sink) const override {
    watch_.enter();
    for (int i = 0; i < 200; ++i) {
      input.progress.step("turn");
      std::this_thread::yield();
    }
    --watch_.now;
    if (fails_) throw file_error(name_, "cannot be written");
    input.progress.note(name_ + " is done.");
    sink.write(name_ + ".txt", std::to_string(input.supply.sheets.size()) + " after " +
                                   std::to_string(sink.written().size()));
  }

 private:
  std::string name_;
  ExportNeeds needs_;
  Watch& watch_;
  bool fails_;
};

class Notes : public Progress {
 public:
  void note(std::string_view sentence) override { notes.emplace_back(sentence); }
  std::vector<std::string> notes;
};

const std::string kJob = job_text("width = 600\nprofile = [{bend = 90, radius = 450}]", birch(7),
                                  "[formers]\nspacing = {count = 4}");

Evaluation job() { return evaluated(kJob); }

struct Crowd {
  Watch any, alone;
  Registry registry;
  explicit Crowd(bool second_fails = false) {
    registry.add(std::make_unique<Slow>("last", ExportNeeds{.others = true}, any));
    for (const char* name : {"a", "b", "c", "d"})
      registry.add(
          std::make_unique<Slow>(name, ExportNeeds{}, any, second_fails && std::string(name) == "b"));
    for (const char* name : {"x", "y", "z"})
      registry.add(std::make_unique<Slow>(name, ExportNeeds{.supply = false, .alone = true}, alone));
  }
};

}  // namespace

TEST_CASE("Files and notes come in the order of registration on any number of threads") {
  const Evaluation result = job();
  std::vector<std::string> names, notes;
  for (const unsigned threads : {1u, 2u, 3u, 8u, 64u}) {
    CAPTURE(threads);
    Crowd crowd;
    MemorySink sink;
    Notes progress;
    const Supply supply = export_all(result, crowd.registry, progress, sink, threads);
    CHECK(!supply.sheets.empty());
    CHECK(sink.files().at("a.txt") == std::to_string(supply.sheets.size()) + " after 0");
    CHECK(sink.files().at("x.txt") == "0 after 0");  // it does not need the sheets
    CHECK(sink.files().at("last.txt") == std::to_string(supply.sheets.size()) + " after 7");
    if (threads == 1) {
      names = sink.written();
      notes = progress.notes;
    }
    CHECK(sink.written() == names);
    CHECK(progress.notes == notes);
    CHECK(crowd.alone.most == 1);
  }
  CHECK(names ==
        std::vector<std::string>{"a.txt", "b.txt", "c.txt", "d.txt", "x.txt", "y.txt", "z.txt", "last.txt"});
}

TEST_CASE("A fault of one exporter stops the others and hands nothing over") {
  const Evaluation result = job();
  for (const unsigned threads : {1u, 2u, 8u}) {
    CAPTURE(threads);
    Crowd crowd(true);
    MemorySink sink;
    Progress progress;
    CHECK_THROWS_WITH(export_all(result, crowd.registry, progress, sink, threads), "b: cannot be written");
    CHECK(sink.files().empty());
  }
}

TEST_CASE("A caller that cancels is answered from whichever thread was asked") {
  const Evaluation result = job();
  for (const int after : {0, 1, 5, 50, 500}) {
    for (const unsigned threads : {1u, 2u, 8u}) {
      CAPTURE(after, threads);
      struct Impatient : Progress {
        explicit Impatient(int n) : left(n) {}
        void step(std::string_view) override {
          if (left-- <= 0) throw Cancelled{};
        }
        int left;  // no lock: steps come one at a time
      } progress(after);
      Crowd crowd;
      MemorySink sink;
      CHECK_THROWS_AS(export_all(result, crowd.registry, progress, sink, threads), Cancelled);
      CHECK(sink.files().empty());
    }
  }
}

TEST_CASE("Only what the job's outputs want is run, and sheets are made only where they are needed") {
  Evaluation result = job();
  result.job->outputs.only = {"y"};
  Crowd crowd;
  MemorySink sink;
  Progress progress;
  CHECK(export_all(result, crowd.registry, progress, sink, 4).sheets.empty());
  CHECK(sink.written() == std::vector<std::string>{"y.txt"});
}

TEST_CASE("Exporters of one build are given the same drawings, whether they are told of lists or not") {
  using Drawings = drawing::SharedDrawings;
  struct Draws : Exporter {
    Draws(std::string name, bool supply, Drawings& into) : own(std::move(name)), supply(supply), into(into) {}
    std::string name() const override { return own; }
    std::string summary() const override { return "drawings"; }
    ExportNeeds needs() const override { return {.supply = supply}; }
    void write(const ExportInput& input, Sink&) const override { into = drawing::sheets(input); }
    std::string own;
    bool supply;
    Drawings& into;
  };
  const Evaluation result = job();
  std::vector<Drawings> drawn(4);
  Registry registry;
  for (std::size_t i = 0; i < drawn.size(); ++i)
    registry.add(std::make_unique<Draws>("draws-" + std::to_string(i), i % 2 == 0, drawn[i]));
  MemorySink sink;
  Progress progress;
  const Supply supply = export_all(result, registry, progress, sink, 3);
  CHECK(!supply.pack.empty());
  REQUIRE(drawn.front().size() > 5);
  for (const Drawings& all : drawn) CHECK(all == drawn.front());
}
