// From the job's panel and lay-up to the Panel.
#pragma once
#include "kernel/job/job.hpp"

namespace lamwright {

// Throws Error (job or geometry): a single ply with computed springback, a profile that collapses or crosses
// itself on one of its faces.
Panel make_panel(const Job& job);

}  // namespace lamwright
