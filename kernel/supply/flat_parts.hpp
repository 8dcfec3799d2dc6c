// Formers, blocks and templates on sheets of board.
#pragma once
#include <functional>

#include "kernel/job/job.hpp"
#include "kernel/press/plan.hpp"
#include "kernel/supply/supply.hpp"

namespace lamwright {

// Every flat part of the press and every aid, as often as it is needed, on sheets of the formers' board. A
// part that fits on none is told in `notes`.
std::vector<CutSheet> flat_parts(const Job& job, const PressPlan& plan, const std::function<void()>& step,
                                 std::vector<std::string>& notes);

// Size of the sheets: the job's, else the board's own.
Vec2 board_sheet(const Job& job);

}  // namespace lamwright
