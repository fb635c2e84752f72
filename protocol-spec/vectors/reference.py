"""The Tripline link as SPEC.md tells it, written for clarity: byte by byte, bit by bit, nothing fast.

Only the vectors are made with it. It shares no code with the two codecs that they test.
"""

U32 = 2**32 - 1
MOST_TIME = 2**53 - 1
MOST_BODY = 512
MOST_FRAME = 519
MOST_LINE = 6144

KIND = {1: "position", 2: "contact"}
REPORTS = {1: "sampled", 2: "edges", 3: "both"}
STATE = {0: "idle", 1: "running", 2: "sending"}
UTC_SOURCE = {0: "none", 1: "host", 2: "battery", 3: "reference"}
MARK = {1: "closed-stop", 2: "open-stop", 3: "adjusted", 4: "note"}
SOURCE = {1: "button", 2: "host"}
CAUSE = {1: "overrun", 2: "sensor", 3: "storage", 4: "queue"}
WHAT = {1: "samples", 2: "edges"}
RESULT = {0: "done", 1: "not-now", 2: "not-fitted", 3: "bad-value", 4: "busy", 5: "failed", 6: "not-known"}
TALK = {0: "keep", 1: "frames", 2: "lines"}


def num(name, at, size, least=0, most=None, signed=False, hexadecimal=False, words=None):
    if most is None:
        most = 2 ** (8 * size - (1 if signed else 0)) - 1
    return dict(name=name, at=at, size=size, least=least, most=most, signed=signed, hex=hexadecimal, words=words or {})


def time(name, at, least=0):
    return num(name, at, 8, least, MOST_TIME)


def text(name, least, most):
    return dict(name=name, text=True, least=least, most=most)


# code, name, length of the fixed part, fields
TABLES = [
    (0x01, "identity", 28, [
        num("major", 4, 1, 1), num("minor", 5, 1), num("clock_bits", 6, 1, 32, 53), num("contacts", 7, 1, 0, 64),
        num("positions", 8, 1, 0, 1), num("encodings", 9, 1, 1, 3, hexadecimal=True), num("body_limit", 10, 2, 64, 512),
        num("abilities", 12, 4, hexadecimal=True), num("session", 16, 4), num("rate_min", 20, 4), num("rate_max", 24, 4),
        text("model", 0, 32), text("serial", 0, 32), text("firmware", 0, 32)]),
    (0x02, "channel", 28, [
        num("kind", 4, 1, words=KIND), num("number", 5, 1, 0, 63), num("closed_level", 6, 1, 0, 1),
        num("reports", 7, 1, words=REPORTS), num("numerator", 8, 4, -2**31, signed=True), num("denominator", 12, 4, 1),
        num("modulus", 16, 4), num("delay", 20, 4), num("resolution", 24, 4), text("name", 1, 32), text("unit", 0, 16)]),
    (0x03, "status", 52, [
        num("state", 4, 1, words=STATE), num("utc_source", 5, 1, words=UTC_SOURCE), num("backlog", 6, 2, 0, 1000),
        time("stamp", 8), time("utc", 16), num("session", 24, 4), num("rate", 28, 4), num("samples", 32, 4),
        num("samples_lost", 36, 4), num("edges_lost", 40, 4), num("messages_dropped", 44, 4), num("bad_received", 48, 4)]),
    (0x04, "samples", 42, [
        num("number", 4, 4), time("stamp", 8), num("period", 16, 4), num("known", 24, 8, hexadecimal=True),
        dict(name="rows", rows=True)]),
    (0x05, "edges", 19, [
        num("number", 4, 4), time("stamp", 8), num("fraction", 16, 2, 0, 999), dict(name="list", edges=True)]),
    (0x06, "mark", 16, [
        num("kind", 4, 1, words=MARK), num("source", 5, 1, words=SOURCE), num("number", 6, 2), time("stamp", 8),
        text("text", 0, 120)]),
    (0x07, "loss", 32, [
        num("cause", 4, 1, words=CAUSE), num("what", 5, 1, words=WHAT), num("count", 8, 4, 1), num("number", 12, 4),
        time("stamp", 16), time("until", 24)]),
    (0x08, "answer", 12, [
        num("command", 4, 1), num("result", 5, 1, words=RESULT), num("to", 6, 2), num("value", 8, 4)]),
    (0x09, "stored", 40, [
        num("index", 4, 2), num("count", 6, 2, 1), num("id", 8, 4), num("bytes", 12, 4),
        num("check", 16, 4, hexadecimal=True), num("samples", 20, 4), time("started", 24), time("duration", 32),
        text("label", 0, 32)]),
    (0x0A, "piece", 14, [num("id", 4, 4), num("offset", 8, 4), dict(name="data", data=True)]),
    (0x41, "hello", 7, [num("major", 4, 1, 1), num("minor", 5, 1), num("encoding", 6, 1, words=TALK)]),
    (0x42, "start", 10, [num("rate", 4, 4), num("gather", 8, 2, 0, 1000)]),
    (0x43, "stop", 4, []),
    (0x44, "rate", 8, [num("rate", 4, 4, 1)]),
    (0x45, "place", 5, [num("kind", 4, 1, words=MARK), text("text", 0, 120)]),
    (0x46, "time", 12, [time("utc", 4, 1)]),
    (0x47, "list", 4, []),
    (0x48, "fetch", 16, [num("id", 4, 4), num("offset", 8, 4), num("length", 12, 4)]),
    (0x49, "query", 4, []),
]
BY_CODE = {code: (name, fixed, fields) for code, name, fixed, fields in TABLES}
BY_NAME = {name: (code, fixed, fields) for code, name, fixed, fields in TABLES}


