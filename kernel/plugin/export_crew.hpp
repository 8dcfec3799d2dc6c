// Exporters at work on several threads; what export_all is made of.
#pragma once
#include <condition_variable>
#include <deque>
#include <exception>
#include <mutex>
#include <string>
#include <vector>

#include "kernel/plugin/evaluate.hpp"
#include "kernel/plugin/memory.hpp"

namespace lamwright {

// One caller at a time reaches the progress behind it. Once closed, every step throws Cancelled.
class ProgressGate {
 public:
  explicit ProgressGate(Progress& behind) : behind_(behind) {}
  void step(std::string_view stage);
  void close();

 private:
  std::mutex mutex_;
  Progress& behind_;
  bool closed_ = false;
};

// The progress of one exporter: its steps go through the gate, its notes are kept.
class GatedProgress : public Progress {
 public:
  explicit GatedProgress(ProgressGate& gate) : gate_(gate) {}
  void step(std::string_view stage) override { gate_.step(stage); }
  void note(std::string_view sentence) override { notes_.emplace_back(sentence); }
  const std::vector<std::string>& notes() const { return notes_; }

 private:
  ProgressGate& gate_;
  std::vector<std::string> notes_;
};

struct ExportTask {
  ExportTask(const Exporter& of, ProgressGate& gate)
      : exporter(of), needs(of.needs()), progress(gate), started(needs.others) {}
  const Exporter& exporter;
  ExportNeeds needs;
  GatedProgress progress;
  MemorySink files;  // until its turn comes
  std::exception_ptr fault;
  bool started;  // those that need all others are not the crew's
};

// Any number of threads call work(), each returns when nothing is left to begin. One of them tells when the
// supply is known.
class ExportCrew {
 public:
  ExportCrew(std::deque<ExportTask>& tasks, const Evaluation& result, const Supply& supply,
             ProgressGate& gate, MadeOnce& shared)
      : tasks_(tasks), result_(result), supply_(supply), gate_(gate), shared_(shared) {}
  void work();
  void supply_is_known();
  // Begins nothing more; what runs ends at its next step.
  void stop();

 private:
  ExportTask* next();  // waits; null when nothing is left
  ExportTask* ready();
  void run(ExportTask& task);
  void ended(const ExportTask& task);

  std::deque<ExportTask>& tasks_;
  const Evaluation& result_;
  const Supply& supply_;
  ProgressGate& gate_;
  MadeOnce& shared_;
  std::mutex mutex_;
  std::condition_variable changed_;
  bool supply_known_ = false, alone_ = false, stopped_ = false;
};

}  // namespace lamwright
