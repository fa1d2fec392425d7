"""The page at the hive in a real browser, at the size of a phone: what a keeper does on a visit, by taps alone.

browser.py COMBCLEAR AXE FOLDER: the program, the script of axe-core, and a folder for pictures of each screen. Ends with 1 if
anything is not as it must be.
"""

import json
import os
import pathlib
import subprocess
import sys
import tempfile
import time
import urllib.request

from selenium import webdriver
from selenium.common.exceptions import StaleElementReferenceException
from selenium.webdriver.common.by import By
from selenium.webdriver.support.ui import WebDriverWait

PHONE, DESK = (390, 844), (1280, 900)
# WCAG 2.2 level AA, by the tags of axe-core. Source: https://www.w3.org/TR/WCAG22/
RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]


class Service:
    """The program on a database of its own, on a free port of this machine."""

    def __init__(self, program, journal=None):
        self.folder = tempfile.TemporaryDirectory()
        self.program = program
        self.settings = {**os.environ, "COMBCLEAR_DB": f"sqlite:{self.folder.name}/page.db", "RUST_LOG": "warn"}
        if journal:
            subprocess.run([program, "import", journal], env=self.settings, check=True, stdout=subprocess.DEVNULL)
        self.process = subprocess.Popen(
            [program, "serve", "--listen", "127.0.0.1:0"], env=self.settings, stdout=subprocess.PIPE, text=True
        )
        line = self.process.stdout.readline()
        self.address = next(word for word in line.split() if word.startswith("http://"))

    def get(self, path):
        with urllib.request.urlopen(self.address + path) as answer:
            return json.load(answer)

    def put(self, path, body):
        request = urllib.request.Request(self.address + path, json.dumps(body).encode(), method="PUT")
        request.add_header("content-type", "application/json")
        with urllib.request.urlopen(request) as answer:
            return json.load(answer)

    def entries(self, holding):
        return next((item["entries"] for item in self.get("/holdings")["items"] if item["holding"] == holding), 0)

    def end(self):
        self.process.terminate()
        self.process.wait()
        self.folder.cleanup()


class Phone:
    """A browser that counts its taps."""

    def __init__(self, address, axe, pictures):
        options = webdriver.ChromeOptions()
        self.data = tempfile.TemporaryDirectory()
        for option in ["--headless", "--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking",
                       "--disable-component-update", "--disable-sync", f"--user-data-dir={self.data.name}"]:
            options.add_argument(option)
        options.set_capability("goog:loggingPrefs", {"browser": "ALL"})
        self.browser = webdriver.Chrome(options=options, service=webdriver.ChromeService("/usr/bin/chromedriver"))
        self.address, self.axe, self.pictures, self.taps = address, axe, pictures, 0
        self.size(PHONE)

    def size(self, size):
        self.browser.execute_cdp_cmd("Emulation.setDeviceMetricsOverride", {
            "width": size[0], "height": size[1], "deviceScaleFactor": 1, "mobile": size == PHONE})

    def open(self, path="/"):
        self.browser.get("about:blank")
        self.browser.get(self.address + path)

    def wait(self, what, seen):
        # What was found may be drawn anew before it is looked at.
        waiting = WebDriverWait(self.browser, 10, ignored_exceptions=[StaleElementReferenceException])
        return waiting.until(lambda _: seen(), f"there is no {what}")

    def one(self, selector, text=""):
        def seen():
            found = self.browser.find_elements(By.CSS_SELECTOR, selector)
            return next((one for one in found if text in one.text and one.is_displayed()), None)
        return self.wait(f"{selector} that says {text!r}", seen)

    def tap(self, selector, text=""):
        def tapped():
            element = self.one(selector, text)
            self.browser.execute_script("arguments[0].scrollIntoView({ block: 'center' })", element)
            element.click()
            return True
        self.wait(f"{selector} that says {text!r} and can be tapped", tapped)
        self.taps += 1

    def heading(self, text):
        return self.one("h1", text)

    def look(self, name):
        """A picture of the screen at each width, light and dark, and what axe-core finds on it."""
        for size in (PHONE, DESK):
            self.size(size)
            for scheme in ("light", "dark"):
                features = [{"name": "prefers-color-scheme", "value": scheme}]
                self.browser.execute_cdp_cmd("Emulation.setEmulatedMedia", {"features": features})
                width = "phone" if size == PHONE else "desk"
                self.browser.save_screenshot(str(self.pictures / f"{name}-{width}-{scheme}.png"))
                found = self.browser.execute_async_script(
                    self.axe + ";const done = arguments[arguments.length - 1];"
                    "axe.run(document, { runOnly: arguments[0] }).then((found) => done(found.violations));", RULES)
                told = [(one["id"], [node["html"] for node in one["nodes"]][:3]) for one in found]
                assert not told, f"{name} at the size of a {width}, {scheme}: {told}"
                wider = self.browser.execute_script("return document.documentElement.scrollWidth - innerWidth")
                assert wider <= 0, f"{name} is {wider} pixels wider than a {width}"
        self.browser.execute_cdp_cmd("Emulation.setEmulatedMedia", {"features": []})
        self.size(PHONE)
        # Text of twice the size (WCAG 1.4.4): nothing is cut off at the side.
        larger = "const root = document.documentElement; root.style.fontSize = arguments[0]; return root.scrollWidth - innerWidth"
        wider = self.browser.execute_script(larger, "225%")
        self.browser.save_screenshot(str(self.pictures / f"{name}-phone-large.png"))
        assert wider <= 0, f"{name} with large text is {wider} pixels wider than a phone"
        self.browser.execute_script(larger, "")

    def said(self):
        """What the browser complains of. An answer that refuses something is none of it."""
        return [line for line in self.browser.get_log("browser")
                if line["level"] == "SEVERE" and "status of 422" not in line["message"]]

    def end(self):
        complaints = self.said()
        self.browser.quit()
        self.data.cleanup()
        assert not complaints, complaints