class Malformed(Exception):
    pass


class Unknown(Exception):
    pass


class NoSequence(Malformed):
    pass


# ---- check and stuffing (SPEC 2)

def crc32c(data):
    crc = 0xFFFFFFFF
    for byte in data:
        crc ^= byte
        for _ in range(8):
            crc = crc >> 1 ^ (0x82F63B78 if crc & 1 else 0)
    return crc ^ 0xFFFFFFFF


def stuff(data):
    out = bytearray()
    rest = bytes(data) + b"\0"
    while rest:
        piece, zero, _ = rest[:254].partition(b"\0")
        if zero or len(rest) == 255 and rest.endswith(b"\0"):
            piece = rest.split(b"\0", 1)[0]
            out += bytes([len(piece) + 1]) + piece
            rest = rest[len(piece) + 1:]
        else:
            out += b"\xff" + piece
            rest = rest[254:]
    return bytes(out)


def unstuff(wire):
    out = bytearray()
    at = 0
    while at < len(wire):
        code = wire[at]
        if at + code > len(wire):
            return None
        out += wire[at + 1:at + code]
        at += code
        if code != 255 and at < len(wire):
            out.append(0)
    return bytes(out)


def frame(body, check=None):
    check = crc32c(body) if check is None else check
    return stuff(body + check.to_bytes(4, "little")) + b"\0"


# ---- messages: dictionaries as the vectors hold them

def plain(raw):
    try:
        s = raw.decode("utf-8")
    except UnicodeDecodeError:
        raise Malformed("string is not UTF-8")
    if any(ord(c) < 0x20 or 0x7F <= ord(c) <= 0x9F for c in s):
        raise Malformed("control character in a string")
    return s


def shown(field, value):
    if field["hex"]:
        return "%x" % value
    return field["words"].get(value, value)


def hidden(field, value):
    if field["hex"]:
        return int(value, 16)
    if isinstance(value, str):
        return {w: n for n, w in field["words"].items()}[value]
    return value


def signed32(value):
    value &= U32
    return value - 2**32 if value >= 2**31 else value


def step_width(step):
    return next(w for w in (1, 2, 4) if -2 ** (8 * w - 1) < step < 2 ** (8 * w - 1))


