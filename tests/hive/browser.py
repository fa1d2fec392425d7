"""The page at the hive in a real browser, at the size of a phone: what a keeper does on a visit, by taps alone.

browser.py COMBCLEAR AXE FOLDER: the program, the script of axe-core, and a folder for pictures of each screen. Ends with 1 if
anything is not as it must be.
"""

import atexit
import base64
import json
import os
import pathlib
import random
import re
import signal
import socket
import subprocess
import sys
import tempfile
import threading
import time
import urllib.request

from selenium import webdriver
from selenium.common.exceptions import StaleElementReferenceException
from selenium.webdriver.common.by import By
from selenium.webdriver.common.keys import Keys
from selenium.webdriver.support.ui import WebDriverWait

PHONE, DESK = (390, 844), (1280, 900)
# How long anything may take on a machine that is busy, in seconds.
PATIENCE = 40
# WCAG 2.2 level AA, by the tags of axe-core. Source: https://www.w3.org/TR/WCAG22/
RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]


class Service:
    """The program on a database of its own, on a free port of this machine."""

    def __init__(self, program, journal=None, keys=False):
        self.folder = tempfile.TemporaryDirectory()
        self.program = program
        self.settings = {**os.environ, "COMBCLEAR_DB": f"sqlite:{self.folder.name}/page.db", "RUST_LOG": "warn"}
        if journal:
            subprocess.run([program, "import", journal], env=self.settings, check=True, stdout=subprocess.DEVNULL)
        self.asks = ["--keys"] if keys else []
        self.keys = {role: self.key(role) for role in ("keeper", "reader")} if keys else {}
        self.start("127.0.0.1:0")

    def key(self, role):
        """A new key for the demo."""
        asked = [self.program, "key", "add", role, "--for", "A. Keeper (invented)", "--holding", "demo", "--json"]
        return json.loads(subprocess.run(asked, env=self.settings, check=True, capture_output=True, text=True).stdout)["key"]

    def end_key(self, key):
        subprocess.run([self.program, "key", "end", key.split(".")[0]], env=self.settings, check=True, stdout=subprocess.DEVNULL)

    def start(self, listen):
        self.process = subprocess.Popen(
            [self.program, "serve", "--listen", listen, *self.asks], env=self.settings, stdout=subprocess.PIPE, text=True,
            stdin=subprocess.DEVNULL
        )
        # Whatever becomes of a test, nothing is left running.
        atexit.register(self.process.kill)
        line = self.process.stdout.readline()
        self.address = next(word.rstrip(";") for word in line.split() if word.startswith("http://"))

    def stop(self):
        self.process.terminate()
        self.process.wait()

    def start_again(self):
        self.start(self.address.removeprefix("http://"))

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
        self.stop()
        self.folder.cleanup()


class Line:
    """What lies between a phone and the service, and can be cut: whoever calls then is turned away at once."""

    def __init__(self, address):
        host, port = address.removeprefix("http://").split(":")
        self.to, self.is_cut, self.open = (host, int(port)), False, set()
        self.listening = socket.create_server(("127.0.0.1", 0))
        self.address = f"http://127.0.0.1:{self.listening.getsockname()[1]}"
        threading.Thread(target=self.take_calls, daemon=True).start()

    def take_calls(self):
        while True:
            phone, _ = self.listening.accept()
            if self.is_cut:
                phone.close()
                continue
            service = socket.create_connection(self.to)
            self.open |= {phone, service}
            for one, other in ((phone, service), (service, phone)):
                threading.Thread(target=self.carry, args=(one, other), daemon=True).start()

    def carry(self, one, other):
        try:
            while heard := one.recv(65536):
                other.sendall(heard)
        except OSError:
            pass
        for end in (one, other):
            self.open.discard(end)
            try:
                end.shutdown(socket.SHUT_RDWR)
            except OSError:
                pass
            end.close()

    def cut(self):
        self.is_cut = True
        for end in list(self.open):
            try:
                end.shutdown(socket.SHUT_RDWR)
            except OSError:
                pass

    def mend(self):
        self.is_cut = False


