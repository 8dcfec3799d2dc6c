// Files that jobs under test may name; all others do not exist.
#pragma once
#include <map>
#include <string>

#include "kernel/job/read_job.hpp"

namespace lamwright::fuzz {

class ServedFiles : public Sources {
 public:
  std::string read(const std::string& name) const override;
};

}  // namespace lamwright::fuzz
