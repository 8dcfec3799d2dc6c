// What came of a series of runs, as a table.
#pragma once
#include <string>
#include <vector>

#include "cli/runs.hpp"
#include "kernel/supply/supply.hpp"

namespace lamwright::cli {

// One run of a series. Without a plan there are errors.
struct Outcome {
  Run run;
  int status = 0;                                 // exit status that the run alone would have
  std::vector<std::vector<std::string>> figures;  // heading and value of each
};

// --figure POINTER: figures of the summary in the table.
OptionRow figure_option();
std::vector<std::string> figure_pointers(const po::variables_map& values);

// The status of a run: wrong job, failed check (none with `despite_fails`), done.
int status_of(const Evaluation& result, bool despite_fails);

// `supply` is null where nothing was nested or counted. `pointers` name figures of the summary on top of the
// usual ones (RFC 6901); of a list its length is told. A figure that the run has not, or an empty list, is
// left empty.
Outcome outcome(const Run& run, const Evaluation& result, const Supply* supply, int status,
                const std::vector<std::string>& pointers);

// One record a run under a head; the columns of all runs are the same.
std::string results_csv(const std::vector<Outcome>& outcomes);
// Names, values, verdicts alone, for people.
std::string results_text(const std::vector<Outcome>& outcomes);
// The status of the first that did not end well.
int first_fault(const std::vector<Outcome>& outcomes);

}  // namespace lamwright::cli