class Phone:
    """A browser that counts its taps."""

    def __init__(self, address, axe, pictures, language="en"):
        self.data = tempfile.TemporaryDirectory()
        self.address, self.axe, self.pictures, self.taps, self.language = address, axe, pictures, 0, language
        self.start()

    def start(self):
        options = webdriver.ChromeOptions()
        options.add_experimental_option("prefs", {"intl.accept_languages": self.language})
        for option in ["--headless", "--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking",
                       "--disable-component-update", "--disable-sync", f"--user-data-dir={self.data.name}"]:
            options.add_argument(option)
        options.set_capability("goog:loggingPrefs", {"browser": "ALL"})
        self.browser = webdriver.Chrome(options=options, service=webdriver.ChromeService("/usr/bin/chromedriver"))
        self.size(PHONE)

    def killed(self):
        """The browser is killed as a phone kills it, and started anew with what lies on the phone."""
        for process in subprocess.run(["pgrep", "-f", self.data.name], capture_output=True, text=True).stdout.split():
            os.kill(int(process), signal.SIGKILL)
        self.browser.service.stop()
        self.start()

    def size(self, size):
        self.browser.execute_cdp_cmd("Emulation.setDeviceMetricsOverride", {
            "width": size[0], "height": size[1], "deviceScaleFactor": 1, "mobile": size == PHONE})

    def open(self, path="/"):
        self.browser.get("about:blank")
        self.browser.get(self.address + path)

    def wait(self, what, seen):
        # What was found may be drawn anew before it is looked at.
        waiting = WebDriverWait(self.browser, PATIENCE, ignored_exceptions=[StaleElementReferenceException])
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

    def write_down(self, said):
        """From a form that is filled in to what was written down."""
        self.tap(".bar button", "Check it")
        self.heading("Is it right?")
        self.tap(".bar button", "Record")
        self.one("#said", said)

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
                if line["level"] == "SEVERE" and not any(text in line["message"] for text in ("status of 422", "status of 401", "Failed to load resource: net::"))]

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
    phone.tap(".bar button", "Check it")
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
    phone.tap("#history summary")
    history = service.get(f"/holdings/demo/colonies/{name}/history")["items"]
    shown = [row.text for row in phone.browser.find_elements(By.CSS_SELECTOR, "#history li")]
    assert len(shown) == len(history) and all(item["line"] in row for item, row in zip(history, shown)), shown
    # What was struck out a minute ago stays on record, with its reason.
    assert any("another apiary" in row for row in shown), shown
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
    phone.write_down("Recorded")
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
    phone.tap(".bar button", "Check it")
    assert "seams" in phone.one("#part-seams .fault").text.lower() or phone.one("#part-seams .fault").text
    assert phone.one("#field-colony").get_attribute("value") == apiary["colonies"][0]
    phone.look("fault")
    seams = phone.one("#field-seams")
    seams.clear()
    seams.send_keys("9" * 10_000)
    phone.tap(".bar button", "Check it")
    phone.one("#part-seams .fault")
    seams.clear()
    # A day to come is no day on which something happened.
    phone.browser.execute_script("document.getElementById('field-on').value = '2030-01-01'")
    phone.tap(".bar button", "Check it")
    phone.one("#faults .fault", "in the future")
    # That the leaflet differs is nothing without what it says.
    phone.open("/#/demo/Oxmarl/leaflet/FOUR-25-1")
    phone.tap("#part-removal label.choice", "It differs")
    phone.tap(".bar button", "Check it")
    phone.one("#part-removal .fault", "write what it says")
    assert service.entries("demo") == before


def the_desk(phone, service):
    """What is looked at away from the hives says what the service says."""
    def screen(name, path="/"):
        phone.open(f"/#/demo/{path.strip('/')}/{name}")
        phone.one("h1")
    screen("board")
    board = service.get("/holdings/demo/colonies")["items"]
    phone.wait("row for each colony", lambda: len(phone.browser.find_elements(By.CSS_SELECTOR, "tbody tr")) == len(board))
    for row, colony in zip(phone.browser.find_elements(By.CSS_SELECTOR, "tbody tr"), board):
        word = row.find_element(By.CSS_SELECTOR, ".word").text
        assert (row.find_element(By.TAG_NAME, "th").text, word) == (colony["colony"], colony["answer"]), colony
    phone.look("desk-board")
    screen("stock")
    lots = service.get("/holdings/demo/stock")["lots"]
    phone.wait("row for each lot", lambda: len(phone.browser.find_elements(By.CSS_SELECTOR, "tbody tr")) == len(lots))
    text = phone.one("main").text
    assert all(lot["sum"] in text for lot in lots)
    phone.look("desk-stock")
    screen("options", "Oxmarl")
    options = service.get("/holdings/demo/apiaries/Oxmarl/treatment-options")["options"]
    phone.wait("way for each", lambda: len(phone.browser.find_elements(By.CSS_SELECTOR, "#found details")) == len(options))
    phone.look("desk-options")
    # What if the site were cut off? The same as the service says.
    phone.browser.execute_script("document.getElementById('access').value = 'none'")
    phone.tap(".bar button", "Ask")
    cut_off = service.get("/holdings/demo/apiaries/Oxmarl/treatment-options?access=none")["options"]
    said = {"usable": "usable", "ruled_out": "ruled out", "unknown": "not known"}
    expected = [said[option["answer"]] for option in cut_off]
    shown = lambda: [word.text for word in phone.browser.find_elements(By.CSS_SELECTOR, "#found summary .word")]
    phone.wait("answers for a site that is cut off", lambda: shown() == expected)
    assert expected != [said[option["answer"]] for option in options], "nothing was assumed"
    screen("register")
    gaps = service.get("/holdings/demo/register/gaps?from=" + time.strftime("%Y-01-01"))
    phone.wait("what is missing", lambda: all(line in phone.one("main").text for line in gaps["summary"]))
    phone.look("desk-register")
    screen("proofs")
    documents = service.get("/holdings/demo/documents")["items"]
    phone.wait("row for each proof", lambda: len(phone.browser.find_elements(By.CSS_SELECTOR, "tbody tr")) == len(documents))
    phone.look("desk-proofs")
    picture = pathlib.Path(phone.data.name) / "invoice.pdf"
    picture.write_bytes(b"%PDF-1.4\n1 0 obj<</Type/Catalog>>endobj\ntrailer<</Root 1 0 R>>\n%%EOF\n")
    phone.tap(".bar button", "Attach a proof")
    phone.one(".fault", "Name the lot")
    phone.browser.execute_script("document.getElementById('lot').value = 'WRACK-26-1'")
    phone.one("#recorded_by").send_keys("A. Keeper (invented)")
    phone.one("#file").send_keys(str(picture))
    phone.tap(".bar button", "Attach a proof")
    phone.one("#said", "Attached to lot WRACK-26-1")
    after = service.get("/holdings/demo/documents")["items"]
    assert [one["lot"] for one in after if one["id"] not in [old["id"] for old in documents]] == ["WRACK-26-1"], after
    screen("journal")
    entries = service.entries("demo")
    phone.one("#sheet li", f"{entries}. A document attached")
    phone.tap(".bar button", "Verify")
    phone.one("#found", f"All {entries} entries are as they were recorded")
    phone.look("desk-journal")


