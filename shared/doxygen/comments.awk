# Turns the plain comments of a header into ones that doxygen reads, line for line, so that its warnings name the
# right lines: the first comment tells of the file, a comment above a declaration or behind it tells of that
# declaration, and one that stands by several names in a line tells of each. Text is text: what doxygen would take for
# a command or markup is escaped, words between back quotes become code.

{ line[NR] = $0 }

function escaped(text) {
  gsub(/[\\@<>&#%]/, "\\\\&", text)
  gsub(/--/, "\\\\&", text)
  gsub(/ ::/, " \\::", text)
  while (match(text, /`[^`]*`/))
    text = substr(text, 1, RSTART - 1) "<code>" substr(text, RSTART + 1, RLENGTH - 2) "</code>" \
           substr(text, RSTART + RLENGTH)
  return text
}

# Where the comment of a line begins, 0 without one. No header has // inside a string.
function comment_at(i) { return index(line[i], "//") }

# Commas outside of all brackets and strings become newlines: one declared name a piece.
function parted(code, n, c, depth, quoted, out) {
  for (n = 1; n <= length(code); ++n) {
    c = substr(code, n, 1)
    if (c == "\"") quoted = !quoted
    if (!quoted && c ~ /[({<[]/) ++depth
    if (!quoted && c ~ /[)}>\]]/) --depth
    out = out (c == "," && depth == 0 && !quoted ? "\n" : c)
  }
  return out
}

# "double a = 0, b = 0;" with its words for each name. Anything else is given back with its words before it.
function told(code, words, count, names, type, n, out) {
  words = words == "" ? "" : "/**" words " */ "
  count = code ~ /;$/ ? split(parted(substr(code, 1, length(code) - 1)), names, "\n") : 1
  if (count == 1) return words code
  type = names[1]
  sub(/ *[=({].*$/, "", type)
  sub(/[A-Za-z_0-9]+$/, "", type)
  out = words names[1] ";"
  for (n = 2; n <= count; ++n) out = out " " words (above == "" ? "" : "/**" above " */ ") type names[n] ";"
  return out
}

# A comment that stands above nothing, or above the guard, belongs to the file.
function stands_alone(i) {
  while (line[i] ~ /^ *\/\//) ++i
  return line[i] == "" || line[i] == "#pragma once"
}

END {
  for (i = 1; i <= NR; ++i) {
    at = comment_at(i)
    code = at ? substr(line[i], 1, at - 1) : line[i]
    sub(/ +$/, "", code)
    text = at ? escaped(substr(line[i], at + 2)) : ""
    if (code ~ /^ *enum .*\{$/) in_enum = 1
    if (code ~ /^ *\}/) in_enum = 0
    if (at && code == "") {
      alone = alone ? 2 : stands_alone(i)
      print (alone == 0 ? "///" : alone == 1 ? "/**" : "   ") text
      above = above text
      continue
    }
    if (alone) {
      print "\\file */"
    } else if (code ~ /^[#}]/ || code == "") {
      print code
    } else {
      # Words that go on below, in the same column.
      for (last = i; at && last < NR && line[last + 1] ~ /^ *\/\// && comment_at(last + 1) == at; ++last)
        text = text escaped(substr(line[last + 1], at + 2))
      print goes_on ? code (text == "" ? "" : "  ///<" text) : told(code, text)
      goes_on = code !~ (in_enum ? "[,{]$" : "[;{}:]$")
      for (; i < last; ++i) print ""
    }
    above = ""
    alone = 0
  }
}
