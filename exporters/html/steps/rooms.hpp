// The steps at the press, each made apart. Sentences that do not apply to the job are left out; a step
// without any is left out by the caller.
#pragma once
#include "exporters/html/steps.hpp"
#include "exporters/html/steps/facts.hpp"

namespace lamwright::html::bench {

Step check_parts(const Facts& facts);
Step rig_lower(const Facts& facts);
Step rig_upper(const Facts& facts);  // of a press of two halves
Step put_on_cauls(const Facts& facts);
Step cut_sheets(const Facts& facts);
Step run_dry(const Facts& facts);
Step get_ready(const Facts& facts);
Step lay_up(const Facts& facts);
Step close_press(const Facts& facts);
Step tighten(const Facts& facts);
Step wait(const Facts& facts);
Step release(const Facts& facts);
Step trim(const Facts& facts);
Step check_shape(const Facts& facts);
Step store(const Facts& facts);

}  // namespace lamwright::html::bench
