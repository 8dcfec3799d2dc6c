// The one exception type of the library and the place an error points to.
#pragma once
#include <exception>
#include <string>

namespace lamwright {

// What went wrong, as far as the caller must tell it apart. Only the command line maps kinds to exit
// statuses.
enum class ErrorKind {
  job,       // the job file is wrong
  geometry,  // the job asks for geometry that does not exist (collapse, kink, no room)
  file,      // a file or folder could not be read or written
  internal,  // the tool itself failed
};

// Where in the input an error lies. Empty parts are left out of the message; line and column count from 1, 0
// = unknown.
struct Place {
  std::string file;  // as the caller named it; nothing is opened by it
  int line = 0;      // of that file
  int column = 0;    // of that line
  std::string key;   // dotted key of the job file, or the part, bore or bend meant
};

// "job.toml:12:9: panel.width", without the parts that are not known; empty when none is.
std::string to_text(const Place& place);

// Thrown by every part of the library; nothing else leaves it. The message is one line:
// "<place>: <problem>; <remedy>". The problem names the value and the allowed range, the remedy the way out.
class Error : public std::exception {
 public:
  // Neither problem nor remedy ends with a full stop; without a remedy the message ends with the problem.
  Error(ErrorKind kind, Place where, std::string problem, std::string remedy = {});

  ErrorKind kind() const { return kind_; }                 // decides what a caller does with it
  const Place& where() const { return where_; }            // empty for errors that have no place in a file
  const std::string& problem() const { return problem_; }  // what is wrong, with value and range
  const std::string& remedy() const { return remedy_; }    // what to do about it; may be empty
  const char* what() const noexcept override { return message_.c_str(); }  // the whole line, UTF-8

 private:
  ErrorKind kind_;
  Place where_;
  std::string problem_;
  std::string remedy_;
  std::string message_;
};

// For what a job file, a notebook or a table of the user's says; `where` is the place in it.
inline Error job_error(Place where, std::string problem, std::string remedy = {}) {
  return {ErrorKind::job, std::move(where), std::move(problem), std::move(remedy)};
}
// For shapes that cannot be; `where` is a part, bore, bend or key, there is no file.
inline Error geometry_error(std::string where, std::string problem, std::string remedy = {}) {
  return {ErrorKind::geometry, Place{{}, 0, 0, std::move(where)}, std::move(problem), std::move(remedy)};
}
// For a file or folder that cannot be read or written.
inline Error file_error(std::string path, std::string problem, std::string remedy = {}) {
  return {ErrorKind::file, Place{std::move(path), 0, 0, {}}, std::move(problem), std::move(remedy)};
}

// A programmer's mistake, checked in release builds too. Throws Error (internal) naming `claim`, a sentence
// that should have been true.
void ensure(bool holds, const char* claim);

}  // namespace lamwright
