// A library that is no plug-in: it lacks the one function.
extern "C" int consumer_answer() { return 42; }
