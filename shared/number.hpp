// Numbers as text, independent of the locale.
#pragma once
#include <string>

namespace lamwright {

// Fixed notation with at most `decimals` places (0 to 12), no trailing zeros, never "-0".
std::string number(double value, int decimals = 3);

// value rounded to a multiple of 10^-decimals; -0 becomes 0. Not finite stays as it is.
double rounded(double value, int decimals);

// The next tenth that is truly less, or truly more: limits given as advice hold when they are taken.
double tenth_below(double value);
// The greatest multiple of 10^-decimals that is not above value: for limits that people are told to keep.
double rounded_down(double value, int decimals);
double tenth_above(double value);  // the least tenth above the value

// "1 former", "3 formers"; the plural is the singular with an s.
std::string counted(long count, const std::string& singular);

}  // namespace lamwright
