"""The press on the job sheet as a browser draws it: turned, opened, named, lost and found again."""
import numpy

import browser
from cases_page import demo, page_of
from harness import test
from jobs import changed, small


@test
def a_browser_opens_the_page_without_a_complaint_or_a_request(bench):
    path, _ = demo(bench)
    driver = browser.opened(path)
    assert browser.complaints(driver) == []
    outside = [one for one in browser.asked_for(driver) if not one.startswith(("data:", "file://" + path, "blob:"))]
    assert outside == ["about:blank"] * len(outside), outside


@test
def the_press_is_drawn_opens_on_the_slider_and_shows_its_kinds_apart(bench):
    path, summary = demo(bench)
    driver = browser.opened(path)
    shut = browser.canvas_pixels(driver)
    assert 0.05 < browser.inked(shut) < 0.9, browser.inked(shut)
    assert len(numpy.unique(shut.reshape(-1, 3), axis=0)) > 50
    move = "var s = document.getElementById('open'); s.value = arguments[0]; s.dispatchEvent(new Event('input'))"
    driver.execute_script(move, 1)
    wide = browser.canvas_pixels(driver)
    assert (wide != shut).any(axis=2).mean() > 0.03
    driver.execute_script(move, 0)
    shut, before = browser.canvas_pixels(driver), shut
    # The distance comes back to the last digits only: a few pixels along edges may differ.
    assert (shut != before).any(axis=2).mean() < 0.01
    boxes = driver.find_elements("css selector", "#kinds input")
    assert len(boxes) >= 6, len(boxes)
    ink = [browser.inked(shut)]
    for box in boxes:
        box.click()
        ink.append(browser.inked(browser.canvas_pixels(driver)))
    assert ink[-1] == 0, ink
    assert len(set(ink)) > len(boxes) // 2, ink
    for box in boxes:
        box.click()
    assert (browser.canvas_pixels(driver) == shut).all()