def odd_phones(program, axe, pictures):
    """A phone whose clock is a day off, one that has no room left, two tabs of one phone, and a page that is older than the service."""
    service = Service(program, "demo/holding.jsonl")
    line_out = Line(service.address)
    phone = Phone(line_out.address, axe, pictures)
    # A day ahead: it is said, the page goes by the service, and so does an entry.
    off = "const now = Date.now; Date.now = () => now() + 864e5; const Then = Date; " \
        "Date = class extends Then { constructor(...of) { if (of.length) super(...of); else super(Then.now()); } };"
    script = phone.browser.execute_cdp_cmd("Page.addScriptToEvaluateOnNewDocument", {"source": off})
    phone.open("/#/demo/Saltwend")
    phone.heading("Saltwend")
    phone.one("#clock", "about 24 h ahead")
    today = time.strftime("%Y-%m-%d")
    assert phone.one("main .faint", today)
    phone.open("/#/demo/Saltwend/write/inspection")
    phone.heading("A hive inspected")
    assert phone.one("#field-on").get_attribute("value") == today
    phone.look("clock-off")
    phone.browser.execute_cdp_cmd("Page.removeScriptToEvaluateOnNewDocument", script)
    phone.open("/#/demo/Saltwend")
    phone.wait("end of the note", lambda: not phone.browser.find_elements(By.ID, "clock"))
    # No room: with signal it is sent at once, without it is said that nothing was written down.
    before = service.entries("demo")
    is_ready_for_no_signal(phone, before)
    full = "IDBObjectStore.prototype.put = function () { throw new DOMException('full', 'QuotaExceededError'); };"
    script = phone.browser.execute_cdp_cmd("Page.addScriptToEvaluateOnNewDocument", {"source": full})
    inspect(phone, "Saltwend", "M1")
    phone.tap(".bar button", "Record")
    phone.one("#said", "Recorded")
    assert service.entries("demo") == before + 1
    # Nothing here would know of it: the copy does not count any more.
    assert copied(phone) == 0
    inspect(phone, "Saltwend", "M2")
    line_out.cut()
    phone.tap(".bar button", "Record")
    phone.one("#faults .fault", "not reached")
    phone.one("#faults", "no room")
    assert service.entries("demo") == before + 1
    line_out.mend()
    phone.browser.execute_cdp_cmd("Page.removeScriptToEvaluateOnNewDocument", script)
    # Two tabs: what one wrote down without signal, the other sends too. It is recorded once.
    phone.open("/#/demo/Saltwend")
    phone.heading("Saltwend")
    is_ready_for_no_signal(phone, before + 1)
    line_out.cut()
    inspect(phone, "Saltwend", "M3")
    phone.tap(".bar button", "Record")
    phone.one("#waiting", "Not sent yet: 1")
    first = phone.browser.current_window_handle
    phone.browser.switch_to.new_window("tab")
    phone.browser.get(line_out.address + "/#waiting")
    phone.wait("batch", lambda: waiting(phone) == 1)
    phone.browser.execute_script("document.querySelector('.bar button').dataset.there = 'yes'")
    line_out.mend()
    other = phone.browser.current_window_handle
    for tab in (first, other):
        phone.browser.switch_to.window(tab)
        phone.browser.execute_script("dispatchEvent(new Event('online'))")
    phone.wait("end of waiting", lambda: waiting(phone) == 0)
    assert service.entries("demo") == before + 2
    phone.browser.close()
    phone.browser.switch_to.window(first)
    # The service has a newer page by now.
    newer = "const sent = fetch; window.fetch = async (path, init) => String(path).endsWith('version.json') " \
        "? new Response(JSON.stringify({ version: 'newer', engine: true })) : sent(path, init);"
    phone.browser.execute_script(newer + "dispatchEvent(new Event('online'))")
    phone.one("#older", "newer page")
    phone.look("older-page")
    phone.said()
    phone.end()
    service.end()


