"""Locales that a test compiles itself, put in force in programs that ask for none."""
import atexit
import os
import shutil
import subprocess
import tempfile

ADOPT = """#include <locale>
namespace { const std::locale before = std::locale::global(std::locale("")); }
"""
SHOW = """#include <ctype.h>
#include <stdio.h>
int main() { printf("%.1f %c", 1.5, toupper('i')); }
"""
# What the program above prints: a decimal comma, and in Turkish no I for an i.
SHOWN = {"C": "1.5 I", "de_DE": "1,5 I", "tr_TR": "1,5 i"}
MADE = {}


def folder():
    if "folder" not in MADE:
        MADE["folder"] = tempfile.mkdtemp(prefix="locales-")
        atexit.register(shutil.rmtree, MADE["folder"], ignore_errors=True)
    return MADE["folder"]


def made(name, command):
    """A path in the folder, made by a command that ends with it."""
    path = os.path.join(folder(), name)
    if not os.path.exists(path):
        done = subprocess.run([*command, path], capture_output=True, text=True)
        assert os.path.exists(path), done.stderr
    return path


def compiled(name, text, *options):
    source = os.path.join(folder(), name + ".cpp")
    with open(source, "w", encoding="utf-8") as file:
        file.write(text)
    return made(name, ["g++", *options, source, "-o"])


def shown(environment):
    program = compiled("show", SHOW)
    return subprocess.run([program], env=dict(environment, PATH="/usr/bin:/bin"), check=True, capture_output=True, text=True).stdout


def in_force(name):
    """Environment in which a program runs under a locale like "de_DE" although it sets none; proven by another program."""
    made(name + ".UTF-8", ["localedef", "-i", name, "-f", "UTF-8"])
    # A sanitizer wants to be the first library unless it is told not to mind, and the C library keeps the path for good.
    environment = {"LOCPATH": folder(), "LC_ALL": name + ".UTF-8", "LANG": name + ".UTF-8",
                   "LD_PRELOAD": compiled("adopt.so", ADOPT, "-shared", "-fPIC"),
                   "ASAN_OPTIONS": "verify_asan_link_order=0:detect_leaks=0"}
    assert shown({}) == SHOWN["C"] and shown(environment) == SHOWN[name], (shown({}), shown(environment))
    return environment
