"""A headless Chromium for the tests of the page, driven through Debian's chromedriver, and what is read from it."""
import atexit
import base64
import json
import os
import shutil
import tempfile
import zlib

import numpy

from harness import Skip

# The network flags keep the browser itself quiet, so that whatever is asked for was asked for by the page. Software
# drawing gives a 3D canvas on a machine without a graphics card.
QUIET = ("--headless=new --no-sandbox --no-first-run --disable-background-networking --disable-component-update "
         "--disable-sync --disable-quic --hide-scrollbars --force-device-scale-factor=1").split()
DRAWS = ["--use-angle=swiftshader", "--enable-unsafe-swiftshader", "--ignore-gpu-blocklist"]
FLAT = ["--disable-gpu", "--disable-3d-apis"]
OPEN = {}


def browser(three_d=True):
    """One browser of each kind for all tests."""
    if three_d not in OPEN:
        OPEN[three_d] = start(DRAWS if three_d else FLAT)
    return OPEN[three_d]


def start(flags):
    try:
        from selenium import webdriver
        from selenium.webdriver.chrome.service import Service
    except ImportError:
        raise Skip("python3-selenium is not installed")
    if not os.path.exists("/usr/bin/chromedriver"):
        raise Skip("chromium-driver is not installed")
    folder = tempfile.mkdtemp(prefix="press-browser-")
    options = webdriver.ChromeOptions()
    options.binary_location = "/usr/bin/chromium"
    for flag in QUIET + flags + ["--user-data-dir=" + folder]:
        options.add_argument(flag)
    options.set_capability("goog:loggingPrefs", {"browser": "ALL", "performance": "ALL"})
    driver = webdriver.Chrome(service=Service("/usr/bin/chromedriver"), options=options)
    atexit.register(shutil.rmtree, folder, ignore_errors=True)
    atexit.register(driver.quit)
    return driver


def opened(path, three_d=True, width=1280, height=1400):
    """The page as it stands when its view is ready, with what it wrote to the console and asked for."""
    driver = browser(three_d)
    driver.execute_cdp_cmd("Emulation.setDeviceMetricsOverride",
                           {"width": width, "height": height, "deviceScaleFactor": 1, "mobile": False})
    driver.get("about:blank")
    driver.get_log("browser"), driver.get_log("performance")
    driver.get("file://" + path)
    if three_d:
        waited = """var done = arguments[0], left = 300;
            (function look() {
              if (document.querySelector("canvas[data-ready]") || !left--) done(); else setTimeout(look, 100);
            })();"""
        driver.set_script_timeout(60)
        driver.execute_async_script(waited)
    return driver


def complaints(driver):
    return [entry["message"] for entry in driver.get_log("browser") if entry["level"] in ("SEVERE", "WARNING")]


def asked_for(driver):
    """Addresses of everything that the page requested, itself left out."""
    addresses = []
    for entry in driver.get_log("performance"):
        message = json.loads(entry["message"])["message"]
        if message["method"] == "Network.requestWillBeSent":
            addresses.append(message["params"]["request"]["url"])
    return addresses


def png_pixels(data):
    """Rows of red, green, blue of an 8-bit PNG without interlacing (W3C PNG, clauses 7 to 9)."""
    assert data[:8] == b"\x89PNG\r\n\x1a\n", data[:8]
    at, packed, palette, head = 8, b"", None, None
    while at < len(data):
        size, kind = int.from_bytes(data[at:at + 4], "big"), data[at + 4:at + 8]
        body = data[at + 8:at + 8 + size]
        assert zlib.crc32(kind + body) == int.from_bytes(data[at + 8 + size:at + 12 + size], "big"), kind
        if kind == b"IHDR":
            head = body
        elif kind == b"PLTE":
            palette = numpy.frombuffer(body, numpy.uint8).reshape(-1, 3)
        elif kind == b"IDAT":
            packed += body
        at += 12 + size
    width, height = int.from_bytes(head[:4], "big"), int.from_bytes(head[4:8], "big")
    assert head[8] == 8 and head[12] == 0, head
    channels = {0: 1, 2: 3, 3: 1, 6: 4}[head[9]]
    rows = unfiltered(zlib.decompress(packed), width * channels, height, channels).reshape(height, width, channels)
    if palette is not None:
        return palette[rows[:, :, 0]]
    return numpy.repeat(rows, 3, axis=2) if channels == 1 else rows[:, :, :3]


def unfiltered(raw, stride, height, step):
    out = numpy.zeros((height, stride), numpy.uint8)
    before = numpy.zeros(stride, numpy.int32)
    for y in range(height):
        kind = raw[y * (stride + 1)]
        line = numpy.frombuffer(raw, numpy.uint8, stride, y * (stride + 1) + 1).astype(numpy.int32)
        if kind == 2:
            line = (line + before) & 255
        elif kind:
            line = line.copy()
            for x in range(stride):
                left = line[x - step] if x >= step else 0
                corner = before[x - step] if x >= step else 0
                if kind == 1:
                    line[x] = (line[x] + left) & 255
                elif kind == 3:
                    line[x] = (line[x] + (left + before[x]) // 2) & 255
                else:
                    guess = left + before[x] - corner
                    near = [abs(guess - left), abs(guess - before[x]), abs(guess - corner)]
                    line[x] = (line[x] + (left, before[x], corner)[near.index(min(near))]) & 255
        out[y] = line
        before = line
    return out


def canvas_pixels(driver):
    """What the 3D view shows once whatever it was asked for is drawn: the frame after the next."""
    address = driver.execute_async_script("""var done = arguments[0];
        requestAnimationFrame(function () { requestAnimationFrame(function () {
          done(document.querySelector("#stage canvas").toDataURL("image/png")); }); });""")
    return png_pixels(base64.b64decode(address.split(",", 1)[1]))


def inked(pixels):
    """Share of pixels that are not white."""
    return float((pixels.min(axis=2) < 250).mean())


def printed(driver):
    """The page as a PDF, as the browser prints it."""
    from selenium.webdriver.common.print_page_options import PrintOptions
    options = PrintOptions()
    options.background = True
    options.page_width, options.page_height = 21.0, 29.7
    return base64.b64decode(driver.print_page(options))
