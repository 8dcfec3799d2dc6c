// Job files to a Job.
#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "kernel/job/job.hpp"
#include "kernel/job/keys.hpp"
#include "kernel/job/profile_reading.hpp"
#include "kernel/job/setting.hpp"
#include "kernel/panel/trade.hpp"
#include "shared/error.hpp"

namespace lamwright {

// A file of trade rows: its name for messages, and what it holds.
struct DataText {
  std::string name;  // as messages call it
  std::string text;  // TOML
};

// What the kernel asks the outside world for. It reads no file, clock or environment itself.
class Sources {
 public:
  virtual ~Sources() = default;
  // Contents of a file that the job names, relative to the job. Throws Error (file).
  virtual std::string read(const std::string& name) const = 0;
  // The day for drawings when the job gives none: "2026-03-14" or empty.
  virtual std::string date() const { return {}; }
  // Trade rows that come on top of the job's own, in this order. Throws Error (file).
  virtual std::vector<DataText> data() const { return {}; }
  // Values in place of the job's own, in this order.
  virtual std::vector<Setting> settings() const { return {}; }
};

// A job, or what is wrong with its text.
struct JobResult {
  std::optional<Job> job;     // set when there is no error
  std::vector<Error> errors;  // in file order, at most twenty, all of kind job, geometry or file
};

// `file` is the name for messages. `schemas` are the keys of press methods and exporters with full paths.
// Never throws for what the text holds. Text: UTF-8 with or without a byte-order mark, LF or CRLF.
JobResult read_job(std::string_view text, const std::string& file, const std::vector<KeyRow>& schemas,
                   const Sources& sources);

// A flat piece of a job's lay-up, as a notebook needs it: units, described face and lay-up, and the name of
// the notebook where the job gives one (it need not exist yet). No springback; other keys are neither asked
// for nor checked.
JobResult read_test_piece(std::string_view text, const std::string& file, const Sources& sources);

// Only the `panel.profile` of a job file, as `measure` and `fit` need it: other keys are neither asked for
// nor checked.
struct ProfileResult {
  std::optional<ProfileReading> reading;  // set when there is no error
  std::vector<Error> errors;              // at most twenty
};
// Throws nothing for what the text holds.
ProfileResult read_profile(std::string_view text, const std::string& file, const Sources& sources);

}  // namespace lamwright