def keys(program, axe, pictures):
    """Behind keys, whoever signs in with one for reading sees nothing to write; an ended key is told; entries of one key are not sent with
    another."""
    service = Service(program, "demo/holding.jsonl", keys=True)
    key = service.keys
    line_out = Line(service.address)
    phone = Phone(line_out.address, axe, pictures)
    def entries():
        request = urllib.request.Request(f"{service.address}/holdings/demo/entries?limit=500")
        request.add_header("authorization", f"Bearer {key['keeper']}")
        with urllib.request.urlopen(request) as answer:
            return json.load(answer)["items"]
    def sign_in(with_key):
        phone.one("#key").clear()
        phone.one("#key").send_keys(with_key)
        phone.tap("button.go")
    phone.open("/")
    phone.heading("Key")
    phone.look("key")
    sign_in("not a key")
    phone.one(".fault")
    phone.heading("Key")
    sign_in(key["reader"])
    phone.tap("a", "Oxmarl")
    phone.heading("Oxmarl")
    assert not phone.browser.find_elements(By.CSS_SELECTOR, ".bar button, #hives ~ button, li button"), "a reader is offered to write"
    phone.look("reader")
    phone.tap("nav a")
    phone.heading("demo")
    assert "Write down" not in phone.one("main").text
    phone.tap("button", "Sign in with a key")
    sign_in(key["keeper"])
    phone.heading("demo")
    phone.one("h2", "Write down")
    phone.tap("a", "Oxmarl")
    phone.one(".bar button", "Write down")
    # The key is gone with its tab, the copy of the journal is not: what is written down without it is offered to whoever signs in.
    before = len(entries())
    is_ready_for_no_signal(phone, before)
    line_out.cut()
    phone.browser.switch_to.new_window("tab")
    inspect(phone, "Oxmarl", "O4")
    phone.tap(".bar button", "Record")
    phone.one("#said", "Written down on this phone")
    line_out.mend()
    phone.open("/")
    sign_in(key["keeper"])
    phone.heading("demo")
    phone.one("#waiting", "Not sent yet: 1")
    phone.tap("#waiting a")
    phone.one("li .fault", "another key, or before signing in")
    phone.look("other-key")
    assert len(entries()) == before, "it was sent with another key"
    phone.tap("li button", "Send with this key")
    phone.wait("end of waiting", lambda: waiting(phone) == 0)
    assert [entry["body"]["colony"] for entry in entries()[before:]] == ["O4"]
    # A key that was ended is asked for anew, and what waits stays.
    line_out.cut()
    inspect(phone, "Oxmarl", "O4")
    phone.tap(".bar button", "Record")
    phone.one("#waiting", "Not sent yet: 1")
    service.end_key(key["keeper"])
    line_out.mend()
    phone.open("/#/demo/Oxmarl")
    phone.heading("Key")
    phone.one("#waiting", "Not sent yet: 1")
    phone.said()
    phone.end()
    service.end()


def german(program, axe, pictures):
    """A browser that prefers German is answered in German: the page, the answers of the service, and those of the phone."""
    service = Service(program, "demo/holding.jsonl")
    line_out = Line(service.address)
    phone = Phone(line_out.address, axe, pictures, language="de-DE,de")
    phone.open("/#/demo/Oxmarl")
    phone.heading("Oxmarl")
    phone.one("h2", "Darf ein Honigraum aufgesetzt werden?")
    assert phone.browser.execute_script("return document.documentElement.lang") == "de"
    told = [row.text for row in phone.browser.find_elements(By.CSS_SELECTOR, "#hives li")]
    assert any(" nein" in row for row in told) and not any(" yes" in row or " until" in row for row in told), told
    assert re.search(r"\d\d\.\d\d\.2026", phone.one("main").text)
    is_ready_for_no_signal(phone, service.entries("demo"))
    line_out.cut()
    phone.browser.refresh()
    phone.heading("Oxmarl")
    phone.one("#kept", "auf diesem Handy")
    assert [row.text for row in phone.browser.find_elements(By.CSS_SELECTOR, "#hives li")] == told
    phone.look("german")
    phone.tap("#hives a", "O8")
    phone.heading("O8")
    phone.look("german-colony")
    phone.open("/#/demo/Oxmarl/write/administration")
    phone.one("h1")
    phone.look("german-form")
    phone.said()
    phone.end()
    service.end()


def by_keyboard(program, axe, pictures):
    """Everything without a pointer: tab and space, to an inspection that is recorded. What has the focus is seen."""
    service = Service(program, "demo/holding.jsonl")
    phone = Phone(service.address, axe, pictures)
    phone.open("/#/demo/Saltwend")
    phone.heading("Saltwend")
    before = service.entries("demo")
    def press(*keys):
        for key in keys:
            webdriver.ActionChains(phone.browser).send_keys(key).perform()
    def focus_on(what, matches):
        for _ in range(120):
            press(Keys.TAB)
            focused = phone.browser.switch_to.active_element
            if matches(focused):
                outline = focused.value_of_css_property("outline-style")
                assert outline != "none", f"{what} has the focus, and nobody sees it"
                return
        raise AssertionError(f"{what} is not reached by the keyboard")
    focus_on("the first hive", lambda one: one.get_attribute("class") == "hive")
    press(Keys.SPACE)
    focus_on("the button", lambda one: one.text == "Write down")
    press(Keys.ENTER)
    phone.heading("Write down")
    focus_on("the form", lambda one: one.text == "A hive inspected")
    press(Keys.ENTER)
    phone.heading("A hive inspected")
    focus_on("the brood", lambda one: one.get_attribute("name") == "field-brood")
    press(Keys.SPACE)
    focus_on("the button", lambda one: one.text == "Check it")
    press(Keys.ENTER)
    phone.heading("Is it right?")
    focus_on("the button", lambda one: one.text == "Record")
    press(Keys.ENTER)
    phone.one("#said", "Recorded")
    assert service.entries("demo") == before + 1
    phone.end()
    service.end()


