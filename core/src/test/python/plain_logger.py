#!/usr/bin/env python3
"""A working logger in plain Python, written from protocol-spec/SPEC.md alone (duty numbers are its own).

    plain_logger.py PORT [--lines] [--clock-bits N] [--mark-every SECONDS]

PORT is a terminal device, or - for standard input and output. It watches a make-believe valve of 31
turns that is driven to and fro between its ends, with four contacts on two cams; k1 is also stamped by
hardware. Nothing but the standard library, and no part of the product's own code.
"""

import argparse
import os
import select
import sys
import time

# ------------------------------------------------------------------ section 2: check, stuffing

TABLE = []
for value in range(256):
    for _ in range(8):
        value = value >> 1 ^ (0x82F63B78 if value & 1 else 0)
    TABLE.append(value)


def check(data):
    crc = 0xFFFFFFFF
    for byte in data:
        crc = crc >> 8 ^ TABLE[(crc ^ byte) & 0xFF]
    return crc ^ 0xFFFFFFFF


def frame(body):
    data = body + u(check(body), 4)
    out = bytearray()
    piece = bytearray()
    for place, byte in enumerate(data):
        if byte:
            piece.append(byte)
        if not byte or len(piece) == 254 and place + 1 < len(data):
            out.append(len(piece) + 1)
            out += piece
            piece.clear()
    return bytes(out) + bytes([len(piece) + 1]) + bytes(piece) + b"\0"


def unframe(wire):
    """Body of a unit without its delimiter, or None."""
    data = bytearray()
    at = 0
    while at < len(wire):
        code = wire[at]
        if at + code > len(wire):
            return None
        data += wire[at + 1:at + code]
        at += code
        if code < 255 and at < len(wire):
            data.append(0)
    if not 8 <= len(data) <= 516 or check(data[:-4]) != n(data, len(data) - 4, 4):
        return None
    return bytes(data[:-4])


def u(value, size):
    return (value % (1 << 8 * size)).to_bytes(size, "little")


def n(data, at, size):
    return int.from_bytes(data[at:at + size], "little")


def string(s):
    raw = s.encode()
    return bytes([len(raw)]) + raw


# ------------------------------------------------------------------ sections 5, 7: messages to the host
# Each is given as (type, form, name, body fields as bytes, line fields as text).

def quoted(s):
    return '"%s"' % s.replace("\\", "\\\\").replace('"', '\\"')


def as_frame(kind, form, sequence, fields):
    return frame(bytes([kind, form]) + u(sequence, 2) + fields)


def as_line(name, sequence, fields):
    text = ("%s %d" % (name, sequence) + "".join(" %s=%s" % f for f in fields)).encode()
    return text + b" ~%08x\n" % check(text)


COMMANDS = {"hello": 0x41, "start": 0x42, "stop": 0x43, "rate": 0x44, "place": 0x45, "time": 0x46, "list": 0x47, "fetch": 0x48, "query": 0x49}
FOR_HOSTS = [b"identity", b"channel", b"status", b"samples", b"edges", b"mark", b"loss", b"answer", b"stored", b"piece"]
MARKS = {1: "closed-stop", 2: "open-stop", 3: "adjusted", 4: "note"}
ENCODINGS = {"keep": 0, "frames": 1, "lines": 2}
DONE, NOT_NOW, NOT_FITTED, BAD_VALUE, BUSY, FAILED, NOT_KNOWN = range(7)
RESULTS = ["done", "not-now", "not-fitted", "bad-value", "busy", "failed", "not-known"]


def plain(raw):
    s = raw.decode()  # UnicodeDecodeError is a ValueError
    if any(ord(c) < 32 or 127 <= ord(c) < 160 for c in s):
        raise ValueError("control character")
    return s


