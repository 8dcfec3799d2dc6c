"""Leaves out of a job sheet what hangs on the versions of libraries: golden_page.py FILE, in place.

Still pictures are packed by zlib, the script of the 3D view is a library of its own, the press as glTF has its own golden
file, and the style stands in the source as it is; texts and plots stay.
"""
import re
import sys


def main(path):
    with open(path, encoding="utf-8") as file:
        page = file.read()
    page = re.sub(r'src="data:image/png;base64,[^"]*"', 'src="data:image/png"', page)
    page, scripts = re.subn(r"(<script[^>]*>).*?(</script>)", r"\1\2", page, flags=re.S)
    page, styles = re.subn(r"(<style>).*?(</style>)", r"\1\2", page, flags=re.S)
    assert (scripts, styles) == (2, 1), (scripts, styles)
    # A line for each piece, so that a change is seen where it is.
    page = re.sub(r"(</(?:li|tr|h2|h3|p|details|figure|article|section|script|style|div)>)", r"\1\n", page)
    with open(path, "w", encoding="utf-8") as file:
        file.write(page)


if __name__ == "__main__":
    main(sys.argv[1])
