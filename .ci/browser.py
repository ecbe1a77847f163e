"""Headless Chromium, driven over the DevTools protocol's pipe."""

import base64
import json
import os
import subprocess
import time


class Browser:
    """Chromium, spoken to by messages that end in a zero byte on descriptors 3 and 4."""

    def __init__(self, profile):
        to_read, self.to_write = os.pipe()
        self.to_hear, to_say = os.pipe()
        command = (
            f"exec chromium --headless --no-sandbox --disable-gpu --remote-debugging-pipe "
            f"--user-data-dir='{profile}' about:blank 3<&{to_read} 4>&{to_say} 2>/dev/null"
        )
        self.process = subprocess.Popen(["bash", "-c", command], pass_fds=(to_read, to_say))
        os.close(to_read)
        os.close(to_say)
        self.rest, self.number, self.events, self.session = b"", 0, [], None

    def receive(self):
        while b"\0" not in self.rest:
            part = os.read(self.to_hear, 1 << 16)
            if not part:
                raise SystemExit("the browser went away")
            self.rest += part
        message, self.rest = self.rest.split(b"\0", 1)
        return json.loads(message)

    def ask(self, method, **parameters):
        self.number += 1
        message = {"id": self.number, "method": method, "params": parameters}
        if self.session:
            message["sessionId"] = self.session
        os.write(self.to_write, json.dumps(message).encode() + b"\0")
        while True:
            answer = self.receive()
            if answer.get("id") == self.number:
                if "error" in answer:
                    raise SystemExit(f"{method}: {answer['error']}")
                return answer["result"]
            self.events.append(answer)

    def attach(self):
        """Opens a tab of its own, to which all that follows is said."""
        self.session = None
        target = self.ask("Target.createTarget", url="about:blank")["targetId"]
        self.session = self.ask("Target.attachToTarget", targetId=target, flatten=True)["sessionId"]
        for domain in ("Page", "Network", "Runtime", "Log"):
            self.ask(f"{domain}.enable")

    def open(self, path):
        self.visit(path.resolve().as_uri())

    def visit(self, address):
        self.ask("Page.navigate", url="about:blank")
        self.ask("Page.navigate", url=address)
        while not self.value(f"document.readyState === 'complete' && location.href === {json.dumps(address)}"):
            pass

    def value(self, script):
        answer = self.ask("Runtime.evaluate", expression=script, returnByValue=True, awaitPromise=True)
        if "exceptionDetails" in answer:
            raise SystemExit(f"{script}: {answer['exceptionDetails']}")
        return answer["result"].get("value")

    def wait(self, script, seconds=20):
        """The first value of a script that is true."""
        end = time.monotonic() + seconds
        while not (found := self.value(script)):
            if time.monotonic() > end:
                raise SystemExit(f"FAILED: never came true: {script}")
            time.sleep(0.01)
        return found

    def click(self, x, y):
        for kind in ("mousePressed", "mouseReleased"):
            self.ask("Input.dispatchMouseEvent", type=kind, x=x, y=y, button="left", clickCount=1)

    def press(self, key, code=None, text=None, modifiers=0):
        extra = {"text": text} if text else {}
        virtual = {"Tab": 9, "Enter": 13, "Escape": 27, "ArrowLeft": 37, "ArrowUp": 38, "ArrowRight": 39, "ArrowDown": 40}
        virtual = virtual.get(key, ord(key.upper()) if len(key) == 1 and key.isalpha() else 0)
        for kind in ("keyDown", "keyUp"):
            self.ask(
                "Input.dispatchKeyEvent", type=kind, key=key, code=code or key, windowsVirtualKeyCode=virtual,
                modifiers=modifiers, **extra
            )
            extra = {}

    def size(self, width, height, dark=False):
        self.ask("Emulation.setDeviceMetricsOverride", width=width, height=height, deviceScaleFactor=1, mobile=False)
        scheme = [{"name": "prefers-color-scheme", "value": "dark" if dark else "light"}]
        self.ask("Emulation.setEmulatedMedia", features=scheme)

    def picture(self, path):
        """The page as it is seen, as a PNG file."""
        shot = self.ask("Page.captureScreenshot", format="png")
        path.write_bytes(base64.b64decode(shot["data"]))

    def close(self):
        self.process.kill()
        self.process.wait()
