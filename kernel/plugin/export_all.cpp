#include "kernel/plugin/export_all.hpp"

#include <algorithm>
#include <deque>
#include <thread>

#include "kernel/job/wanted.hpp"
#include "kernel/plugin/export_crew.hpp"
#include "kernel/supply/gather.hpp"

namespace lamwright {
namespace {

std::deque<ExportTask> tasks_of(const Registry& registry, const OutputSpec& outputs, ProgressGate& gate) {
  std::deque<ExportTask> tasks;
  for (const auto& exporter : registry.exporters())
    if (wanted(outputs, exporter->name())) tasks.emplace_back(*exporter, gate);
  return tasks;
}

Supply supply_of(const Evaluation& result, Progress& progress) {
  progress.step("sheets, lengths and lists");
  Supply supply = gather(*result.job, *result.plan, result.figures, [&] { progress.step("sheets"); });
  for (const std::string& note : supply.notes) progress.note(note);
  return supply;
}

// An exporter that stopped because of another says nothing of its own.
std::exception_ptr first_fault(const std::vector<std::exception_ptr>& faults) {
  std::exception_ptr cancelled;
  for (const std::exception_ptr& fault : faults) {
    try {
      if (fault) std::rethrow_exception(fault);
    } catch (const Cancelled&) {
      cancelled = fault;
    } catch (...) {
      return fault;
    }
  }
  return cancelled;
}

void hand_over(const ExportTask& task, Progress& progress, Sink& sink) {
  for (const std::string& path : task.files.written()) sink.write(path, task.files.files().at(path));
  for (const std::string& note : task.progress.notes()) progress.note(note);
}

}  // namespace

Supply export_all(const Evaluation& result, const Registry& registry, Progress& progress, Sink& sink,
                  unsigned threads) {
  ProgressGate gate(progress);
  std::deque<ExportTask> tasks = tasks_of(registry, result.job->outputs, gate);
  const bool sheets =
      std::any_of(tasks.begin(), tasks.end(), [](const ExportTask& task) { return task.needs.supply; });
  GatedProgress gathering(gate);
  Supply supply;
  MadeOnce shared;
  std::vector<std::exception_ptr> faults(1);
  {
    ExportCrew crew(tasks, result, supply, gate, shared);
    std::vector<std::jthread> others;
    try {
      for (std::size_t i = 1; i < std::min<std::size_t>(threads, tasks.size()); ++i)
        others.emplace_back([&crew] { crew.work(); });
      if (sheets) supply = supply_of(result, gathering);
      crew.supply_is_known();
      crew.work();
    } catch (...) {
      faults.front() = std::current_exception();
      crew.stop();
    }
  }
  for (const ExportTask& task : tasks) faults.push_back(task.fault);
  if (const std::exception_ptr fault = first_fault(faults)) std::rethrow_exception(fault);
  for (const std::string& note : gathering.notes()) progress.note(note);
  for (const ExportTask& task : tasks)
    if (!task.needs.others) hand_over(task, progress, sink);
  for (const ExportTask& task : tasks) {
    if (!task.needs.others) continue;
    progress.step("writing " + task.exporter.name());
    task.exporter.write(
        {*result.job, *result.plan, result.findings, progress, result.figures, supply, &shared}, sink);
  }
  return supply;
}

}  // namespace lamwright