def command_of_body(body):
    """(type, sequence, fields); fields None if malformed."""
    kind, sequence = body[0], n(body, 2, 2)
    if kind < 0x40:
        return kind, sequence, "not for us"
    if body[1] != 0:
        return kind, sequence, "unknown"
    sizes = {0x41: 7, 0x42: 10, 0x43: 4, 0x44: 8, 0x45: 6, 0x46: 12, 0x47: 4, 0x48: 16, 0x49: 4}
    if kind not in sizes:
        return kind, sequence, "unknown"
    if len(body) < sizes[kind]:
        return kind, sequence, None
    try:
        fields = {
            0x41: lambda: dict(major=body[4], minor=body[5], encoding=body[6]),
            0x42: lambda: dict(rate=n(body, 4, 4), gather=n(body, 8, 2)),
            0x44: lambda: dict(rate=n(body, 4, 4)),
            0x45: lambda: dict(kind=body[4], text=short(body[5], plain(body[6:6 + body[5]]), body[6:6 + body[5]])),
            0x46: lambda: dict(utc=n(body, 4, 8)),
            0x48: lambda: dict(id=n(body, 4, 4), offset=n(body, 8, 4), length=n(body, 12, 4)),
        }.get(kind, dict)()
    except ValueError:
        return kind, sequence, None
    return kind, sequence, in_range(kind, fields)


def short(length, text, raw):
    if length > 120 or len(raw) != length:
        raise ValueError("text")
    return text


def in_range(kind, f):
    good = {
        0x41: lambda: f["major"] >= 1 and f["minor"] <= 255 and f["encoding"] <= 255,
        0x42: lambda: f["gather"] <= 1000 and f["rate"] < 1 << 32,
        0x44: lambda: 1 <= f["rate"] < 1 << 32,
        0x46: lambda: 1 <= f["utc"] < 1 << 53,
        0x48: lambda: max(f.values()) < 1 << 32,
    }.get(kind, lambda: True)()
    return f if good else None


def command_of_line(content):
    """As command_of_body; None if not even a sequence can be read."""
    parts = content.split(b" ", 2)
    if len(parts) < 2 or not parts[1].isdigit() or len(parts[1]) > 16 or int(parts[1]) > 65535:
        return None
    sequence = int(parts[1])
    if parts[0] in FOR_HOSTS:
        return 0, sequence, "not for us"
    kind = COMMANDS.get(parts[0].decode("latin-1"))
    if kind is None:
        return 0, sequence, "unknown"
    keys = {0x41: ["major", "minor", "encoding"], 0x42: ["rate", "gather"], 0x44: ["rate"], 0x45: ["kind", "text"], 0x46: ["utc"],
            0x48: ["id", "offset", "length"]}.get(kind, [])
    fields, rest = {}, parts[2] if len(parts) > 2 else b""
    try:
        for key in keys:
            if not rest.startswith(key.encode() + b"="):
                return kind, sequence, None
            rest = rest[len(key) + 1:]
            if key == "text":
                value, rest = unquote(rest)
                fields[key] = short(len(value), plain(value), value)
            else:
                raw, _, rest = rest.partition(b" ")
                fields[key] = word_or_number(key, raw.decode("latin-1"))
    except ValueError:
        return kind, sequence, None
    return kind, sequence, in_range(kind, fields)


def word_or_number(key, raw):
    words = {"encoding": ENCODINGS, "kind": {w: c for c, w in MARKS.items()}}.get(key, {})
    if raw in words:
        return words[raw]
    if not (raw.isascii() and raw.isdigit() and len(raw) <= 16) or words and int(raw) > 255:
        raise ValueError(raw)
    return int(raw)


def unquote(rest):
    if rest[:1] != b'"':
        raise ValueError("string")
    out, at = bytearray(), 1
    while rest[at:at + 1] != b'"':
        if at >= len(rest):
            raise ValueError("string")
        if rest[at:at + 1] == b"\\":
            at += 1
            if rest[at:at + 1] not in (b'"', b"\\"):
                raise ValueError("escape")
        out += rest[at:at + 1]
        at += 1
    after = rest[at + 1:]
    if after and after[:1] != b" ":
        raise ValueError("after string")
    return bytes(out), after[1:]


# ------------------------------------------------------------------ sections 8, 12: what the host sends