def a_visit(phone, service):
    apiary = max(service.get("/holdings/demo/apiaries")["items"], key=lambda apiary: len(apiary["colonies"]))["apiary"]
    sheet = service.get(f"/holdings/demo/apiaries/{apiary}/visit")
    phone.open()
    phone.look("apiaries")
    phone.tap("a", apiary)
    phone.heading(apiary)
    shown = [row.text.replace("\n", " ") for row in phone.browser.find_elements(By.CSS_SELECTOR, "#hives li")]
    assert len(shown) == len(sheet["colonies"]), shown
    for line, colony in zip(shown, sheet["colonies"]):
        assert colony["colony"] in line and f" {colony['word']}" in line, (line, colony)
    phone.look("visit")

    # An inspection of three hives, from the sheet to the journal.
    before, phone.taps = service.entries("demo"), 0
    for box in phone.browser.find_elements(By.CSS_SELECTOR, "input.hive")[:3]:
        phone.browser.execute_script("arguments[0].scrollIntoView({ block: 'center' })", box)
        box.click()
        phone.taps += 1
    phone.tap(".bar button", "Write down")
    phone.tap("button", "A hive inspected")
    phone.heading("A hive inspected")
    phone.tap("#part-brood label.choice", "present")
    phone.look("form")
    phone.tap(".bar button", "Look at it")
    phone.heading("Is it right?")
    phone.look("looked-at")
    assert service.entries("demo") == before, "it was recorded before anybody agreed"
    phone.tap(".bar button", "Record")
    phone.one("#said", "Recorded")
    assert service.entries("demo") == before + 3, service.entries("demo")
    assert phone.taps <= 3 + 5, phone.taps
    print(f"three hives inspected: {phone.taps} taps, 3 of them to tick the hives")

    # It was a mistake.
    phone.tap("#said button", "Strike it out")
    phone.one("#reason").send_keys("another apiary")
    phone.look("strike-out")
    phone.tap(".bar button", "Strike it out")
    phone.one("#said", "Struck out")
    assert service.entries("demo") == before + 6
    last = service.get(f"/holdings/demo/entries?after={before}")["items"]
    assert [entry["kind"] for entry in last] == ["inspection"] * 3 + ["strike_out"] * 3
    assert all(entry["reason"] == "another apiary" for entry in last[3:]), last
    assert len({entry["id"] for entry in last}) == 6

    # One hive, and what its answer rests on.
    phone.open(f"/#/demo/{apiary}")
    name = sheet["colonies"][0]["colony"]
    phone.tap("#hives a", name)
    phone.heading(name)
    answer = service.get(f"/holdings/demo/colonies/{name}/supering")
    text = phone.one("main").text
    assert answer["summary"] in text, (answer["summary"], text)
    for ground in (ground for ground in answer["grounds"] if ground["decides"]):
        assert ground["statement"] in text, ground
    drawn = lambda: phone.browser.execute_script("return document.querySelector('img.season').naturalWidth") > 0
    phone.wait("picture of the season", drawn)
    phone.look("colony")


