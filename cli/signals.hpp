// Interruption: a signal is noted and acted on at the next stage, so that nothing is left half written.
#pragma once

namespace lamwright::cli {

// Notes SIGINT and SIGTERM; a write past a file-size limit or to a closed pipe becomes an ordinary error.
void watch_signals();
// The signal noted so far, or 0.
int caught_signal();

}  // namespace lamwright::cli