def the_own_order(phone, service):
    """The hives come in the order in which the keeper walks, once it was tapped; those that were not tapped come last."""
    phone.open("/#/demo/Oxmarl")
    phone.heading("Oxmarl")
    first = lambda: [row.text.split()[0] for row in phone.browser.find_elements(By.CSS_SELECTOR, "#hives li")]
    before = first()
    phone.tap("a", "The order in which you walk")
    phone.heading("The order in which you walk")
    for name in (before[3], before[1], before[0]):
        phone.tap(f"#walk-{name}")
    phone.one(f"#walk-{before[0]}", "3. ")
    # A slip is taken back with another tap.
    phone.tap(f"#walk-{before[1]}")
    phone.look("order")
    phone.tap(".bar button", "Keep this order")
    phone.heading("Oxmarl")
    walked = [before[3], before[0]]
    assert first() == walked + [name for name in before if name not in walked], first()


def on_paper(phone, service):
    """The visit sheet prints as one: every hive, what is due, and nothing to tap."""
    phone.open("/#/demo/Oxmarl")
    phone.heading("Oxmarl")
    printed = phone.browser.execute_cdp_cmd("Page.printToPDF", {"paperWidth": 8.27, "paperHeight": 11.69})
    (phone.pictures / "visit.pdf").write_bytes(base64.b64decode(printed["data"]))
    phone.browser.execute_cdp_cmd("Emulation.setEmulatedMedia", {"media": "print"})
    shown = [one for one in phone.browser.find_elements(By.CSS_SELECTOR, "button, .bar, nav") if one.is_displayed()]
    assert not shown, [one.text for one in shown]
    assert all(row.is_displayed() for row in phone.browser.find_elements(By.CSS_SELECTOR, "#hives li, #sheet h2"))
    phone.browser.execute_cdp_cmd("Emulation.setEmulatedMedia", {"media": ""})


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


def kept_answers(program, axe, pictures):
    """Without the program for it on the phone, what was looked at before can be looked at where the service is not reached, and says
    so. On another day it is not known."""
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
    phone.write_down("Recorded")
    phone.heading("Saltwend")
    told = [row.text for row in phone.browser.find_elements(By.CSS_SELECTOR, "#hives li")]
    assert not phone.browser.find_elements(By.ID, "kept")
    phone.tap("#hives a", "M8")
    phone.heading("M8")
    phone.open("/#/demo")
    phone.heading("demo")
    taken = "const done = arguments[0]; caches.keys().then(([name]) => caches.open(name)).then((kept) => kept.delete('/page/engine.wasm')).then(done)"
    service.stop()
    assert phone.browser.execute_async_script(taken), "the program was not kept"
    # A page that was just opened may have fetched it once more, and the worker may be laying it down.
    phone.wait("end of that", lambda: time.sleep(1.5) or not phone.browser.execute_async_script(taken))
    phone.open("/#/demo")
    phone.heading("demo")
    phone.one("#kept", "No signal")
    assert " yes" in phone.one("main").text
    phone.open("/#/demo/Saltwend")
    phone.heading("Saltwend")
    phone.one("#kept", "No signal")
    assert [row.text for row in phone.browser.find_elements(By.CSS_SELECTOR, "#hives li")] == told
    phone.look("kept-answers")
    phone.tap("#hives a", "M8")
    phone.heading("M8")
    phone.one("#kept", "No signal")
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
        phone.one("#kept", "No signal")
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
    phone.tap(".bar button", "Check it")
    phone.one("#faults .fault", "not reached")
    assert phone.one("#field-colony").get_attribute("value") == "M1"
    phone.said()
    phone.end()
    service.folder.cleanup()


def is_ready_for_no_signal(phone, entries):
    """The worker keeps the page, and the journal is copied."""
    ready = "return navigator.serviceWorker.ready.then(() => navigator.serviceWorker.controller !== null)"
    phone.wait("worker that keeps the page", lambda: phone.browser.execute_script(ready))
    phone.wait("copy of the journal", lambda: copied(phone) == entries)


def copied(phone):
    """The number of the last entry of the demo that is copied on the phone; 0 if none is."""
    return phone.browser.execute_async_script("""const done = arguments[0]; indexedDB.open("combclear", 1).onsuccess = ({ target }) => {
        const asked = target.result.transaction("copies").objectStore("copies").get("demo");
        asked.onsuccess = () => done(asked.result?.last ?? 0); };""")


def ready_for_no_signal(program, axe, pictures):
    """A service, a phone with a copy of its journal, and the line between them."""
    service = Service(program, "demo/holding.jsonl")
    line_out = Line(service.address)
    phone = Phone(line_out.address, axe, pictures)
    phone.open("/#/demo/Saltwend")
    phone.heading("Saltwend")
    is_ready_for_no_signal(phone, service.entries("demo"))
    return service, line_out, phone


def waiting(phone):
    """How many batches wait."""
    return int(phone.browser.find_element(By.ID, "waiting").get_attribute("data-number") or 0)


