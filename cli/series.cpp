#include "cli/series.hpp"

#include "cli/build_run.hpp"
#include "cli/options.hpp"
#include "cli/output_folder.hpp"
#include "cli/results.hpp"
#include "cli/terminal.hpp"
#include "shared/number.hpp"

namespace lamwright::cli {
namespace {

constexpr const char* kTable = "results.csv";

// The part of a sink below one folder.
class Below : public Sink {
 public:
  Below(Sink& sink, std::string folder) : sink_(sink), folder_(std::move(folder)) {}
  void write(const std::string& path, std::string_view bytes) override {
    sink_.write(folder_ + "/" + path, bytes);
    written_.push_back(path);
  }
  const std::vector<std::string>& written() const override { return written_; }

 private:
  Sink& sink_;
  std::string folder_;
  std::vector<std::string> written_;
};

// Steps of a run under its name; notes of single runs stand in their own files.
class NamedProgress : public Progress {
 public:
  NamedProgress(Progress& progress, std::string name) : progress_(progress), name_(std::move(name)) {}
  void step(std::string_view stage) override { progress_.step(name_ + ": " + std::string(stage)); }

 private:
  Progress& progress_;
  std::string name_;
};

Outcome built(const Run& run, const po::variables_map& values, Registry& registry, Progress& progress,
              Sink& sink) {
  NamedProgress named(progress, run.name);
  const Ready job = ready(run.input, values, registry, named);
  const int status = status_of(job.result, job.despite_fails);
  for (const Error& error : job.result.errors) message(run.name + ": " + error.what());
  Supply supply;
  Below below(sink, run.name);
  if (job.sound()) supply = write(job, registry, named, below);
  return outcome(run, job.result, &supply, status, figure_pointers(values));
}

}  // namespace

int build_series(const std::vector<Run>& runs, const po::variables_map& values, Registry& registry) {
  const std::string folder = required(values, "output", "-o DIR");
  StageProgress progress;
  OutputFolder output(folder);
  std::vector<Outcome> outcomes;
  for (const Run& run : runs) outcomes.push_back(built(run, values, registry, progress, output));
  output.write(kTable, results_csv(outcomes));
  progress.step("moving into place");
  output.commit();
  print(results_text(outcomes) + counted(long(runs.size()), "run") + " in " + folder + ", the table in " +
        kTable + "\n");
  return first_fault(outcomes);
}

}  // namespace lamwright::cli