def encode_rows(message):
    """Canonical header parts and rows of a samples message."""
    known = int(message["known"], 16)
    period = message["period"]
    rows = message["rows"]
    counts = [r[0] for r in rows if r[0] is not None]
    position = counts[0] if counts else 0
    steps, last = [], position
    for row in rows:
        if row[0] is None:
            steps.append(None)
        else:
            steps.append(signed32(row[0] - last))
            last = row[0]
            if steps[-1] == -2**31:
                raise Malformed("a step of -2^31")
    sw = max((step_width(s) for s in steps if s is not None), default=0)
    levels = [int(r[1], 16) & known for r in rows]
    differ = 0
    for level in levels:
        differ |= level ^ levels[0]
    lw = next(w for w in (0, 1, 2, 4, 8) if differ < 2 ** (8 * w))
    gaps = [r[2] for r in rows] if period == 0 else []
    if gaps and gaps[0] != 0:
        raise Malformed("first gap")
    gw = 0 if period else 4 if max(gaps) > 65535 else 2
    return widths_body(message, position, levels[0], steps, levels, gaps, sw, lw, gw)


def widths_body(message, position, base, steps, levels, gaps, sw, lw, gw):
    """A samples body in any widths."""
    form = (0, 1, 2, None, 3)[sw] | (0, 1, 2, None, 3, None, None, None, 4)[lw] << 2 | gw // 2 << 5
    body = bytearray(42)
    body[0] = 4
    body[1] = form
    body[2:4] = message["sequence"].to_bytes(2, "little")
    body[4:8] = message["number"].to_bytes(4, "little")
    body[8:16] = message["stamp"].to_bytes(8, "little")
    body[16:20] = message["period"].to_bytes(4, "little")
    body[20:24] = position.to_bytes(4, "little", signed=True)
    body[24:32] = int(message["known"], 16).to_bytes(8, "little")
    body[32:40] = base.to_bytes(8, "little")
    body[40:42] = len(levels).to_bytes(2, "little")
    for i in range(len(levels)):
        if sw:
            step = -2 ** (8 * sw - 1) if steps[i] is None else steps[i]
            body += step.to_bytes(sw, "little", signed=True)
        body += (levels[i] & 2 ** (8 * lw) - 1).to_bytes(lw, "little")
        if gw:
            body += gaps[i].to_bytes(gw, "little")
    if len(body) > MOST_BODY or not 1 <= len(levels) <= 470:
        raise Malformed("too many rows")
    return bytes(body)


def encode(message):
    """Canonical body of a message."""
    code, fixed, fields = BY_NAME[message["message"]]
    if code == 4:
        return encode_rows(message)
    body = bytearray(fixed)
    body[0] = code
    body[2:4] = message["sequence"].to_bytes(2, "little")
    for f in fields:
        if f.get("text"):
            raw = message[f["name"]].encode("utf-8")
            body += bytes([len(raw)]) + raw
        elif f.get("edges"):
            body[18] = len(message["list"])
            for contact, level, gap in message["list"]:
                body += gap.to_bytes(4, "little") + bytes([contact | level << 7])
        elif f.get("data"):
            raw = bytes.fromhex(message["data"])
            body[12:14] = len(raw).to_bytes(2, "little")
            body += raw
        else:
            value = hidden(f, message[f["name"]])
            body[f["at"]:f["at"] + f["size"]] = value.to_bytes(f["size"], "little", signed=f["signed"])
    return bytes(body)


def number_at(body, at, size, signed=False):
    return int.from_bytes(body[at:at + size], "little", signed=signed)


