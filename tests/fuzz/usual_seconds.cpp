#include "tests/fuzz/target.hpp"

namespace lamwright::fuzz {

// With the sanitizers readers are some twenty times slower than without: the largest drawings within their
// limits take a second or two.
int most_seconds() { return 5; }

}  // namespace lamwright::fuzz