class Listener:
    """Finds commands; counts what is damaged or malformed (L4)."""

    def __init__(self):
        self.mode, self.unit, self.bad = "open", bytearray(), 0

    def feed(self, data):
        commands = []
        for byte in data:
            got = self.byte(byte)
            if got is not None:
                commands.append(got)
        return commands

    def byte(self, byte):
        got = None
        if byte == 0:
            body = unframe(self.unit) if 0 < len(self.unit) <= 519 else None
            if body is not None:
                self.mode, got = "frames", command_of_body(body)
            elif len(self.unit) <= 519 and not self.unit.strip(b"\r\n"):
                self.mode = "open"
            else:
                self.bad += 1
            self.unit.clear()
        elif byte == 10 and self.mode != "frames":
            last = self.unit.rpartition(b"\n")[2]
            content = self.whole(bytes(last))
            if content is not None:
                self.mode, got = "lines", command_of_line(content)
                self.bad += got is None or bool(self.unit[:len(self.unit) - len(last)].strip(b"\r\n"))
                self.unit.clear()
            elif self.mode == "lines":
                self.bad += self.unit not in (b"", b"\r")
                self.unit.clear()
            else:
                self.unit.append(byte)
        else:
            self.unit.append(byte)
        if self.mode == "frames" and len(self.unit) > 519:
            self.mode = "open"
        if len(self.unit) > 10000:  # D11: hopeless, but what follows the next delimiter is not
            del self.unit[600:-600]
        return got

    @staticmethod
    def whole(line):
        if line.endswith(b"\r"):
            line = line[:-1]
        try:
            if len(line) >= 10 and line[-10:-8] == b" ~" and line[-8:].isalnum() and int(line[-8:], 16) == check(line[:-10]):
                return line[:-10]
        except ValueError:
            pass
        return None


# ------------------------------------------------------------------ the valve

SPAN, SPEED, COUNTS = 31.0, 2.0, 2000  # turns, turns a second, counts a turn
CAMS = [(0.5, "open"), (0.5, "closed"), (7.75, "open"), (30.5, "closed")]  # trip turns, closed on which side


def valve(seconds):
    """Turns from the closed stop: to and fro with a second's rest at both ends."""
    leg = SPAN / SPEED
    phase = seconds % (2 * leg + 2)
    if phase < leg:
        return phase * SPEED
    if phase < leg + 1:
        return SPAN
    return max(0.0, SPAN - (phase - leg - 1) * SPEED)


def contacts(turns):
    return sum(1 << i for i, (trip, side) in enumerate(CAMS) if (turns >= trip) == (side == "open"))


# ------------------------------------------------------------------ the logger