def without_signal(program, axe, pictures):
    """Where there is no signal, the phone answers itself, and what is written down waits there: through a reload, and when the phone kills
    the browser. Once there is signal, each entry is recorded once."""
    service, line_out, phone = ready_for_no_signal(program, axe, pictures)
    before = service.entries("demo")
    board = service.get("/holdings/demo/apiaries/Oxmarl/supering")
    line_out.cut()
    # An apiary that was never looked at is answered too, as the service would.
    phone.open("/#/demo/Oxmarl")
    phone.heading("Oxmarl")
    phone.one("#kept", "worked out on this phone")
    for answer in board["colonies"]:
        phone.one("#hives li", f"{answer['colony']}")
        word = {"yes": "yes", "no": "no", "unknown": "unknown"}[answer["answer"]]
        line = next(row.text for row in phone.browser.find_elements(By.CSS_SELECTOR, "#hives li") if row.text.startswith(answer["colony"] + " "))
        assert f" {word}" in line, (line, answer["answer"])
    phone.look("no-signal")
    # Strips in: the phone's own answer goes from yes to no before anything is sent.
    phone.open("/#/demo/Saltwend")
    line = lambda colony: phone.one("#hives li", f"{colony} (").text
    assert " yes" in line("M1"), line("M1")
    phone.browser.find_elements(By.CSS_SELECTOR, "input.hive")[0].click()
    phone.tap(".bar button", "Write down")
    phone.tap("button", "Strips placed or a dose given")
    phone.one("#field-lot").send_keys("PALE-26-2")
    phone.one("#field-each").send_keys("2")
    phone.write_down("Written down on this phone")
    phone.one("#waiting", "Not sent yet: 1")
    phone.heading("Saltwend")
    assert " no" in line("M1") or " unknown" in line("M1"), line("M1")
    # What cannot be true is told before it waits.
    phone.open("/#/demo/Saltwend/write/inspection")
    phone.one("#field-colony").send_keys("Nobody")
    phone.tap("#part-brood label.choice", "present")
    phone.tap(".bar button", "Check it")
    phone.one(".fault")
    inspect(phone, "Saltwend", "M2")
    phone.tap(".bar button", "Record")
    phone.one("#waiting", "Not sent yet: 2")
    phone.browser.refresh()
    phone.heading("Saltwend")
    phone.one("#waiting", "Not sent yet: 2")
    phone.killed()
    phone.open("/#/demo/Saltwend")
    phone.heading("Saltwend")
    phone.one("#waiting", "Not sent yet: 2")
    assert " yes" not in line("M1"), line("M1")
    phone.tap("#waiting a")
    phone.heading("Not sent yet")
    phone.look("waiting")
    assert service.entries("demo") == before
    # The service goes down in the middle: it has recorded, and nobody heard it.
    phone.browser.execute_script("const sent = fetch; window.fetch = async (path, init) => { const heard = await sent(path, init);"
                                 "if (init?.method === 'POST') throw new TypeError('cut'); return heard; };")
    line_out.mend()
    phone.tap(".bar button", "Send now")
    phone.wait("first entry", lambda: service.entries("demo") == before + 1)
    phone.wait("both batches", lambda: waiting(phone) == 2)
    phone.browser.refresh()
    phone.wait("all that waited", lambda: service.entries("demo") == before + 2)
    phone.wait("end of waiting", lambda: waiting(phone) == 0)
    entries = service.get(f"/holdings/demo/entries?after={before}")["items"]
    assert [entry["kind"] for entry in entries] == ["administration", "inspection"], entries
    # An entry is recorded, and the line is cut before the journal is copied again: no answer is without it.
    line_of = lambda colony: phone.one("#hives li", f"{colony} (").text
    phone.open("/#/demo/Saltwend")
    assert " yes" in line_of("M4"), line_of("M4")
    phone.browser.execute_script(
        "const sent = fetch; let isCut = false; window.fetch = async (path, init) => {"
        "if (isCut && !String(path).startsWith('/page/')) throw new TypeError('cut'); const heard = await sent(path, init);"
        "isCut = String(path).endsWith('/entries'); return heard; };")
    phone.tap("#hives li:nth-child(4) .tick")
    phone.tap(".bar button", "Write down")
    phone.tap("button", "Strips placed or a dose given")
    phone.one("#field-lot").send_keys("PALE-26-2")
    phone.one("#field-each").send_keys("2")
    phone.tap(".bar button", "Check it")
    phone.heading("Is it right?")
    assert "M4" in phone.one("main").text
    phone.tap(".bar button", "Record")
    phone.one("#said", "Recorded")
    assert service.entries("demo") == before + 3
    phone.heading("Saltwend")
    phone.one("#kept", "worked out on this phone")
    assert " yes" not in line_of("M4"), line_of("M4")
    # Half a minute goes by while something waits: what is being filled in stays.
    line_out.cut()
    phone.browser.refresh()
    inspect(phone, "Saltwend", "M6")
    phone.tap(".bar button", "Record")
    phone.one("#waiting", "Not sent yet: 1")
    phone.heading("Saltwend")
    phone.tap("#hives li:nth-child(2) .tick")
    phone.browser.execute_script("dispatchEvent(new Event('online'))")
    time.sleep(1)
    assert phone.browser.execute_script("return document.querySelectorAll('input.hive:checked').length") == 1
    line_out.mend()
    phone.browser.execute_script("dispatchEvent(new Event('online'))")
    phone.wait("end of waiting", lambda: waiting(phone) == 0)
    phone.said()
    phone.end()
    service.end()


