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
  std::string file;
  int line = 0;
  int column = 0;
  std::string key;
};

std::string to_text(const Place& place);

// Thrown by every part of the library; nothing else leaves it. The message is one line:
// "<place>: <problem>; <remedy>". The problem names the value and the allowed range, the remedy the way out.
class Error : public std::exception {
 public:
  Error(ErrorKind kind, Place where, std::string problem, std::string remedy = {});

  ErrorKind kind() const { return kind_; }
  const Place& where() const { return where_; }
  const std::string& problem() const { return problem_; }
  const std::string& remedy() const { return remedy_; }
  const char* what() const noexcept override { return message_.c_str(); }

 private:
  ErrorKind kind_;
  Place where_;
  std::string problem_;
  std::string remedy_;
  std::string message_;
};

inline Error job_error(Place where, std::string problem, std::string remedy = {}) {
  return {ErrorKind::job, std::move(where), std::move(problem), std::move(remedy)};
}
inline Error geometry_error(std::string where, std::string problem, std::string remedy = {}) {
  return {ErrorKind::geometry, Place{{}, 0, 0, std::move(where)}, std::move(problem), std::move(remedy)};
}
inline Error file_error(std::string path, std::string problem, std::string remedy = {}) {
  return {ErrorKind::file, Place{std::move(path), 0, 0, {}}, std::move(problem), std::move(remedy)};
}

// A programmer's mistake, checked in release builds too.
void ensure(bool holds, const char* claim);

}  // namespace lamwright