def a_task_that_is_done(phone, service):
    """What is due is ticked off by writing it down."""
    for apiary in service.get("/holdings/demo/apiaries")["items"]:
        sheet = service.get(f"/holdings/demo/apiaries/{apiary['apiary']}/visit")
        tasks = [task for task in sheet["due"] if task["kind"] == "take_out"]
        if tasks:
            break
    task, before = tasks[0], service.entries("demo")
    phone.open(f"/#/demo/{apiary['apiary']}")
    phone.heading(apiary["apiary"])
    phone.taps = 0
    phone.tap("li button", "Done")
    phone.heading("Strips taken out")
    phone.tap(".bar button", "Look at it")
    phone.heading("Is it right?")
    phone.tap(".bar button", "Record")
    phone.one("#said", "Recorded")
    after = service.get(f"/holdings/demo/apiaries/{apiary['apiary']}/visit")
    assert task["key"] not in [task["key"] for task in after["due"]], after["due"]
    assert service.entries("demo") > before
    print(f"strips out of {len(task['colonies'])} hives: {phone.taps} taps")


def faults(phone, service):
    """What is wrong stands beside its field, nothing is lost, and nothing is recorded."""
    before = service.entries("demo")
    apiary = service.get("/holdings/demo/apiaries")["items"][0]
    phone.open(f"/#/demo/{apiary['apiary']}/write/inspection")
    phone.heading("A hive inspected")
    phone.one("#field-colony").send_keys(apiary["colonies"][0])
    phone.one("#field-seams").send_keys("many")
    phone.tap(".bar button", "Look at it")
    assert "seams" in phone.one("#part-seams .fault").text.lower() or phone.one("#part-seams .fault").text
    assert phone.one("#field-colony").get_attribute("value") == apiary["colonies"][0]
    phone.look("fault")
    seams = phone.one("#field-seams")
    seams.clear()
    seams.send_keys("9" * 10_000)
    phone.tap(".bar button", "Look at it")
    phone.one("#part-seams .fault")
    assert service.entries("demo") == before


def markup_in_a_name(phone, service):
    """Whatever a name says, it is shown and does nothing."""
    name = "<img src=x onerror=document.title='caught'> & \U0001f41d"
    entry = {"on": "2026-01-02", "recorded_by": "A. Keeper (invented)", "kind": "apiary_details", "body": {"apiary": name}}
    service.put("/holdings/demo/entries/01964c7e-6f00-7000-8000-000000099999", entry)
    phone.open("/#/demo")
    phone.tap("a", name)
    assert phone.heading(name).text == name
    assert phone.browser.title == f"{name} \u00b7 Combclear"
    assert not phone.browser.find_elements(By.CSS_SELECTOR, "main img")