class Logger:
    def __init__(self, lines, clock_bits):
        self.lines = lines
        self.clock_bits = clock_bits
        self.power_up = time.monotonic_ns()
        self.session = int.from_bytes(os.urandom(4), "little")
        self.sequence = 0
        self.out = bytearray()
        self.listener = Listener()
        self.last_answer = None
        self.utc_minus_clock = None
        self.state = "idle"
        self.rate_set = 1_000_000
        self.rate = 0
        self.gather_us = 20_000
        self.number = self.edge_number = self.mark_number = 0
        self.rows = []
        self.first_stamp = self.status_due = 0
        self.levels = 0
        self.stored = [self.make_recording(3), self.make_recording(40)]
        self.sending = None
        self.marks_due = None

    # -- clock

    def now(self):
        return (time.monotonic_ns() - self.power_up) // 1000

    def stamp(self, micros):
        return micros % (1 << self.clock_bits)

    # -- talking

    def say(self, kind, name, fields, text, form=0):
        if self.lines:
            self.out += as_line(name, self.sequence, text)
        else:
            self.out += as_frame(kind, form, self.sequence, fields)
        self.sequence = (self.sequence + 1) % 65536

    def describe(self):
        for kind, name, fields, text in description(self.session, self.clock_bits):
            self.say(kind, name, fields, text)

    def status(self):
        now = self.now()
        utc = 0 if self.utc_minus_clock is None else now + self.utc_minus_clock
        state = {"idle": 0, "running": 1, "sending": 2}[self.state]
        numbers = [self.session, self.rate, self.number % (1 << 32), 0, 0, 0, self.listener.bad]
        self.say(0x03, "status", bytes([state, 1 if utc else 0]) + u(0, 2) + u(self.stamp(now), 8) + u(utc, 8) + b"".join(u(v, 4) for v in numbers),
                 [("state", self.state), ("utc_source", "host" if utc else "none"), ("backlog", 0), ("stamp", self.stamp(now)), ("utc", utc)] +
                 list(zip(["session", "rate", "samples", "samples_lost", "edges_lost", "messages_dropped", "bad_received"], numbers)))
        self.status_due = now + 900_000

    def answer(self, command, to, result, value=0):
        self.say(0x08, "answer", bytes([command, result]) + u(to, 2) + u(value, 4),
                 [("command", command), ("result", RESULTS[result]), ("to", to), ("value", value)])

    def mark(self, kind, source, text):
        self.take_samples()
        stamp = self.stamp(self.now())
        raw = bytes([kind, source]) + u(self.mark_number, 2) + u(stamp, 8) + string(text)
        self.say(0x06, "mark", raw, [("kind", MARKS.get(kind, kind)), ("source", ["", "button", "host"][source]), ("number", self.mark_number),
                                     ("stamp", stamp), ("text", quoted(text))])
        self.mark_number = (self.mark_number + 1) % 65536
        return (self.mark_number - 1) % 65536

    # -- sampling

    def take_samples(self):
        """Every sampling instant that has passed, late or not: a make-believe input can be asked about the past."""
        if self.state != "running":
            return
        period = 1_000_000_000_000 // self.rate  # ns
        while True:
            at_ns = self.start_ns + self.number * period
            if at_ns > self.now() * 1000:
                break
            turns = valve((at_ns - self.start_ns) / 1e9)
            levels = contacts(turns)
            if self.number > 0 and (levels ^ self.levels) & 1:
                self.edge(at_ns, levels & 1)
            self.levels = levels
            if not self.rows:
                self.first_stamp, self.first_number, self.period = at_ns // 1000, self.number, period
            self.rows.append((round(turns * COUNTS), levels))
            self.number += 1
            if len(self.rows) == 60:
                self.send_rows()

    def send_rows(self):
        """Steps of two bytes, levels of one: not the shortest, but any widths that hold the values will do."""
        if not self.rows:
            return
        position, body = self.rows[0][0], b""
        before = position
        for count, levels in self.rows:
            body += u(count - before, 2) + bytes([levels])
            before = count
        fields = (u(self.first_number, 4) + u(self.stamp(self.first_stamp), 8) + u(self.period, 4) + u(position, 4) + u(15, 8) +
                  u(self.rows[0][1], 8) + u(len(self.rows), 2) + body)
        text = ",".join("%d/%x" % row for row in self.rows)
        self.say(0x04, "samples", fields, [("number", self.first_number % (1 << 32)), ("stamp", self.stamp(self.first_stamp)), ("period", self.period),
                                           ("known", "f"), ("rows", text)], form=2 | 1 << 2)
        self.rows.clear()

    def edge(self, at_ns, level):
        """Sent at once, so before the block that holds a later row (L10)."""
        micros, fraction = divmod(at_ns, 1000)
        self.say(0x05, "edges", u(self.edge_number, 4) + u(self.stamp(micros), 8) + u(fraction, 2) + bytes([1]) + u(0, 4) + bytes([level << 7]),
                 [("number", self.edge_number), ("stamp", self.stamp(micros)), ("fraction", fraction), ("list", "0:%d" % level)])
        self.edge_number += 1

    # -- stored recordings

    def make_recording(self, blocks):
        """A link stream of its own, in frames, beginning with the description."""
        out, sequence = bytearray(b"\0"), 0
        for kind, _, fields, _ in description(self.session, self.clock_bits):
            out += as_frame(kind, 0, sequence, fields)
            sequence += 1
        for block in range(blocks):
            rows = [round(valve((block * 25 + i) / 1000) * COUNTS) for i in range(25)]
            body, before = b"", rows[0]
            for count in rows:
                body += u(count - before, 1)
                before = count
            fields = u(block * 25, 4) + u(block * 25_000, 8) + u(1_000_000, 4) + u(rows[0], 4) + u(15, 8) + u(10, 8) + u(25, 2) + body
            out += as_frame(4, 1, sequence, fields)
            sequence += 1
        return bytes(out)

    def say_stored(self):
        for index, data in enumerate(self.stored):
            samples, label = (3, 40)[index] * 25, "kept %d" % index
            self.say(0x09, "stored", u(index, 2) + u(len(self.stored), 2) + u(100 + index, 4) + u(len(data), 4) + u(check(data), 4) + u(samples, 4) +
                     u(0, 8) + u(samples * 1000, 8) + string(label),
                     [("index", index), ("count", len(self.stored)), ("id", 100 + index), ("bytes", len(data)), ("check", "%x" % check(data)),
                      ("samples", samples), ("started", 0), ("duration", samples * 1000), ("label", quoted(label))])

    def send_piece(self):
        key, at, end = self.sending
        piece = self.stored[key - 100][at:min(end, at + 200)]
        if piece:
            self.say(0x0A, "piece", u(key, 4) + u(at, 4) + u(len(piece), 2) + piece, [("id", key), ("offset", at), ("data", piece.hex())])
            self.sending = (key, at + len(piece), end)
        else:
            self.sending, self.state = None, "idle"
            self.status()

    # -- obeying

    def obey(self, kind, sequence, fields):
        if fields == "not for us":
            return
        if fields == "unknown":
            self.answer(kind, sequence, NOT_KNOWN)
        elif fields is None:
            self.listener.bad += 1
            self.answer(kind, sequence, BAD_VALUE)
        elif self.last_answer and self.last_answer[:2] == (kind, sequence) and kind not in (0x41, 0x47, 0x48, 0x49):
            self.answer(*self.last_answer)
        else:
            if kind == 0x48 and self.last_answer and self.last_answer[:2] == (kind, sequence) and self.sending:
                self.state, self.sending = "idle", None  # the host missed the answer: everything again
            result, value, after = getattr(self, "on_%02x" % kind)(**fields)
            self.answer(kind, sequence, result, value)
            self.last_answer = (kind, sequence, result, value)
            if result == DONE and after:
                after()

    def on_41(self, major, minor, encoding):
        if encoding > 2:
            return BAD_VALUE, 0, None
        if encoding:
            if self.lines != (encoding == 2):
                self.out += b"\0"
            self.lines = encoding == 2
        self.describe()
        self.status()
        return DONE, 0, None

    def on_42(self, rate, gather):
        if self.state != "idle":
            return NOT_NOW, 0, None
        rate = rate or self.rate_set
        if not 1_000 <= rate <= 2_000_000:
            return BAD_VALUE, 0, None
        self.gather_us = gather * 1000 or 20_000

        def begin():
            self.rate, self.state, self.start_ns = rate, "running", self.now() * 1000
            self.number = self.edge_number = self.mark_number = 0
            self.rows.clear()
            self.status_due = self.now() + 900_000
        return DONE, rate, begin

    def on_43(self):
        self.take_samples()
        self.send_rows()
        self.state, self.rate, self.sending = "idle", 0, None
        self.status()
        return DONE, 0, None

    def on_44(self, rate):
        if self.state != "idle":
            return NOT_NOW, 0, None
        self.rate_set = min(2_000_000, max(1_000, rate))
        return DONE, self.rate_set, None

    def on_45(self, kind, text):
        return DONE, self.mark(kind, 2, text), None

    def on_46(self, utc):
        self.utc_minus_clock = utc - self.now()
        return DONE, 0, None

    def on_47(self):
        return (DONE, len(self.stored), self.say_stored) if self.state == "idle" else (NOT_NOW, 0, None)

    def on_48(self, id, offset, length):
        if self.state != "idle":
            return NOT_NOW, 0, None
        if not 0 <= id - 100 < len(self.stored) or offset >= len(self.stored[id - 100]):
            return BAD_VALUE, 0, None
        end = min(len(self.stored[id - 100]), offset + (length or 1 << 32))

        def begin():
            self.state, self.sending = "sending", (id, offset, end)
        return DONE, end - offset, begin

    def on_49(self):
        self.status()
        return DONE, 0, None

    # -- running

    def run(self, into, out, mark_every):
        self.out += b"\n" if self.lines else b"\0"
        self.describe()
        self.status()
        next_mark = self.now() + mark_every * 1_000_000 if mark_every else None
        while True:
            if self.out:
                os.write(out, bytes(self.out))
                self.out.clear()
            wait = 0 if self.sending else 0.002 if self.state == "running" else 0.2
            if select.select([into], [], [], wait)[0]:
                data = os.read(into, 4096)
                if not data:
                    return
                for command in self.listener.feed(data):
                    self.obey(*command)
            self.take_samples()
            if self.rows and self.now() - self.first_stamp >= self.gather_us * 0.8:
                self.send_rows()
            if self.sending:
                self.send_piece()
            if self.state == "running" and self.now() >= self.status_due:
                self.status()
            if next_mark is not None and self.state == "running" and self.now() >= next_mark:
                self.mark(4, 1, "button")
                next_mark += mark_every * 1_000_000


