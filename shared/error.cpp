#include "shared/error.hpp"

namespace lamwright {

std::string to_text(const Place& place) {
  std::string text = place.file;
  if (place.line > 0) text += ":" + std::to_string(place.line);
  if (place.line > 0 && place.column > 0) text += ":" + std::to_string(place.column);
  if (!place.key.empty()) text += (text.empty() ? "" : ": ") + place.key;
  return text;
}

Error::Error(ErrorKind kind, Place where, std::string problem, std::string remedy)
    : kind_(kind), where_(std::move(where)), problem_(std::move(problem)), remedy_(std::move(remedy)) {
  message_ = to_text(where_);
  if (!message_.empty()) message_ += ": ";
  message_ += problem_;
  if (!remedy_.empty()) message_ += "; " + remedy_;
}

void ensure(bool holds, const char* claim) {
  if (!holds)
    throw Error(ErrorKind::internal, {}, std::string("a rule of the program does not hold: ") + claim,
                "please report it with the job file");
}

}  // namespace lamwright
