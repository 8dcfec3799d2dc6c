#include "tests/support/source_folder.hpp"

namespace lamwright::test {

std::filesystem::path source_folder() { return LAMWRIGHT_SOURCE; }

}  // namespace lamwright::test
