#include "stacked_press.hpp"

#include <algorithm>

#include "kernel/press/one_part/method.hpp"
#include "shared/error.hpp"
#include "shared/number.hpp"

namespace consumer {

using namespace lamwright;

namespace {

constexpr const char* kMostBoards = "press.stacked.most_boards";

void refuse_cauls(const Job& job) {
  if (job.caul.kind == CaulSpec::Kind::bare) return;
  throw job_error({{}, 0, 0, "caul.kind"}, "a stack of boards carries no caul",
                  "set it to \"bare\", or choose another method");
}

void refuse_too_many(std::size_t boards, double most) {
  if (double(boards) <= most) return;
  throw geometry_error(kMostBoards,
                       "the stack takes " + counted(long(boards), "board") + ", at most " + number(most),
                       "take a thicker board, or raise it");
}

}  // namespace

std::vector<KeyRow> StackedPress::keys() const {
  return {{"most_boards", KeyType::integer, "60", 1, 500, {}, "boards that can be clamped in one go"}};
}

Suits StackedPress::suits(const Panel& panel) const {
  const Suits one_part = OnePartPress().suits(panel);
  return {std::min(one_part.rank, 1),
          one_part.rank == 0 ? one_part.reason : "A solid mould would do, with more wood."};
}

PressPlan StackedPress::plan(const Job& job, const Panel& panel) const {
  refuse_cauls(job);
  Job stacked = job;
  stacked.formers.spacing = {SpacingSpec::Kind::pitch, job.formers.thickness};
  PressPlan plan = OnePartPress().plan(stacked, panel);
  refuse_too_many(plan.sections.size(), job.own.number(kMostBoards).value());
  plan.method = name();
  plan.reason = "As the job asks: one solid mould.";
  plan.notes.push_back("Glue the " + counted(long(plan.sections.size()), "board") + " face to face.");
  return plan;
}

}  // namespace consumer
