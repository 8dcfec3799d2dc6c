// Round numbers for scales: 1, 2 and 5 times a power of ten.
#pragma once

namespace lamwright::drawing {

// The greatest of them that is not above `most` > 0.
double one_two_five_below(double most);

}  // namespace lamwright::drawing