def no_signal(program, axe, pictures):
    """What was looked at before can be looked at where the service is not reached, and says so. On another day it is not known."""
    service = Service(program, "demo/holding.jsonl")
    phone = Phone(service.address, axe, pictures)
    phone.open("/#/demo/Saltwend")
    phone.heading("Saltwend")
    ready = "return navigator.serviceWorker.ready.then(() => navigator.serviceWorker.controller !== null)"
    phone.wait("worker that keeps answers", lambda: phone.browser.execute_script(ready))
    # Fetched once more, now that somebody keeps it. Two apiaries were looked at before an entry is recorded, and one after it.
    for apiary in ("Oxmarl", "Saltwend"):
        phone.open(f"/#/demo/{apiary}")
        phone.heading(apiary)
    phone.open("/#/demo/Saltwend/write/inspection")
    phone.one("#field-colony").send_keys("M1")
    phone.one("#field-seams").send_keys("6")
    phone.tap(".bar button", "Look at it")
    phone.heading("Is it right?")
    phone.tap(".bar button", "Record")
    phone.one("#said", "Recorded")
    phone.heading("Saltwend")
    told = [row.text for row in phone.browser.find_elements(By.CSS_SELECTOR, "#hives li")]
    assert not phone.browser.find_elements(By.ID, "kept")
    phone.tap("#hives a", "M8")
    phone.heading("M8")
    phone.open("/#/demo")
    phone.heading("demo")
    service.process.terminate()
    service.process.wait()
    phone.open("/#/demo")
    phone.heading("demo")
    phone.one("#kept", "was not reached")
    assert " yes" in phone.one("main").text
    phone.open("/#/demo/Saltwend")
    phone.heading("Saltwend")
    phone.one("#kept", "was not reached")
    assert [row.text for row in phone.browser.find_elements(By.CSS_SELECTOR, "#hives li")] == told
    phone.look("no-signal")
    phone.tap("#hives a", "M8")
    phone.heading("M8")
    phone.one("#kept", "was not reached")
    # What was never looked at is not there; nor is what was looked at before the entry was recorded.
    for apiary in ("Withyhythe", "Oxmarl"):
        phone.open(f"/#/demo/{apiary}")
        phone.heading("This cannot be shown")
    # The phone's clock says that it is a year later, or the day before.
    for days in (400, -1):
        later = f"const now = Date.now; Date.now = () => now() + {days} * 864e5; const Then = Date; " \
            f"Date = class extends Then {{ constructor(...of) {{ if (of.length) super(...of); else super(Then.now()); }} }};"
        script = phone.browser.execute_cdp_cmd("Page.addScriptToEvaluateOnNewDocument", {"source": later})
        phone.open("/#/demo/Saltwend")
        phone.heading("Saltwend")
        phone.one("#kept", "was not reached")
        words = [word.text for word in phone.browser.find_elements(By.CSS_SELECTOR, "#hives .word")]
        assert words and set(words) == {"unknown"}, (days, words)
        phone.open("/#/demo")
        phone.heading("demo")
        assert " yes" not in phone.one("main").text, (days, phone.one("main").text)
        phone.browser.execute_cdp_cmd("Page.removeScriptToEvaluateOnNewDocument", script)
    # Nothing is recorded, and it is said.
    phone.open("/#/demo/Saltwend/write/inspection")
    phone.heading("A hive inspected")
    phone.one("#field-colony").send_keys("M1")
    phone.tap(".bar button", "Look at it")
    phone.one("#faults .fault", "not reached")
    assert phone.one("#field-colony").get_attribute("value") == "M1"
    phone.said()
    phone.end()
    service.folder.cleanup()


def inspect(phone, apiary, colony):
    phone.open(f"/#/demo/{apiary}/write/inspection")
    phone.heading("A hive inspected")
    phone.one("#field-colony").send_keys(colony)
    phone.tap("#part-brood label.choice", "absent")
    phone.tap(".bar button", "Look at it")
    phone.heading("Is it right?")


def two_phones(program, axe, pictures):
    """Two people walk round one apiary, and each sees what the other wrote down. A tap too many records nothing twice."""
    service = Service(program, "demo/holding.jsonl")
    one, other = Phone(service.address, axe, pictures), Phone(service.address, axe, pictures)
    before = service.entries("demo")
    inspect(one, "Saltwend", "M1")
    inspect(other, "Saltwend", "M2")
    for phone in (one, other):
        button = phone.one(".bar button", "Record")
        phone.browser.execute_script("arguments[0].click(); arguments[0].click()", button)
    for phone in (one, other):
        phone.one("#said", "Recorded")
    entries = service.get(f"/holdings/demo/entries?after={before}")["items"]
    assert sorted(entry["body"]["colony"] for entry in entries) == ["M1", "M2"], entries
    for phone in (one, other):
        phone.end()
    service.end()


