// What an exporter is: it turns a finished plan into files. It adds no geometry.
#pragma once
#include <functional>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

#include "kernel/check/figures.hpp"
#include "kernel/check/finding.hpp"
#include "kernel/job/job.hpp"
#include "kernel/job/keys.hpp"
#include "kernel/plugin/made_once.hpp"
#include "kernel/press/plan.hpp"
#include "kernel/supply/supply.hpp"

namespace lamwright {

// Thrown when the caller asked to stop; not an Error, nothing is wrong.
struct Cancelled {};

// Told of each stage; may throw Cancelled from step().
class Progress {
 public:
  virtual ~Progress() = default;
  virtual void step(std::string_view stage) { (void)stage; }  // named in few words: "press plan"
  // Something that people should know though nothing is wrong, a sentence.
  virtual void note(std::string_view sentence) { (void)sentence; }
};

// Takes finished files. `path` is relative with forward slashes ("parts/beam.svg"); each is written once.
// Throws Error (file) when it cannot.
class Sink {
 public:
  virtual ~Sink() = default;
  virtual void write(const std::string& path, std::string_view bytes) = 0;  // any bytes, whole
  virtual const std::vector<std::string>& written() const = 0;              // in order
};

inline const Figures kNoFigures{};  // for a plan that was not checked
inline const Supply kNoSupply{};    // where nothing was nested or counted

// What an exporter is given. References must outlive the call.
struct ExportInput {
  const Job& job;                        // that the plan was laid out for
  const PressPlan& plan;                 // what is written down
  const std::vector<Finding>& findings;  // of that plan
  Progress& progress;                    // told of stages, may cancel
  const Figures& figures = kNoFigures;   // empty for a plan that was not checked
  const Supply& supply = kNoSupply;      // empty where nothing was nested or counted
  MadeOnce* shared = nullptr;            // what exporters of one build make for one another; null: none
};

// What an exporter asks of whoever runs several of them at a time.
struct ExportNeeds {
  bool supply = true;   // false: it reads no sheets, lengths or lists, and may begin before they are known
  bool others = false;  // it reads `sink.written()`: all others must have ended
  bool alone = false;   // it uses a library that knows no threads: never two such at a time
};

// Holds nothing of a job: one object writes any number of them.
class Exporter {
 public:
  virtual ~Exporter() = default;
  virtual std::string name() const = 0;                    // as `outputs.only` names it
  virtual std::string summary() const = 0;                 // one line for `list exporters`
  virtual std::vector<KeyRow> keys() const { return {}; }  // its own keys under [outputs.<name>]
  virtual ExportNeeds needs() const { return {}; }         // always the same answer
  // Throws Error; output depends on the input alone (no clock, locale or environment). Other exporters may
  // write on other threads meanwhile.
  virtual void write(const ExportInput& input, Sink& sink) const = 0;
};

}  // namespace lamwright