def a_round(program, axe, pictures):
    """A round of the largest apiary without signal, by taps alone: may each be supered, strips out of twelve, one inspection each, two
    leaflets read. Then it is sent, and the register shows it."""
    service = Service(program, "demo/holding.jsonl")
    apiary = "Saltwend"
    number = iter(range(77_000, 78_000))
    def put(on, kind, body):
        entry = {"on": on, "recorded_by": "A. Keeper (invented)", "kind": kind, "body": body}
        return service.put(f"/holdings/demo/entries/01964c7e-6f00-7000-8000-{next(number):012d}", entry)
    for name in ("Z1", "Z2"):
        put("2026-09-20", "colony_established", {"colony": name, "apiary": apiary, "medicines": "none"})
    hives = service.get(f"/holdings/demo/apiaries/{apiary}")["colonies"]
    put("2026-09-21", "lot_acquired", {"lot": "ROUND-26-1", "medicine": "pale", "batch": "R 1 (invented)", "expiry": "2028-01-31",
                                       "quantity": 40, "supplier": {"name": "A. Supplier (invented)"}, "proof": "invoice 9 (invented)"})
    put("2026-09-25", "administration", {"given": [{"lot": "ROUND-26-1", "each": 2, "colonies": hives}], "given_by": "A. Keeper (invented)"})
    assert len(hives) == 12, hives
    line_out = Line(service.address)
    phone = Phone(line_out.address, axe, pictures)
    phone.open("/")
    before = service.entries("demo")
    phone.heading("demo")
    is_ready_for_no_signal(phone, before)
    line_out.cut()
    phone.browser.refresh()
    phone.heading("demo")
    phone.taps, tapped = 0, {}
    phone.tap("a", apiary)
    phone.heading(apiary)
    phone.one("#kept", "worked out on this phone")
    words = [row.text for row in phone.browser.find_elements(By.CSS_SELECTOR, "#hives .word")]
    assert len(words) == 12 and "yes" not in words, words
    tapped["supers question for twelve"], phone.taps = phone.taps, 0
    phone.look("round-1-sheet")
    task = phone.one("#sheet li", "Take out Palestrip")
    button = task.find_element(By.TAG_NAME, "button")
    phone.browser.execute_script("arguments[0].scrollIntoView({ block: 'center' })", button)
    button.click()
    phone.taps += 1
    phone.heading("Strips taken out")
    phone.look("round-2-strips-out")
    phone.write_down("Written down on this phone")
    tapped["strips out of twelve"], phone.taps = phone.taps, 0
    phone.heading(apiary)
    phone.tap("label[for=all]", "Tick all")
    phone.tap(".bar button", "Write down")
    phone.tap("button", "A hive inspected")
    phone.heading("A hive inspected")
    phone.tap("#part-brood label.choice", "absent")
    phone.write_down("Written down on this phone")
    tapped["one inspection each"], phone.taps = phone.taps, 0
    for lot in ("FOUR-25-1", "ROUND-26-1"):
        phone.heading(apiary)
        phone.tap(".bar button", "Write down")
        phone.tap("summary", "Something else")
        phone.tap("button", "What the leaflet in the pack says")
        phone.heading("The leaflet of which lot?")
        phone.tap("button", lot)
        phone.heading(f"The leaflet of lot {lot}")
        # What is built in is on the leaflet too; the leaflet is silent about the rest.
        for part in phone.browser.find_elements(By.CSS_SELECTOR, "fieldset[id^='part-']"):
            name = part.get_attribute("id")
            same = part.find_elements(By.CSS_SELECTOR, "input[value='same']")
            phone.tap(f"#{name} label.choice", "The same" if same else "Not in the leaflet")
        others = len(phone.browser.find_elements(By.CSS_SELECTOR, "input[name^='too-'][value='yes']"))
        for place in range(others):
            phone.tap(f"label:has(input[name='too-{place}'])", "yes")
        phone.look(f"round-3-leaflet-{lot}")
        phone.write_down("Written down on this phone")
    tapped["two leaflets read"] = phone.taps
    # Strips out and leaflet read: what was not known is a yes, before anything is sent.
    phone.heading(apiary)
    words = [row.text for row in phone.browser.find_elements(By.CSS_SELECTOR, "#hives .word")]
    assert words.count("yes") >= 11, words
    phone.one("#waiting", "Not sent yet: 4")
    assert service.entries("demo") == before
    line_out.mend()
    phone.tap("#waiting a")
    phone.look("round-4-waiting")
    phone.tap(".bar button", "Send now")
    phone.wait("end of waiting", lambda: waiting(phone) == 0)
    entries = service.get(f"/holdings/demo/entries?after={before}")["items"]
    kinds = [entry["kind"] for entry in entries]
    assert sorted(kinds) == ["inspection"] * 12 + ["leaflet_reading"] * 2 + ["removal"], kinds
    register = service.get("/holdings/demo/register?from=2026-09-25")
    row = next(row for row in register["administrations"] if any(given["lot"] == "ROUND-26-1" for given in row["given"]))
    assert time.strftime("%Y-%m-%d") in json.dumps(row), row
    print("a round of twelve hives without signal, in taps: " + ", ".join(f"{what} {taps}" for what, taps in tapped.items()))
    phone.said()
    phone.end()
    service.end()