def decode_rows(body):
    form = body[1]
    sw = (0, 1, 2, 4)[form & 3]
    lw = (0, 1, 2, 4, 8)[form >> 2 & 7]
    gw = (0, 2, 4)[form >> 5]
    count = number_at(body, 40, 2)
    period = number_at(body, 16, 4)
    known = number_at(body, 24, 8)
    base = number_at(body, 32, 8)
    if not 1 <= count <= 470 or len(body) != 42 + count * (sw + lw + gw) or (period == 0) != (gw > 0):
        raise Malformed("rows")
    position = number_at(body, 20, 4, True)
    rows, at = [], 42
    for i in range(count):
        step = number_at(body, at, sw, True)
        at += sw
        reading = sw > 0 and step != -2 ** (8 * sw - 1)
        if reading:
            position = signed32(position + step)
        low = number_at(body, at, lw)
        at += lw
        levels = base >> 8 * lw << 8 * lw | low
        row = [position if reading else None, "%x" % (levels & known)]
        if gw:
            row.append(number_at(body, at, gw))
            at += gw
        rows.append(row)
    if gw and rows[0][2] != 0:
        raise Malformed("first gap")
    return rows


def decode(body):
    """Message of a body; raises Unknown or Malformed."""
    if body[0] not in BY_CODE:
        raise Unknown
    name, fixed, fields = BY_CODE[body[0]]
    if name == "samples":
        if body[1] & 0x80 or (body[1] >> 2 & 7) > 4 or body[1] >> 5 > 2:
            raise Unknown
    elif body[1] != 0:
        raise Unknown
    if len(body) < fixed:
        raise Malformed("too short")
    message = {"message": name, "sequence": number_at(body, 2, 2)}
    at = fixed
    for f in fields:
        if f.get("text"):
            if at >= len(body) or at + 1 + body[at] > len(body) or not f["least"] <= body[at] <= f["most"]:
                raise Malformed(f["name"])
            message[f["name"]] = plain(body[at + 1:at + 1 + body[at]])
            at += 1 + body[at]
        elif f.get("rows"):
            message["rows"] = decode_rows(body)
        elif f.get("edges"):
            if not 1 <= body[18] <= 96 or len(body) != 19 + 5 * body[18]:
                raise Malformed("edges")
            message["list"] = []
            for i in range(19, len(body), 5):
                if body[i + 4] & 0x40:
                    raise Malformed("bit 6")
                message["list"].append([body[i + 4] & 63, body[i + 4] >> 7, number_at(body, i, 4)])
        elif f.get("data"):
            length = number_at(body, 12, 2)
            if not 1 <= length <= 480 or 14 + length > len(body):
                raise Malformed("data")
            message["data"] = body[14:14 + length].hex()
        else:
            value = number_at(body, f["at"], f["size"], f["signed"])
            if not f["least"] <= value <= f["most"]:
                raise Malformed(f["name"])
            message[f["name"]] = shown(f, value)
    if name == "channel" and message["kind"] == "position" and message["numerator"] == 0:
        raise Malformed("scale")
    return message


# ---- lines (SPEC 7)

def quoted(s):
    return '"' + s.replace("\\", "\\\\").replace('"', '\\"') + '"'


def line_content(message):
    out = "%s %d" % (message["message"], message["sequence"])
    for f in BY_NAME[message["message"]][2]:
        value = message[f["name"]]
        if f.get("text"):
            value = quoted(value)
        elif f.get("rows"):
            items, before = [], None
            for row in value:
                item = "-" if row[0] is None else str(row[0])
                if row[1] != before:
                    item += "/" + row[1]
                if before is not None and message["period"] == 0:
                    item += "+%d" % row[2]
                before = row[1]
                items.append(item)
            value = ",".join(items)
        elif f.get("edges"):
            value = ",".join("%d:%d" % (c, l) + ("+%d" % g if g else "") for c, l, g in value)
        out += " %s=%s" % (f["name"], value)
    return out.encode("utf-8")


def line(content, end=b"\n"):
    return content + b" ~%08x" % crc32c(content) + end


def digits(s, base, most=16):
    allowed = "0123456789abcdefABCDEF" if base == 16 else "0123456789"
    if not 1 <= len(s) <= most or any(c not in allowed for c in s):
        raise Malformed("digits: " + s)
    return int(s, base)


def signed_digits(s):
    return -digits(s[1:], 10) if s.startswith("-") else digits(s, 10)


