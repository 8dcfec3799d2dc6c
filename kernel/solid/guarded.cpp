#include "kernel/solid/guarded.hpp"

#include <Standard_Failure.hxx>
#include <Standard_Type.hxx>

#include "shared/error.hpp"

namespace lamwright {
namespace {

[[noreturn]] void refuse(const std::string& operation, const std::string& reason) {
  throw Error(ErrorKind::internal, Place{{}, 0, 0, operation}, reason, "please report it with the job file");
}

}  // namespace

void guarded_call(const std::string& operation, const std::function<void()>& fn) {
  try {
    fn();
  } catch (const Standard_Failure& failure) {  // first: it is not a std::exception
    const std::string type = failure.DynamicType()->Name();
    const std::string text = failure.GetMessageString();  // often empty
    refuse(operation, "the modelling kernel failed with " + type + (text.empty() ? "" : " (" + text + ")"));
  } catch (const Error&) {
    throw;
  } catch (const std::exception& failure) {
    refuse(operation, failure.what());
  }
}

}  // namespace lamwright
