// Job files: whatever the bytes are, they are read or refused with at most twenty errors, each with a place.
#include "kernel/job/read_job.hpp"
#include "kernel/plugin/registry.hpp"
#include "tests/fuzz/job_checks.hpp"
#include "tests/fuzz/served_files.hpp"
#include "tests/fuzz/target.hpp"

namespace {

using namespace lamwright;

std::vector<KeyRow> schemas_of_methods() {
  Registry registry;
  add_press_methods(registry);
  return registry.keys();
}

void check_profile(std::string_view text, const Sources& sources) {
  const ProfileResult result = read_profile(text, "job.toml", sources);
  fuzz::check_errors(result.errors);
  ensure(result.reading.has_value() == result.errors.empty(), "a profile is read or refused");
}

void check_test_piece(std::string_view text, const Sources& sources) {
  const JobResult result = read_test_piece(text, "job.toml", sources);
  fuzz::check_errors(result.errors);
  ensure(result.job.has_value() == result.errors.empty(), "a test piece is read or refused");
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const std::vector<KeyRow> schemas = schemas_of_methods();
  const auto text = fuzz::text_of(data, size);
  const fuzz::ServedFiles sources;
  // Both read a part of what a job is read for; one in eight inputs is enough for them.
  if (size % 8 == 0) check_profile(text, sources);
  if (size % 8 == 1) check_test_piece(text, sources);
  const JobResult result = read_job(text, "job.toml", schemas, sources);
  fuzz::check_errors(result.errors);
  ensure(result.job.has_value() == result.errors.empty(), "a job is read or refused");
  if (!result.job) return fuzz::kRefused;
  const JobResult again = read_job(text, "job.toml", schemas, sources);
  ensure(again.job && again.job->number == result.job->number,
         "a job that is read again has the same number");
  return 0;
}