def five_hundred(program, axe, pictures):
    """The sheet of an apiary of 500 colonies is drawn in less than 200 ms of script."""
    service = Service(program)
    entry = lambda number, kind, body: {
        "id": f"01964c7e-6f00-7000-8000-{number:012d}", "on": "2026-01-01", "recorded_by": "A. Keeper (invented)",
        "kind": kind, "body": body}
    service.put("/holdings/large", entry(0, "holding_details", {"keeper": "A. Keeper (invented)", "jurisdiction": "gb"}))
    service.put(f"/holdings/large/entries/{entry(1, '', {})['id']}", entry(1, "apiary_details", {"apiary": "Heath"}))
    colonies = [entry(2 + number, "colony_established", {"colony": f"C{number}", "apiary": "Heath", "medicines": "none"})
                for number in range(500)]
    request = urllib.request.Request(f"{service.address}/holdings/large/entries", json.dumps(colonies).encode(), method="POST")
    request.add_header("content-type", "application/json")
    urllib.request.urlopen(request).close()
    phone = Phone(service.address, axe, pictures)
    phone.open("/#/large")
    phone.heading("large")
    took = phone.browser.execute_async_script("""
        const done = arguments[arguments.length - 1];
        const drawn = () => {
            if (document.querySelectorAll("#hives li").length < 500) return;
            seen.disconnect();
            const visit = performance.getEntriesByType("resource").filter((entry) => entry.name.endsWith("/visit")).pop();
            done(performance.now() - visit.responseEnd);
        };
        const seen = new MutationObserver(drawn);
        seen.observe(document.getElementById("sheet"), { childList: true, subtree: true });
        location.hash = "#/large/Heath";
    """)
    assert took < 200, took
    print(f"500 colonies: drawn {took:.0f} ms after they were fetched")
    first = [row.text.split()[0] for row in phone.browser.find_elements(By.CSS_SELECTOR, "#hives li")[:11]]
    assert first == [f"C{number}" for number in range(11)], first
    phone.end()
    service.end()


def from_nothing(program, axe, pictures):
    """An empty database to a holding with an apiary and a colony, by what the page offers."""
    service = Service(program)
    phone = Phone(service.address, axe, pictures)
    phone.open()
    phone.look("empty")
    phone.tap("button", "Begin a holding")
    for field, text in [("holding", "hillside"), ("keeper", "A. Keeper (invented)"), ("jurisdiction", "gb")]:
        phone.one(f"#field-{field}").send_keys(text)
    phone.tap(".bar button")
    phone.heading("hillside")
    for button, field, text in [("A new apiary", "apiary", "Orchard"), ("A colony comes into the record", "colony", "H1")]:
        phone.tap("button", button)
        phone.heading(button)
        phone.one(f"#field-{field}").send_keys(text)
        if field == "colony":
            phone.one("#field-apiary").send_keys("Orchard")
            phone.tap("#part-medicines label.choice", "none")
        phone.tap(".bar button", "Look at it")
        phone.heading("Is it right?")
        phone.tap(".bar button", "Record")
        phone.one("#said", "Recorded")
    phone.open("/#/hillside/Orchard")
    line = phone.one("#hives li").text
    assert "H1" in line and " yes" in line, line
    phone.end()
    service.end()


def main():
    program, axe, folder = sys.argv[1], pathlib.Path(sys.argv[2]).read_text(), pathlib.Path(sys.argv[3])
    folder.mkdir(parents=True, exist_ok=True)
    service = Service(program, "demo/holding.jsonl")
    phone = Phone(service.address, axe, folder)
    try:
        for part in (a_visit, a_task_that_is_done, faults, markup_in_a_name):
            began = time.monotonic()
            part(phone, service)
            print(f"{part.__name__}: {time.monotonic() - began:.1f} s")
        phone.end()
    finally:
        service.end()
    no_signal(program, axe, folder)
    two_phones(program, axe, folder)
    five_hundred(program, axe, folder)
    from_nothing(program, axe, folder)
    print(f"{len(list(folder.glob('*.png')))} pictures")


main()