def description(session, clock_bits):
    """identity and every channel, as (type, name, body fields, line fields)."""
    names = ["Plain logger", "0001", "1.0"]
    numbers = [("major", 1, 1), ("minor", 0, 1), ("clock_bits", clock_bits, 1), ("contacts", 4, 1), ("positions", 1, 1), ("encodings", 3, 1),
               ("body_limit", 512, 2), ("abilities", 0x7F, 4), ("session", session, 4), ("rate_min", 1_000, 4), ("rate_max", 2_000_000, 4)]
    text = [(k, "%x" % v if k in ("encodings", "abilities") else v) for k, v, _ in numbers]
    yield (0x01, "identity", b"".join(u(v, size) for _, v, size in numbers) + b"".join(map(string, names)),
           text + list(zip(["model", "serial", "firmware"], map(quoted, names))))
    yield channel(1, 0, 0, 1, 1, COUNTS, 0, "position", "turn")
    for i in range(4):
        yield channel(2, i, 1, 3 if i == 0 else 1, 0, 1, 1_000 if i == 0 else 0, "k%d" % (i + 1), "")


def channel(kind, number, closed, reports, numerator, denominator, resolution, name, unit):
    raw = (bytes([kind, number, closed, reports]) + u(numerator, 4) + u(denominator, 4) + u(0, 4) + u(0, 4) + u(resolution, 4) + string(name) + string(unit))
    return (0x02, "channel", raw,
            [("kind", ["", "position", "contact"][kind]), ("number", number), ("closed_level", closed), ("reports", ["", "sampled", "edges", "both"][reports]),
             ("numerator", numerator), ("denominator", denominator), ("modulus", 0), ("delay", 0), ("resolution", resolution), ("name", quoted(name)),
             ("unit", quoted(unit))])


def main():
    parser = argparse.ArgumentParser(description=__doc__.split("\n")[0])
    parser.add_argument("port")
    parser.add_argument("--lines", action="store_true", help="talk in lines until told otherwise")
    parser.add_argument("--clock-bits", type=int, default=32)
    parser.add_argument("--mark-every", type=float, default=0, help="press the button every so many seconds")
    options = parser.parse_args()
    into, out = 0, 1
    if options.port != "-":
        import tty
        into = out = os.open(options.port, os.O_RDWR | os.O_NOCTTY)
        tty.setraw(into)
    Logger(options.lines, options.clock_bits).run(into, out, options.mark_every)


if __name__ == "__main__":
    try:
        main()
    except (BrokenPipeError, KeyboardInterrupt):
        sys.exit(0)
