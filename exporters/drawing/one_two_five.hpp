// Round numbers for scales and for what is shown of many: 1, 2 and 5 times a power of ten.
#pragma once

namespace lamwright::drawing {

// The greatest of them that is not above `most` > 0.
double one_two_five_below(double most);

// Every how many of things `pitch` > 0 from each other are shown `apart` or more from each other: the least
// of 1, 2, 5, 10 ... that does it.
int every_one_two_five(double pitch, double apart);

}  // namespace lamwright::drawing
