// All that a job asks to be written, by several exporters at a time.
#pragma once
#include "kernel/plugin/evaluate.hpp"

namespace lamwright {

// Runs the exporters that the job's outputs want on up to `threads` threads (at least 1; the calling one is
// one of them), as their needs() allow, and makes sheets, lengths and lists meanwhile where one needs them;
// returns these. `result` has a plan.
//
// Files reach `sink`, and sentences `progress.note`, on the calling thread in the order of registration,
// whatever the number of threads: the result does not depend on it. `progress.step` is called from any of the
// threads, one at a time.
//
// Throws what an exporter or `sink` threw, the first in order of registration; the others are stopped at
// their next step, and nothing more reaches `sink`. Cancelled from `progress` passes through.
Supply export_all(const Evaluation& result, const Registry& registry, Progress& progress, Sink& sink,
                  unsigned threads);

}  // namespace lamwright