def the_same_answers(program, axe, pictures):
    """A thousand questions without signal, in the browser: each is answered as the service answered it."""
    service, line_out, phone = ready_for_no_signal(program, axe, pictures)
    draw = random.Random(1182)
    colonies = [colony["colony"] for colony in service.get("/holdings/demo/colonies")["items"]]
    apiaries = [apiary["apiary"] for apiary in service.get("/holdings/demo/apiaries")["items"]]
    paths = []
    while len(paths) < 1000:
        day = f"{draw.choice([2025, 2026, 2027])}-{draw.randint(1, 12):02d}-{draw.randint(1, 28):02d}"
        colony, apiary = draw.choice(colonies), draw.choice(apiaries)
        about = draw.choice([f"colonies/{colony}/supering", f"colonies/{colony}", f"colonies/{colony}/history",
                             f"apiaries/{apiary}/visit", f"apiaries/{apiary}", "stock"])
        paths.append(f"/holdings/demo/{about}?on={day}")
    expected = [service.get(path) for path in paths]
    line_out.cut()
    phone.browser.refresh()
    phone.heading("Saltwend")
    phone.browser.set_script_timeout(120)
    answered = phone.browser.execute_async_script("""
        const [paths, done] = arguments;
        import("/page/engine.js").then(async ({ workedOut }) => {
            const answers = [];
            for (const path of paths) answers.push((await workedOut(path, undefined, new Date(), "2026-11-30")).body);
            return answers;
        }).then(done, (error) => done(String(error)));""", paths)
    differing = [path for path, mine, theirs in zip(paths, answered, expected) if mine != theirs]
    assert len(answered) == len(paths) and not differing, differing[:5]
    print(f"{len(paths)} questions in the browser without signal: {len(differing)} differences")
    phone.said()
    phone.end()
    service.end()


def a_conflict(program, axe, pictures):
    """Two phones, one of them without signal: what the other recorded makes its entry untrue. It is shown, kept, and no yes stands."""
    service, line_out, phone = ready_for_no_signal(program, axe, pictures)
    line_out.cut()
    inspect(phone, "Saltwend", "M3")
    phone.tap(".bar button", "Record")
    phone.one("#waiting", "Not sent yet: 1")
    give(phone, "Saltwend", "M3")
    phone.write_down("Written down on this phone")
    phone.one("#waiting", "Not sent yet: 2")
    ended = {"on": "2026-11-01", "recorded_by": "A. Keeper (invented)", "kind": "colony_ended",
             "body": {"colony": "M3", "cause": "died (invented)"}}
    service.put("/holdings/demo/entries/01964c7e-6f00-7000-8000-000000088888", ended)
    line_out.mend()
    phone.browser.refresh()
    phone.one("#waiting", "refused")
    before = service.entries("demo")
    phone.open("/#/demo/Saltwend/hive/M3")
    phone.heading("M3")
    phone.one("main", "not recorded")
    # Medicine may have reached other colonies: no yes stands anywhere while nobody knows what became of the strips.
    phone.open("/#/demo/Saltwend")
    phone.heading("Saltwend")
    words = lambda: [row.text for row in phone.browser.find_elements(By.CSS_SELECTOR, "#hives .word")]
    assert words() and set(words()) == {"unknown"}, words()
    phone.tap("#waiting a")
    phone.one(".fault", "Refused")
    phone.look("refused")
    def throw_away(what, left):
        for text in ("Throw away", "Throw away for good"):
            phone.one("#sheet li", what)
            phone.tap("#sheet li:last-child button", text)
        phone.wait(f"list of {left}", lambda: waiting(phone) == left)
    throw_away("Strips placed", 1)
    # The inspection concerns the hive that it names, and no other.
    phone.open("/#/demo/Saltwend")
    phone.heading("Saltwend")
    assert "yes" in words(), words()
    phone.tap("#waiting a")
    throw_away("A hive inspected", 0)
    assert service.entries("demo") == before
    phone.said()
    phone.end()
    service.end()


def give(phone, apiary, colony):
    phone.open(f"/#/demo/{apiary}/write/administration")
    phone.heading("Strips placed or a dose given")
    for field, text in (("colonies", colony), ("lot", "PALE-26-2"), ("each", "2")):
        phone.one(f"#field-{field}").send_keys(text)


def inspect(phone, apiary, colony):
    phone.open(f"/#/demo/{apiary}/write/inspection")
    phone.heading("A hive inspected")
    phone.one("#field-colony").send_keys(colony)
    phone.tap("#part-brood label.choice", "absent")
    phone.tap(".bar button", "Check it")
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
        # Drawn anew, the screen still says so; the next one does not.
        phone.browser.execute_script("dispatchEvent(new HashChangeEvent('hashchange'))")
        phone.one("#said", "Recorded")
        phone.browser.execute_script("location.hash = '#/demo'")
        phone.heading("demo")
        phone.wait("end of what was said", lambda: phone.browser.find_element(By.ID, "said").text == "")
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
        phone.write_down("Recorded")
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
        for part in (a_visit, a_task_that_is_done, faults, markup_in_a_name, the_desk, the_own_order, on_paper):
            began = time.monotonic()
            part(phone, service)
            print(f"{part.__name__}: {time.monotonic() - began:.1f} s")
        phone.end()
    finally:
        service.end()
    kept_answers(program, axe, folder)
    without_signal(program, axe, folder)
    a_round(program, axe, folder)
    the_same_answers(program, axe, folder)
    a_conflict(program, axe, folder)
    odd_phones(program, axe, folder)
    keys(program, axe, folder)
    german(program, axe, folder)
    by_keyboard(program, axe, folder)
    two_phones(program, axe, folder)
    five_hundred(program, axe, folder)
    from_nothing(program, axe, folder)
    print(f"{len(list(folder.glob('*.png')))} pictures")


main()
