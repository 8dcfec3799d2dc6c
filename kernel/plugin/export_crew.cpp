#include "kernel/plugin/export_crew.hpp"

#include <algorithm>

namespace lamwright {

void ProgressGate::step(std::string_view stage) {
  const std::lock_guard lock(mutex_);
  if (closed_) throw Cancelled{};
  behind_.step(stage);
}

void ProgressGate::close() {
  const std::lock_guard lock(mutex_);
  closed_ = true;
}

void ExportCrew::work() {
  while (ExportTask* task = next()) {
    run(*task);
    ended(*task);
  }
}

void ExportCrew::supply_is_known() {
  const std::lock_guard lock(mutex_);
  supply_known_ = true;
  changed_.notify_all();
}

void ExportCrew::stop() {
  gate_.close();
  const std::lock_guard lock(mutex_);
  stopped_ = true;
  changed_.notify_all();
}

ExportTask* ExportCrew::next() {
  std::unique_lock lock(mutex_);
  while (!stopped_) {
    if (std::all_of(tasks_.begin(), tasks_.end(), [](const ExportTask& task) { return task.started; }))
      return nullptr;
    if (ExportTask* task = ready()) {
      task->started = true;
      alone_ = alone_ || task->needs.alone;
      return task;
    }
    changed_.wait(lock);
  }
  return nullptr;
}

// Those that need a thread to themselves come first: nothing can be made of their time by others.
ExportTask* ExportCrew::ready() {
  for (const bool alone : {true, false})
    for (ExportTask& task : tasks_)
      if (!task.started && task.needs.alone == alone && (supply_known_ || !task.needs.supply) &&
          !(alone && alone_))
        return &task;
  return nullptr;
}

void ExportCrew::run(ExportTask& task) {
  try {
    task.progress.step("writing " + task.exporter.name());
    task.exporter.write({*result_.job, *result_.plan, result_.findings, task.progress, result_.figures,
                         task.needs.supply ? supply_ : kNoSupply, &shared_},
                        task.files);
  } catch (...) {
    task.fault = std::current_exception();
    stop();
  }
}

void ExportCrew::ended(const ExportTask& task) {
  if (!task.needs.alone) return;
  const std::lock_guard lock(mutex_);
  alone_ = false;
  changed_.notify_all();
}

}  // namespace lamwright