@test
def a_piece_tells_its_name_under_the_pointer(bench):
    path, summary = demo(bench)
    driver = browser.opened(path)
    from selenium.webdriver.common.action_chains import ActionChains
    canvas = driver.find_element("css selector", "#stage canvas")
    ActionChains(driver).move_to_element(canvas).perform()
    name = driver.find_element("id", "name").text
    known = [part["name"] for part in summary["parts"]] + ["strap", "cover", "pin", "ratchet"]
    assert any(name.startswith(one) for one in known), name
    ActionChains(driver).move_to_element_with_offset(canvas, -canvas.size["width"] // 2 + 3, 3).perform()
    assert driver.find_element("id", "name").text == ""


@test
def dragging_turns_the_press_and_one_press_of_the_button_turns_it_back(bench):
    path, _ = demo(bench)
    driver = browser.opened(path)
    from selenium.webdriver.common.action_chains import ActionChains
    before = browser.canvas_pixels(driver)
    canvas = driver.find_element("css selector", "#stage canvas")
    ActionChains(driver).move_to_element(canvas).click_and_hold().move_by_offset(160, 40).release().perform()
    turned = browser.canvas_pixels(driver)
    assert (turned != before).any(axis=2).mean() > 0.05
    driver.find_element("id", "front").click()
    again = browser.canvas_pixels(driver)
    assert (again != before).any(axis=2).mean() < 0.01, (again != before).any(axis=2).mean()


@test
def keys_turn_the_press_and_come_nearer(bench):
    path, _ = demo(bench)
    driver = browser.opened(path)
    canvas = driver.find_element("css selector", "#stage canvas")
    before = browser.canvas_pixels(driver)
    from selenium.webdriver.common.keys import Keys
    canvas.send_keys(Keys.ARROW_LEFT)
    turned = browser.canvas_pixels(driver)
    assert (turned != before).any(axis=2).mean() > 0.02
    canvas.send_keys("+++")
    nearer = browser.canvas_pixels(driver)
    assert browser.inked(nearer) > 1.2 * browser.inked(turned), (browser.inked(nearer), browser.inked(turned))
    canvas.send_keys("-" * 60)
    assert browser.inked(browser.canvas_pixels(driver)) > 0.01  # it never gets so far away that it is lost


@test
def a_tap_tells_a_name_that_stays_and_until_then_a_finger_scrolls_the_page(bench):
    path, _ = demo(bench)
    driver = browser.opened(path, width=390)
    touch = "return document.querySelector('#stage canvas').style.touchAction"
    assert driver.execute_script(touch) == "pan-y"
    box = driver.execute_script("return document.querySelector('#stage canvas').getBoundingClientRect().toJSON()")
    driver.execute_cdp_cmd("Emulation.setTouchEmulationEnabled", {"enabled": True})
    try:
        point = {"x": box["x"] + box["width"] / 2, "y": box["y"] + box["height"] / 2}
        driver.execute_cdp_cmd("Input.dispatchTouchEvent", {"type": "touchStart", "touchPoints": [point]})
        driver.execute_cdp_cmd("Input.dispatchTouchEvent", {"type": "touchEnd", "touchPoints": []})
        assert driver.find_element("id", "name").text != ""
        assert driver.execute_script(touch) == "none"
    finally:
        driver.execute_cdp_cmd("Emulation.setTouchEmulationEnabled", {"enabled": False})


@test
def a_view_that_is_lost_gives_way_to_the_still_picture_and_comes_back(bench):
    path, _ = demo(bench)
    driver = browser.opened(path)
    before = browser.canvas_pixels(driver)
    driver.execute_script("""var gl = document.querySelector("#stage canvas").getContext("webgl");
        window.loss = gl.getExtension("WEBGL_lose_context"); window.loss.loseContext()""")
    shown = """var i = document.querySelector("#stage img"), c = document.querySelector("#stage canvas");
        return [getComputedStyle(i).display, getComputedStyle(c).display, document.getElementById("controls").hidden]"""
    assert soon(lambda: driver.execute_script(shown) == ["block", "none", True]), driver.execute_script(shown)
    driver.execute_script("window.loss.restoreContext()")
    assert soon(lambda: driver.execute_script(shown) == ["none", "block", False]), driver.execute_script(shown)
    assert soon(lambda: (browser.canvas_pixels(driver) != before).any(axis=2).mean() < 0.01)


def soon(holds):
    """Whether it holds within some seconds: events come when the browser gets to them."""
    import time
    for _ in range(100):
        if holds():
            return True
        time.sleep(0.05)
    return False


@test
def a_job_called_like_one_of_its_pieces_opens_all_the_same(bench):
    path, _ = page_of(bench, changed(small(), title="panel-01"))
    driver = browser.opened(path)
    shut = browser.canvas_pixels(driver)
    driver.execute_script("var s = document.getElementById('open'); s.value = 1; s.dispatchEvent(new Event('input'))")
    assert (browser.canvas_pixels(driver) != shut).any(axis=2).mean() > 0.02
    hidden = """document.querySelectorAll("#kinds input").forEach(function (box) {
        if (box.dataset.kind !== "Beams" && box.dataset.kind !== "Panel") box.click(); })"""
    driver.execute_script(hidden)
    both = rows_of_ink(browser.canvas_pixels(driver))
    driver.execute_script("""document.querySelector("#kinds input[data-kind=Panel]").click()""")
    beams = rows_of_ink(browser.canvas_pixels(driver))
    assert both[0] < beams[0], (both, beams)  # the panel has risen over what stays


def rows_of_ink(pixels):
    rows = numpy.flatnonzero((pixels.min(axis=2) < 250).any(axis=1))
    return int(rows[0]), int(rows[-1])


@test
def without_3d_the_still_picture_stands(bench):
    path, _ = demo(bench)
    driver = browser.opened(path, three_d=False)
    assert browser.complaints(driver) == []
    shown = driver.execute_script("""var i = document.querySelector("#stage img"), c = document.querySelector("#stage canvas");
        return [i.complete && i.naturalWidth, getComputedStyle(i).display, c && getComputedStyle(c).display,
                document.getElementById("controls").hidden]""")
    assert shown[0] >= 1000 and shown[1] == "block" and not shown[2] and shown[3], shown
