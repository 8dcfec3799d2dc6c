// The TOML parser, set up once: no stream operators, exceptions on.
#pragma once
#define TOML_EXCEPTIONS 1
#define TOML_ENABLE_FORMATTERS 0
#include <toml++/toml.h>