def take_string(rest):
    if not rest.startswith(b'"'):
        raise Malformed("string")
    out, at = bytearray(), 1
    while True:
        if at >= len(rest):
            raise Malformed("string")
        c = rest[at:at + 1]
        if c == b'"':
            return bytes(out), rest[at + 1:]
        if c == b"\\":
            at += 1
            c = rest[at:at + 1]
            if c not in (b'"', b"\\"):
                raise Malformed("escape")
        out += c
        at += 1


def take_rows(value, period):
    rows, levels = [], 0
    for item in value.split(","):
        gap = 0
        if period == 0 and "+" in item:
            item, tail = item.split("+", 1)
            gap = digits(tail, 10)
        if "/" in item:
            item, tail = item.split("/", 1)
            levels = digits(tail, 16)
        count = None if item == "-" else signed_digits(item)
        if gap > U32 or count is not None and not -2**31 <= count < 2**31:
            raise Malformed("row")
        rows.append([count, "%x" % levels] + ([gap] if period == 0 else []))
    return rows


def take_edges(value):
    edges = []
    for item in value.split(","):
        gap = 0
        if "+" in item:
            item, tail = item.split("+", 1)
            gap = digits(tail, 10)
        if ":" not in item:
            raise Malformed("edge")
        contact, level = [digits(d, 10) for d in item.split(":", 1)]
        if contact > 63 or level > 1 or gap > U32:
            raise Malformed("edge")
        edges.append([contact, level, gap])
    if len(edges) > 96:
        raise Malformed("edges")
    return edges


def read_line(content):
    """Message of the content of a whole line; raises NoSequence, Unknown, Malformed with .sequence."""
    name, space, rest = content.partition(b" ")
    first, space2, tail = rest.partition(b" ")
    try:
        sequence = digits(first.decode("latin-1"), 10)
    except Malformed:
        raise NoSequence
    if sequence > 65535:
        raise NoSequence
    rest = space2 + tail
    try:
        return fields_of(name.decode("latin-1"), sequence, rest)
    except (Malformed, Unknown) as e:
        e.sequence = sequence
        raise


def fields_of(name, sequence, rest):
    if name not in BY_NAME:
        raise Unknown
    message = {"message": name, "sequence": sequence}
    for f in BY_NAME[name][2]:
        key = b" " + f["name"].encode() + b"="
        if not rest.startswith(key):
            raise Malformed("key " + f["name"])
        rest = rest[len(key):]
        if f.get("text"):
            raw, rest = take_string(rest)
            if not f["least"] <= len(raw) <= f["most"]:
                raise Malformed(f["name"])
            message[f["name"]] = plain(raw)
        else:
            raw, space, tail = rest.partition(b" ")
            rest = space + tail
            value = raw.decode("latin-1")
            if f.get("rows"):
                message["rows"] = take_rows(value, message["period"])
            elif f.get("edges"):
                message["list"] = take_edges(value)
            elif f.get("data"):
                if len(value) % 2 or not 2 <= len(value) <= 960 or any(c not in "0123456789abcdefABCDEF" for c in value):
                    raise Malformed("data")
                message["data"] = value.lower()
            else:
                if f["hex"]:
                    number = digits(value, 16)
                elif f["signed"]:
                    number = signed_digits(value)
                elif value in f["words"].values():
                    number = hidden(f, value)
                else:
                    number = digits(value, 10)
                if not f["least"] <= number <= f["most"]:
                    raise Malformed(f["name"])
                message[f["name"]] = shown(f, number)
        if rest and not rest.startswith(b" "):
            raise Malformed("after " + f["name"])
    return decode(encode(message))  # cuts levels to known, checks what lines and frames share


# ---- streams (SPEC 8, 12)

def whole_frame(unit):
    if not 1 <= len(unit) <= MOST_FRAME:
        return None
    data = unstuff(unit)
    if data is None or not 8 <= len(data) <= 516 or crc32c(data[:-4]) != number_at(data, len(data) - 4, 4):
        return None
    return data[:-4]


