// A whole job, stage by stage: reading, planning, checking, solids, files.
#include "tests/bench/bench.hpp"

namespace lamwright::bench {

void bench_job() {}

}  // namespace lamwright::bench