def whole_line(candidate):
    if len(candidate) + 1 > MOST_LINE:
        return None
    if candidate.endswith(b"\r"):
        candidate = candidate[:-1]
    if len(candidate) < 10 or candidate[-10:-8] != b" ~":
        return None
    check = candidate[-8:]
    if any(c not in b"0123456789abcdefABCDEF" for c in check) or int(check, 16) != crc32c(candidate[:-10]):
        return None
    return candidate[:-10]


class Decoder:
    def __init__(self):
        self.mode = "open"
        self.unit = bytearray()
        self.messages = []
        self.expected = None
        self.session = None
        self.counters = dict.fromkeys(
            "bytes delivered set_aside skipped idle messages damaged malformed unknown repeated lost restarts".split(), 0)

    def feed(self, data):
        for byte in data:
            self.counters["bytes"] += 1
            self.byte(byte)

    def count(self, name, by=1):
        self.counters[name] += by

    def byte(self, byte):
        if byte == 0:
            body = whole_frame(self.unit)
            if body is None and len(self.unit) <= MOST_FRAME and not self.unit.strip(b"\r\n"):
                self.count("idle", len(self.unit) + 1)
                self.mode = "open"
            elif body is None:
                self.damage(len(self.unit) + 1)
            else:
                self.mode = "frames"
                self.take_body(body, len(self.unit) + 1)
            self.unit.clear()
        elif byte == 10 and self.mode != "frames":
            before, _, candidate = self.unit.rpartition(b"\n") if self.mode == "open" else (b"", b"", self.unit)
            content = whole_line(candidate)
            prefix = len(self.unit) - len(candidate)
            if content is not None:
                if prefix and not self.unit[:prefix].strip(b"\r\n"):
                    self.count("idle", prefix)
                elif prefix:
                    self.damage(prefix)
                self.mode = "lines"
                self.take_line(bytes(content), len(candidate) + 1)
                self.unit.clear()
            elif self.mode == "lines":
                if bytes(self.unit) in (b"", b"\r"):
                    self.count("idle", len(self.unit) + 1)
                else:
                    self.damage(len(self.unit) + 1)
                self.unit.clear()
            else:
                self.unit.append(byte)
        else:
            self.unit.append(byte)
        if self.mode == "frames" and len(self.unit) > MOST_FRAME:
            self.mode = "open"

    def finish(self):
        if self.unit:
            self.damage(len(self.unit))
            self.unit.clear()

    def damage(self, size):
        self.count("damaged")
        self.count("skipped", size)

    def take_body(self, body, size):
        self.take(lambda: decode(body), body[0], number_at(body, 2, 2), size)

    def take_line(self, content, size):
        try:
            message = read_line(content)
        except NoSequence:
            self.count("malformed")
            self.count("set_aside", size)
            return
        except (Unknown, Malformed) as e:
            name = content.partition(b" ")[0].decode("latin-1")
            failure, code = e, BY_NAME[name][0] if name in BY_NAME else 0

            def fail():
                raise failure
            self.take(fail, code, failure.sequence, size)
            return
        self.take(lambda: message, BY_NAME[message["message"]][0], message["sequence"], size)

    def take(self, decoding, code, sequence, size):
        verdict, message = None, None
        try:
            message = decoding()
        except Unknown:
            verdict = "unknown"
        except Malformed:
            verdict = "malformed"
        identity = message is not None and message["message"] == "identity"
        if code < 0x40 and not self.in_sequence(sequence, message["session"] if identity else None):
            verdict = "repeated"
        if verdict:
            self.count(verdict)
            self.count("set_aside", size)
        else:
            if identity:
                self.session = message["session"]
            self.count("messages")
            self.count("delivered", size)
            self.messages.append(message)

    def in_sequence(self, sequence, session):
        if self.expected is not None:
            d = (sequence - self.expected) % 65536
            if session is not None and session != self.session:
                self.count("restarts", 1 if d else 0)
            elif d < 32768:
                self.count("lost", d)
            elif 65536 - d <= 16:
                return False
            else:
                self.count("restarts")
        self.expected = (sequence + 1) % 65536
        return True
