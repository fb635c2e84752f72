#!/usr/bin/env python3
"""Writes the vectors in valid/, invalid/ and stream/ with reference.py. Run it after a change of the protocol, and read the difference."""

import json
import os
import random

from reference import *

HERE = os.path.dirname(os.path.abspath(__file__))


def write(folder, name, cases):
    names = [c["name"] for c in cases]
    assert len(set(names)) == len(names), names
    with open(os.path.join(HERE, folder, name + ".json"), "w", encoding="utf-8", newline="\n") as f:
        f.write("[\n" + ",\n".join(pretty(c) for c in cases) + "\n]\n")
    return len(cases)


def pretty(case):
    inner = ",\n".join("    %s: %s" % (json.dumps(k), json.dumps(v, ensure_ascii=False)) for k, v in case.items())
    return "  {\n" + inner + "\n  }"


def msg(message, sequence=0, **fields):
    return {"message": message, "sequence": sequence, **fields}


# ---------------------------------------------------------------- valid

def valid(name, says, message, also_frames=(), also_lines=()):
    body, content = encode(message), line_content(message)
    assert decode(body) == message, (name, decode(body))
    assert read_line(content) == message, name
    assert len(content) + 11 <= MOST_LINE
    case = dict(name=name, says=says, message=message, frame=frame(body).hex(), line=line(content).decode("utf-8"))
    for why, raw in also_frames:
        assert decode(whole_frame(raw[:-1])) == message, (name, why)
    for why, raw in also_lines:
        assert read_line(bytes(whole_line(raw[:-1]))) == message, (name, why)
    if also_frames:
        case["also_frames"] = [dict(says=w, frame=f.hex()) for w, f in also_frames]
    if also_lines:
        case["also_lines"] = [dict(says=w, line=l.decode("utf-8")) for w, l in also_lines]
    return case


IDENTITY = msg("identity", 0, major=1, minor=0, clock_bits=32, contacts=4, positions=1, encodings="3", body_limit=512,
               abilities="7f", session=77, rate_min=1000, rate_max=5000000, model="Mill Race 4", serial="0042", firmware="1.0.3")
POSITION = msg("channel", 1, kind="position", number=0, closed_level=0, reports="sampled", numerator=1, denominator=2000,
               modulus=0, delay=0, resolution=0, name="position", unit="turn")
CONTACT = msg("channel", 2, kind="contact", number=0, closed_level=1, reports="both", numerator=0, denominator=1,
              modulus=0, delay=150000, resolution=1000, name="k1", unit="")
STATUS = msg("status", 6, state="running", utc_source="host", backlog=125, stamp=48210344, utc=1772439245000000, session=77,
             rate=1000000, samples=1200, samples_lost=3, edges_lost=0, messages_dropped=1, bad_received=2)
MARK = msg("mark", 18, kind="closed-stop", source="button", number=0, stamp=48300120, text="stop felt")


def samples(sequence=17, number=1200, stamp=48210344, period=1000000, known="f", rows=()):
    return msg("samples", sequence, number=number, stamp=stamp, period=period, known=known, rows=[list(r) for r in rows])


def edges(sequence=4, number=0, stamp=48210344, fraction=0, list=()):
    return msg("edges", sequence, number=number, stamp=stamp, fraction=fraction, list=[[*e] for e in list])


def any_widths(message, sw, lw, gw, position=None, base=None):
    """A frame of the same rows in other widths, position and base than the canonical ones."""
    rows = message["rows"]
    counts = [r[0] for r in rows if r[0] is not None]
    last = position if position is not None else counts[0] if counts else 0
    first, steps = last, []
    for r in rows:
        steps.append(None if r[0] is None else signed32(r[0] - last))
        last = r[0] if r[0] is not None else last
    levels = [int(r[1], 16) for r in rows]
    return frame(widths_body(message, first, levels[0] if base is None else base, steps, levels,
                             [r[2] for r in rows] if gw else [], sw, lw, gw))


def grown(message, extra):
    return frame(encode(message) + extra)


def valid_vectors():
    n = 0
    n += write("valid", "description", [
        valid("identity", "a logger with four contacts, one position, a 32-bit clock and every ability", IDENTITY,
              [("a later minor version has added three bytes at the end: ignored", grown(IDENTITY, b"\1\2\3"))],
              [("a later minor version has added a key", line(line_content(IDENTITY) + b" colour=7")),
               ("numbers with leading zeros", line(line_content(IDENTITY).replace(b"session=77", b"session=0000000077")))]),
        valid("identity-least", "no inputs, nothing it can do, empty names, sequence at its end",
              msg("identity", 65535, major=1, minor=0, clock_bits=53, contacts=0, positions=0, encodings="1", body_limit=64,
                  abilities="0", session=0, rate_min=0, rate_max=0, model="", serial="", firmware="")),
        valid("identity-most", "every field at the top of its range, names of 32 bytes",
              msg("identity", 1, major=255, minor=255, clock_bits=53, contacts=64, positions=1, encodings="3", body_limit=512,
                  abilities="ffffffff", session=U32, rate_min=U32, rate_max=U32, model="M" * 32, serial="S" * 32, firmware="F" * 32)),
        valid("identity-utf8", "names in two-, three- and four-byte UTF-8, a quotation mark and a backslash",
              msg("identity", 2, major=1, minor=0, clock_bits=40, contacts=1, positions=1, encodings="2", body_limit=64,
                  abilities="1", session=1, rate_min=1, rate_max=1, model="Mühle \u2713 \U0001F6B0", serial='"7"', firmware="a\\b")),
        valid("channel-position", "counts of a two-thousandth of a turn", POSITION),
        valid("channel-position-falling", "a reading that falls while the count rises, in 24ths of a turn, wrapping at 65536",
              msg("channel", 3, kind="position", number=0, closed_level=0, reports="sampled", numerator=-1, denominator=24,
                  modulus=65536, delay=2000000, resolution=0, name="handwheel", unit="turn")),
        valid("channel-position-extremes", "the lowest numerator and the highest unsigned fields",
              msg("channel", 3, kind="position", number=63, closed_level=1, reports="sampled", numerator=-2**31, denominator=U32,
                  modulus=U32, delay=U32, resolution=U32, name="n" * 32, unit="u" * 16)),
        valid("channel-contact", "a contact reported in rows and by edges stamped to the microsecond, filtered for 150 microseconds",
              CONTACT, also_lines=[("a word as its number", line(line_content(CONTACT).replace(b"kind=contact", b"kind=2")))]),
        valid("channel-contact-inverted", "level 0 means closed", {**CONTACT, "closed_level": 0, "number": 63, "name": "ö", "reports": "edges"}),
        valid("channel-unknown-kind", "a kind this version does not know stays a number; the host ignores the channel",
              {**CONTACT, "kind": 9, "reports": 200}),
        valid("status", "running", STATUS),
        valid("status-fresh", "idle after power-up, time of day unknown",
              msg("status", 3, state="idle", utc_source="none", backlog=0, stamp=0, utc=0, session=77, rate=0, samples=0,
                  samples_lost=0, edges_lost=0, messages_dropped=0, bad_received=0)),
        valid("status-most", "the highest stamp and time, full backlog, unknown words",
              msg("status", 65535, state=255, utc_source=4, backlog=1000, stamp=MOST_TIME, utc=MOST_TIME, session=U32, rate=U32,
                  samples=U32, samples_lost=U32, edges_lost=U32, messages_dropped=U32, bad_received=U32)),
    ])
    slow = samples(rows=[(1201, "3"), (1202, "3"), (1204, "7")])
    single = samples(rows=[(1201, "3")])
    quiet = samples(rows=[(500, "5")] * 4)
    gaps = samples(period=0, rows=[(10, "1", 0), (11, "1", 980), (12, "0", 1021)])
    bare = samples(rows=[(None, "1"), (None, "3")])
    n += write("valid", "samples", [
        valid("samples-three", "steps of one byte, a contact that changes: levels of one byte", slow,
              [("wider than needed: four-byte steps, eight-byte levels", any_widths(slow, 4, 8, 0)),
               ("steps from a count other than the first", any_widths(slow, 1, 1, 0, position=1100)),
               ("header levels that the rows overrule, and bits of contacts not known", any_widths(slow, 2, 1, 0, base=0xF0FF))],
              [("levels repeated in every row, upper case, CR LF", line(line_content(slow).replace(b"rows=1201/3,1202,1204/7", b"rows=1201/03,1202/3,1204/7").replace(b"known=f", b"known=F"), b"\r\n")),
               ("levels of contacts that are not known", line(line_content(slow).replace(b"1201/3,1202", b"1201/f0f3,1202/f3")))]),
        valid("samples-single", "one row is a block of one", single),
        valid("samples-quiet", "nothing moves and nothing changes: one byte a row", quiet,
              [("with levels in every row all the same", any_widths(quiet, 1, 2, 0))]),
        valid("samples-no-reading", "a coarse logger reads the encoder in every third row only",
              samples(rows=[(None, "1"), (None, "1"), (40, "1"), (None, "1"), (None, "3"), (39, "3")])),
        valid("samples-no-position", "contacts only: no step width at all", bare,
              [("with a step width, every row without reading", any_widths(bare, 1, 1, 0))]),
        valid("samples-no-position-quiet", "rows of no bytes: only their count tells them", samples(rows=[(None, "2")] * 470)),
        valid("samples-two-byte-steps", "a step of 127, of 128 and of -128: two bytes, since -128 in one byte means no reading",
              samples(rows=[(0, "0"), (127, "0"), (255, "0"), (127, "0")])),
        valid("samples-four-byte-steps", "a step of -32768 needs four bytes", samples(rows=[(0, "0"), (-32768, "0"), (-1, "0")])),
        valid("samples-step-127", "the widest steps of one byte", samples(rows=[(0, "0"), (127, "0"), (0, "0")])),
        valid("samples-step-32767", "the widest steps of two bytes", samples(rows=[(0, "0"), (32767, "0"), (0, "0")])),
        valid("samples-count-wraps", "the count passes 2^31 - 1: the step is +2, modulo 2^32",
              samples(rows=[(2**31 - 1, "0"), (-2**31 + 1, "0")])),
        valid("samples-count-extremes", "the lowest and the highest count, a step of -1", samples(rows=[(-2**31, "0"), (2**31 - 1, "0"), (None, "0")])),
        valid("samples-gaps", "period 0: each row tells its gap", gaps,
              [("gaps of four bytes", any_widths(gaps, 1, 1, 4))],
              [("gap 0 of the first row written", line(line_content(gaps).replace(b"rows=10/1,", b"rows=10/1+0,")))]),
        valid("samples-gap-none", "two rows at the same microsecond", samples(period=0, rows=[(1, "0", 0), (2, "0", 0)]),
              also_lines=[("a gap left out is 0", line(line_content(samples(period=0, rows=[(1, "0", 0), (2, "0", 0)])).replace(b"2+0", b"2")))]),
        valid("samples-gap-wide", "a gap of 65536 microseconds takes four bytes, and so does the longest",
              samples(period=0, rows=[(1, "0", 0), (2, "0", 65536), (3, "0", U32)])),
        valid("samples-gap-single", "one row with period 0", samples(period=0, rows=[(1, "0", 0)])),
        valid("samples-levels-2", "contact 8 changes: two bytes of levels", samples(known="1ff", rows=[(1, "0ff".lstrip("0")), (1, "1ff")])),
        valid("samples-levels-4", "contact 31 changes: four bytes", samples(known="ffffffff", rows=[(1, "0"), (1, "80000000")])),
        valid("samples-levels-8", "contact 63 changes: eight bytes", samples(known="f" * 16, rows=[(1, "1"), (1, "8000000000000001"), (1, "f" * 16)])),
        valid("samples-levels-base", "contacts 8 and up closed throughout: they stand in the header, rows have one byte",
              samples(known="ffff", rows=[(1, "ff00"), (1, "ff01"), (1, "ff00")])),
        valid("samples-known-none", "no contact sampled at all", samples(known="0", rows=[(1, "0"), (2, "0")])),
        valid("samples-longest", "470 rows of one byte: a body of 512",
              samples(rows=[(100000 + i * 7 % 100, "5") for i in range(470)])),
        valid("samples-no-zero", "254 bytes and more without a zero: the stuffing's longest piece",
              samples(sequence=0x0101, number=0x01010101, period=0x01010101, rows=[(7 + i, "5") for i in range(300)])),
        valid("samples-extremes", "number, stamp and period at the top", samples(65535, U32, MOST_TIME, U32, "f" * 16, [(0, "f" * 16)])),
    ])
    n += write("valid", "events", [
        valid("edges-one", "one edge at the base time", edges(list=[(3, 1, 0)])),
        valid("edges-bounce", "a bounce: four edges within 180 microseconds, stamped to 20 ns",
              edges(fraction=980, list=[(3, 1, 0), (3, 0, 41020), (3, 1, 60000), (3, 0, 80000)]),
              also_lines=[("a gap of 0 written", line(line_content(edges(fraction=980, list=[(3, 1, 0), (3, 0, 41020), (3, 1, 60000), (3, 0, 80000)])).replace(b"list=3:1,", b"list=3:1+0,")))]),
        valid("edges-first-gap", "the first edge later than the base time: allowed, if not canonical", edges(list=[(0, 0, 500), (63, 1, U32)])),
        valid("edges-most", "96 edges, the most", edges(65535, U32, MOST_TIME, 999, [(i % 64, i & 1, i) for i in range(96)])),
        valid("mark", "the operator has felt the closed stop", MARK),
        valid("mark-open-stop", "from the host, no text", msg("mark", 19, kind="open-stop", source="host", number=1, stamp=99300120, text="")),
        valid("mark-adjusted", "an adjuster was turned", msg("mark", 20, kind="adjusted", source="button", number=2, stamp=1, text="")),
        valid("mark-note", "a note with quotation marks, a backslash, a tilde, an equals sign and UTF-8",
              msg("mark", 21, kind="note", source="host", number=65535, stamp=MOST_TIME, text='cam "21" \\ ~00000000 = späť')),
        valid("mark-longest", "120 bytes of text", msg("mark", 22, kind="note", source="host", number=3, stamp=5, text="x" * 120)),
        valid("mark-unknown-kind", "a kind to come: kept as a number, treated as a note", msg("mark", 23, kind=77, source=8, number=4, stamp=6, text="")),
        valid("loss-overrun", "twelve samples lost", msg("loss", 24, cause="overrun", what="samples", count=12, number=1203, stamp=48213344, until=48224344)),
        valid("loss-edges", "the edge memory was full", msg("loss", 25, cause="queue", what="edges", count=1, number=U32, stamp=0, until=MOST_TIME)),
        valid("loss-unknown", "words to come", msg("loss", 26, cause=0, what=0, count=U32, number=0, stamp=2, until=1)),
        valid("answer-done", "started at 1 kHz", msg("answer", 27, command=0x42, result="done", to=7, value=1000000)),
        valid("answer-not-known", "to a command of a later version", msg("answer", 28, command=0x5A, result="not-known", to=65535, value=0)),
        valid("answer-unknown-result", "treated as failed", msg("answer", 29, command=0, result=99, to=0, value=U32)),
        valid("stored", "the second of three recordings", msg("stored", 30, index=1, count=3, id=9, bytes=1048576, check="0badcafe", samples=300000, started=1772439245000000, duration=300000000, label="CW-114 as found") | {"check": "badcafe"}),
        valid("stored-most", "every field at the top", msg("stored", 31, index=65535, count=65535, id=U32, bytes=U32, check="ffffffff", samples=U32, started=MOST_TIME, duration=MOST_TIME, label="l" * 32)),
        valid("piece", "eleven bytes of a recording", msg("piece", 32, id=9, offset=480, data="00060212aabbccddeeff00"),
              [("bytes after the data: a later version's", grown(msg("piece", 32, id=9, offset=480, data="00060212aabbccddeeff00"), b"\0\0"))],
              [("upper-case digits", line(line_content(msg("piece", 32, id=9, offset=480, data="00060212aabbccddeeff00")).replace(b"aabbcc", b"AAbbCC")))]),
        valid("piece-longest", "480 bytes", msg("piece", 33, id=0, offset=U32, data=bytes(i * 7 & 255 for i in range(480)).hex())),
    ])
    n += write("valid", "commands", [
        valid("hello", "a host of version 1.0 asks for frames", msg("hello", 0, major=1, minor=0, encoding="frames")),
        valid("hello-keep", "goes on in the present encoding", msg("hello", 1, major=1, minor=0, encoding="keep")),
        valid("hello-unknown", "an encoding to come: to be answered bad-value", msg("hello", 2, major=2, minor=9, encoding=3)),
        valid("start", "1 kHz, blocks after at most 10 ms", msg("start", 3, rate=1000000, gather=10)),
        valid("start-as-set", "rate and block as they are", msg("start", 4, rate=0, gather=0)),
        valid("stop", "a message without fields", msg("stop", 5), [("with a field of a later version", grown(msg("stop", 5), b"\7"))],
              [("with a key of a later version", line(b"stop 5 gently=1"))]),
        valid("rate", "half a hertz", msg("rate", 6, rate=500)),
        valid("place", "puts a mark", msg("place", 7, kind="open-stop", text="felt")),
        valid("place-empty", "without a text", msg("place", 8, kind="adjusted", text="")),
        valid("time", "2026-03-02T08:14:05Z", msg("time", 9, utc=1772439245000000)),
        valid("time-least", "the first microsecond of 1970", msg("time", 10, utc=1)),
        valid("list", "stored recordings", msg("list", 11)),
        valid("fetch", "all of recording 9", msg("fetch", 12, id=9, offset=0, length=0)),
        valid("fetch-part", "the piece that went missing", msg("fetch", 13, id=U32, offset=U32, length=U32)),
        valid("query", "the shortest body", msg("query", 14)),
    ])
    return n


# ---------------------------------------------------------------- invalid

def bad_frame(name, says, wire, verdict):
    """A unit without its delimiter, after a whole frame."""
    wire = bytes(wire)
    assert b"\0" not in wire
    d = Decoder()
    d.feed(frame(encode(msg("query"))))
    d.feed(wire + b"\0")
    d.feed(frame(encode(msg("stop", 1))))
    check_bad(name, d, verdict)
    return dict(name=name, says=says, frame=(wire + b"\0").hex(), verdict=verdict)


def bad_line(name, says, raw, verdict):
    d = Decoder()
    d.feed(line(line_content(msg("query"))))
    d.feed(raw + b"\n")
    d.feed(line(line_content(msg("stop", 1))))
    check_bad(name, d, verdict)
    return dict(name=name, says=says, line_bytes=(raw + b"\n").hex(), reads=raw.decode("utf-8", "replace"), verdict=verdict)


def check_bad(name, decoder, verdict):
    got = {k: v for k, v in decoder.counters.items() if v and k in ("damaged", "malformed", "unknown")}
    assert got == {verdict: 1}, (name, verdict, got)
    assert [m["message"] for m in decoder.messages] == ["query", "stop"], name


def spoilt(message, at, *values):
    body = bytearray(encode(message))
    body[at:at + len(values)] = bytes(values)
    return frame(bytes(body))[:-1]


def cut(message, length):
    return frame(encode(message)[:length])[:-1]


def raw_body(body):
    return frame(bytes(body))[:-1]


def sealed(content):
    return content.encode("utf-8") + b" ~%08x" % crc32c(content.encode("utf-8")) if isinstance(content, str) else content + b" ~%08x" % crc32c(content)


def invalid_vectors():
    n = 0
    good = frame(encode(MARK))[:-1]
    flip = bytearray(good)
    flip[20] ^= 0x10
    swapped = bytearray(good)
    swapped[8], swapped[9] = swapped[9], swapped[8]
    mark_body = encode(MARK)
    long_body = bytes([6, 0]) + bytes(2) + bytes(509)
    n += write("invalid", "damage", [
        bad_frame("flipped-bit", "one bit of the text flipped: the check is wrong", flip, "damaged"),
        bad_frame("swapped-bytes", "two neighbours exchanged", swapped, "damaged"),
        bad_frame("cut-short", "the last byte is missing", good[:-1], "damaged"),
        bad_frame("cut-front", "the first byte is missing", good[1:], "damaged"),
        bad_frame("byte-added", "one byte too many inside", good[:12] + b"\x55" + good[12:], "damaged"),
        bad_frame("two-in-one", "the delimiter between two frames was lost", good + frame(encode(msg("stop")))[:-1], "damaged"),
        bad_frame("code-beyond-end", "a code byte that reaches beyond the frame", b"\x05123", "damaged"),
        bad_frame("code-last", "the last byte is a code that promises more", good + b"\x02", "damaged"),
        bad_frame("one-byte", "a lone 01: no data at all", b"\x01", "damaged"),
        bad_frame("check-only", "four zero bytes: an empty body with its right check", stuff(bytes(4)), "damaged"),
        bad_frame("body-of-three", "a right check, but the body is shorter than a header", stuff(bytes([0x43, 0, 0]) + crc32c(bytes([0x43, 0, 0])).to_bytes(4, "little")), "damaged"),
        bad_frame("body-of-513", "a right check, but the body is longer than 512", raw_body(long_body), "damaged"),
        bad_frame("520-bytes", "one byte longer than any frame", b"\x01" * 520, "damaged"),
        bad_frame("519-bytes", "as long as the longest frame, but noise", b"\x02" * 519, "damaged"),
        bad_frame("check-big-endian", "the check sent high byte first", stuff(mark_body + crc32c(mark_body).to_bytes(4, "big")), "damaged"),
        bad_frame("check-of-other-polynomial", "CRC-32 as in Ethernet instead of CRC-32C",
                  stuff(mark_body + __import__("zlib").crc32(mark_body).to_bytes(4, "little")), "damaged"),
        bad_frame("check-not-inverted", "the final XOR forgotten", stuff(mark_body + (crc32c(mark_body) ^ U32).to_bytes(4, "little")), "damaged"),
        bad_frame("check-zero", "a check of zero", stuff(mark_body + bytes(4)), "damaged"),
        bad_frame("not-stuffed", "a body without zeros sent as it is", bytes([6, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1]), "damaged"),
        bad_frame("all-ff", "nothing but FF", b"\xff" * 100, "damaged"),
        bad_frame("text-in-frames", "a line of text where frames are spoken", b"mark 18 kind=closed-stop", "damaged"),
    ])
    n += write("invalid", "unknown", [
        bad_frame("type-00", "no message has type 0", raw_body([0, 0, 1, 0]), "unknown"),
        bad_frame("type-0b", "the first free type of the logger", raw_body([0x0B, 0, 1, 0, 9, 9]), "unknown"),
        bad_frame("type-3f", "the last type to the host", raw_body([0x3F, 0, 1, 0]), "unknown"),
        bad_frame("type-4a", "the first free command", raw_body([0x4A, 0, 1, 0]), "unknown"),
        bad_frame("type-ff", "the last of all", raw_body([0xFF, 0xFF, 0xFF, 0xFF]), "unknown"),
        bad_frame("form-1-of-mark", "a form of mark that is not known; its fields are not looked at", spoilt(MARK, 1, 1), "unknown"),
        bad_frame("form-bit-7", "samples with form bit 7", spoilt(samples(rows=[(1, "0")]), 1, 0x81), "unknown"),
        bad_frame("form-levels-5", "levels width 5", spoilt(samples(rows=[(1, "0")]), 1, 0x15), "unknown"),
        bad_frame("form-levels-7", "levels width 7", spoilt(samples(rows=[(1, "0")]), 1, 0x1D), "unknown"),
        bad_frame("form-time-3", "time width 3", spoilt(samples(rows=[(1, "0")]), 1, 0x61), "unknown"),
        bad_line("name-unknown", "a name this version does not know", sealed("torque 1 value=5"), "unknown"),
        bad_line("name-case", "names are lower case", sealed("Mark 1 kind=note source=host number=0 stamp=0 text=\"\""), "unknown"),
        bad_line("name-empty", "no name before the space", sealed(" 1"), "unknown"),
    ])
    s3 = samples(rows=[(1, "1"), (2, "2"), (3, "3")])
    g3 = samples(period=0, rows=[(1, "1", 0), (2, "2", 5), (3, "3", 5)])
    e2 = edges(list=[(1, 1, 0), (1, 0, 9)])
    utf = lambda raw: raw_body(encode(msg("place", 1, kind="note", text=""))[:5] + bytes([len(raw)]) + raw)
    many = bytearray(widths_body(samples(rows=[(None, "0")]), 0, 0, [None] * 470, [0] * 470, [], 0, 0, 0))
    many[40:42] = (471).to_bytes(2, "little")
    n += write("invalid", "fields", [
        bad_frame("identity-short", "the fixed part lacks a byte", cut(IDENTITY, 27), "malformed"),
        bad_frame("identity-no-strings", "the strings are missing", cut(IDENTITY, 28), "malformed"),
        bad_frame("identity-string-cut", "the last string is shorter than it says", cut(IDENTITY, len(encode(IDENTITY)) - 1), "malformed"),
        bad_frame("identity-major-0", "major version 0", spoilt(IDENTITY, 4, 0), "malformed"),
        bad_frame("identity-clock-31", "a clock of 31 bits", spoilt(IDENTITY, 6, 31), "malformed"),
        bad_frame("identity-clock-54", "a clock of 54 bits", spoilt(IDENTITY, 6, 54), "malformed"),
        bad_frame("identity-contacts-65", "65 contacts", spoilt(IDENTITY, 7, 65), "malformed"),
        bad_frame("identity-positions-2", "two positions", spoilt(IDENTITY, 8, 2), "malformed"),
        bad_frame("identity-encodings-0", "can send nothing", spoilt(IDENTITY, 9, 0), "malformed"),
        bad_frame("identity-encodings-4", "bit 2 of encodings", spoilt(IDENTITY, 9, 4), "malformed"),
        bad_frame("identity-limit-63", "a receive limit below the least", spoilt(IDENTITY, 10, 63, 0), "malformed"),
        bad_frame("identity-limit-513", "a receive limit above the most", spoilt(IDENTITY, 10, 1, 2), "malformed"),
        bad_frame("identity-string-33", "a name of 33 bytes", raw_body(encode(IDENTITY)[:28] + bytes([33]) + b"m" * 33 + bytes(2)), "malformed"),
        bad_frame("channel-number-64", "channel 64", spoilt(CONTACT, 5, 64), "malformed"),
        bad_frame("channel-closed-2", "a level that is neither 0 nor 1", spoilt(CONTACT, 6, 2), "malformed"),
        bad_frame("channel-denominator-0", "division by zero", spoilt(POSITION, 12, 0, 0, 0, 0), "malformed"),
        bad_frame("channel-numerator-0", "a position whose counts are worth nothing", spoilt(POSITION, 8, 0), "malformed"),
        bad_frame("channel-no-name", "an empty name", raw_body(encode(CONTACT)[:28] + bytes([0, 0])), "malformed"),
        bad_frame("channel-unit-17", "a unit of 17 bytes", raw_body(encode(CONTACT)[:28] + b"\x01k\x11" + b"u" * 17), "malformed"),
        bad_frame("status-short", "51 bytes", cut(STATUS, 51), "malformed"),
        bad_frame("status-backlog-1001", "more than full", spoilt(STATUS, 6, 0xE9, 3), "malformed"),
        bad_frame("status-stamp-beyond", "a stamp beyond the range", spoilt(STATUS, 8, 0, 0, 0, 0, 0, 0, 0x20, 0), "malformed"),
        bad_frame("status-utc-negative", "a time with the top bit set", spoilt(STATUS, 23, 0x80), "malformed"),
        bad_frame("samples-header-only", "cut before the count", cut(s3, 40), "malformed"),
        bad_frame("samples-count-0", "no rows", spoilt(samples(rows=[(None, "0")]), 40, 0), "malformed"),
        bad_frame("samples-count-471", "one row too many, of no bytes", raw_body(many), "malformed"),
        bad_frame("samples-row-missing", "fewer rows than counted", cut(s3, len(encode(s3)) - 2), "malformed"),
        bad_frame("samples-half-row", "the last row is cut", cut(s3, len(encode(s3)) - 1), "malformed"),
        bad_frame("samples-byte-over", "a byte after the last row", raw_body(encode(s3) + b"\0"), "malformed"),
        bad_frame("samples-no-gaps", "period 0 without gaps", spoilt(s3, 16, 0, 0, 0, 0), "malformed"),
        bad_frame("samples-gaps-and-period", "gaps and a period", spoilt(g3, 16, 1), "malformed"),
        bad_frame("samples-first-gap", "the first gap is not 0", spoilt(g3, 44, 1), "malformed"),
        bad_frame("samples-stamp", "a stamp of 2^53", spoilt(s3, 8, 0, 0, 0, 0, 0, 0, 0x20, 0), "malformed"),
        bad_frame("edges-count-0", "no edges", raw_body(encode(e2)[:18] + b"\0"), "malformed"),
        bad_frame("edges-count-97", "97 edges", raw_body(encode(e2)[:18] + bytes([97]) + bytes(97 * 5)), "malformed"),
        bad_frame("edges-short", "the last edge is cut", cut(e2, len(encode(e2)) - 1), "malformed"),
        bad_frame("edges-long", "a byte after the last edge", raw_body(encode(e2) + b"\0"), "malformed"),
        bad_frame("edges-bit-6", "bit 6 of an edge", spoilt(e2, 23, 0x41), "malformed"),
        bad_frame("edges-fraction-1000", "a fraction of a whole microsecond", spoilt(e2, 16, 0xE8, 3), "malformed"),
        bad_frame("mark-no-text", "the text's length is missing", cut(MARK, 16), "malformed"),
        bad_frame("mark-text-121", "121 bytes of text", raw_body(encode(MARK)[:16] + bytes([121]) + b"x" * 121), "malformed"),
        bad_frame("loss-count-0", "nothing lost", spoilt(msg("loss", 1, cause="overrun", what="samples", count=1, number=0, stamp=0, until=0), 8, 0), "malformed"),
        bad_frame("answer-short", "the value is cut", cut(msg("answer", 1, command=0x42, result="done", to=0, value=0), 11), "malformed"),
        bad_frame("stored-count-0", "an entry of an empty list", spoilt(msg("stored", 1, index=0, count=1, id=0, bytes=0, check="0", samples=0, started=0, duration=0, label=""), 6, 0), "malformed"),
        bad_frame("piece-empty", "no data", raw_body(encode(msg("piece", 1, id=1, offset=0, data="00"))[:12] + bytes(2)), "malformed"),
        bad_frame("piece-481", "481 bytes of data", raw_body(encode(msg("piece", 1, id=1, offset=0, data="00"))[:12] + bytes([0xE1, 1]) + bytes(481)), "malformed"),
        bad_frame("piece-cut", "less data than it says", spoilt(msg("piece", 1, id=1, offset=0, data="00"), 12, 2), "malformed"),
        bad_frame("hello-short", "no encoding", cut(msg("hello", 1, major=1, minor=0, encoding="keep"), 6), "malformed"),
        bad_frame("start-gather-1001", "more than a second of gathering", spoilt(msg("start", 1, rate=0, gather=0), 8, 0xE9, 3), "malformed"),
        bad_frame("rate-0", "a rate of 0", spoilt(msg("rate", 1, rate=1), 4, 0), "malformed"),
        bad_frame("time-0", "time 0 means unknown", spoilt(msg("time", 1, utc=1), 4, 0), "malformed"),
        bad_frame("fetch-short", "half a length", cut(msg("fetch", 1, id=1, offset=0, length=0), 14), "malformed"),
        bad_frame("utf8-control", "a line feed in a string", utf(b"a\nb"), "malformed"),
        bad_frame("utf8-delete", "U+007F in a string", utf(b"\x7f"), "malformed"),
        bad_frame("utf8-c1", "U+009B, which terminals obey", utf(b"\xc2\x9b1m"), "malformed"),
        bad_frame("utf8-zero", "a zero byte in a string", utf(b"a\0b"), "malformed"),
        bad_frame("utf8-stray", "a continuation byte alone", utf(b"a\x80"), "malformed"),
        bad_frame("utf8-cut", "half a character", utf(b"a\xc3"), "malformed"),
        bad_frame("utf8-overlong-2", "an overlong two-byte form", utf(b"\xc1\x81"), "malformed"),
        bad_frame("utf8-overlong-3", "an overlong three-byte form", utf(b"\xe0\x9f\xbf"), "malformed"),
        bad_frame("utf8-overlong-4", "an overlong four-byte form", utf(b"\xf0\x8f\xbf\xbf"), "malformed"),
        bad_frame("utf8-surrogate", "half of a surrogate pair", utf(b"\xed\xa0\x80"), "malformed"),
        bad_frame("utf8-beyond", "beyond U+10FFFF", utf(b"\xf4\x90\x80\x80"), "malformed"),
        bad_frame("utf8-f5", "a byte that never occurs", utf(b"\xf5\x80\x80\x80"), "malformed"),
        bad_frame("utf8-broken", "a three-byte character with its last byte wrong", utf(b"\xe2\x9c\x41"), "malformed"),
    ])
    mark = line_content(MARK).decode()
    samp = line_content(s3).decode()
    edge = line_content(e2).decode()
    whole = line(line_content(MARK))[:-1]
    n += write("invalid", "lines", [
        bad_line("line-check", "a wrong digit in the check", whole[:-1] + (b"0" if whole[-1:] != b"0" else b"1"), "damaged"),
        bad_line("line-letter", "one letter changed", whole.replace(b"stop", b"stcp", 1), "damaged"),
        bad_line("line-cut", "the end is missing", whole[:-4], "damaged"),
        bad_line("line-front", "the beginning is missing", whole[3:], "damaged"),
        bad_line("line-no-check", "no check at all", mark.encode(), "damaged"),
        bad_line("line-short-check", "seven digits", b"stop 1 ~0000000", "damaged"),
        bad_line("line-long-check", "nine digits", b"stop 1 ~0%08x" % crc32c(b"stop 1"), "damaged"),
        bad_line("line-no-space", "no space before the tilde", b"stop 1~%08x" % crc32c(b"stop 1"), "damaged"),
        bad_line("line-space-after", "a space after the check", whole + b" ", "damaged"),
        bad_line("line-two", "the LF between two lines was lost", whole + whole, "damaged"),
        bad_line("line-too-long", "6145 bytes with its LF", sealed("stop 1 x=" + "a" * (6144 - 19)), "damaged"),
        bad_line("line-banner", "a boot banner", b"Mill Race 4 boot 1.0.3", "damaged"),
        bad_line("line-no-sequence", "no sequence", sealed("stop"), "malformed"),
        bad_line("line-sequence-65536", "a sequence beyond 65535", sealed("stop 65536"), "malformed"),
        bad_line("line-sequence-word", "a sequence that is no number", sealed("stop one"), "malformed"),
        bad_line("line-sequence-minus", "a negative sequence", sealed("stop -1"), "malformed"),
        bad_line("line-sequence-17-digits", "a sequence of 17 digits", sealed("stop 00000000000000001"), "malformed"),
        bad_line("line-nothing", "an empty line with its right check", sealed(""), "malformed"),
        bad_line("line-key-missing", "a key is missing", sealed(mark.replace(" number=0", "")), "malformed"),
        bad_line("line-key-order", "keys in another order", sealed("start 1 gather=0 rate=0"), "malformed"),
        bad_line("line-key-case", "a key in upper case", sealed("rate 1 RATE=5"), "malformed"),
        bad_line("line-two-spaces", "two spaces", sealed("rate 1  rate=5"), "malformed"),
        bad_line("line-no-value", "a key without a value", sealed("rate 1 rate="), "malformed"),
        bad_line("line-value-word", "a letter in a number", sealed("rate 1 rate=5k"), "malformed"),
        bad_line("line-value-minus", "a negative rate", sealed("rate 1 rate=-5"), "malformed"),
        bad_line("line-value-plus", "a plus sign", sealed("rate 1 rate=+5"), "malformed"),
        bad_line("line-value-point", "a decimal point", sealed("rate 1 rate=5.0"), "malformed"),
        bad_line("line-value-beyond", "a rate of 2^32", sealed("rate 1 rate=4294967296"), "malformed"),
        bad_line("line-value-digits", "17 digits", sealed("rate 1 rate=00000000000000005"), "malformed"),
        bad_line("line-stamp-beyond", "a time of 2^53", sealed("time 1 utc=9007199254740992"), "malformed"),
        bad_line("line-word-unknown", "a word that is none", sealed("hello 1 major=1 minor=0 encoding=morse"), "malformed"),
        bad_line("line-word-case", "a word in upper case", sealed("hello 1 major=1 minor=0 encoding=Keep"), "malformed"),
        bad_line("line-word-256", "the number of a word beyond its byte", sealed("hello 1 major=1 minor=0 encoding=256"), "malformed"),
        bad_line("line-hex-prefix", "hexadecimal with a prefix", sealed(samp.replace("known=f", "known=0xf")), "malformed"),
        bad_line("line-hex-17", "17 hexadecimal digits", sealed(samp.replace("known=f", "known=0000000000000000f")), "malformed"),
        bad_line("line-string-bare", "a string without quotation marks", sealed('place 1 kind=note text=felt'), "malformed"),
        bad_line("line-string-open", "a string without its end", sealed('place 1 kind=note text="felt'), "malformed"),
        bad_line("line-string-escape", "an escape that is none", sealed('place 1 kind=note text="a\\n"'), "malformed"),
        bad_line("line-string-escape-end", "a backslash before the end", sealed('place 1 kind=note text="a\\'), "malformed"),
        bad_line("line-string-after", "something right after a string", sealed('place 1 kind=note text="a"b'), "malformed"),
        bad_line("line-string-121", "121 bytes", sealed('place 1 kind=note text="%s"' % ("x" * 121)), "malformed"),
        bad_line("line-string-tab", "a control character", sealed('place 1 kind=note text="a\tb"'), "malformed"),
        bad_line("line-string-utf8", "Latin-1 instead of UTF-8", sealed('place 1 kind=note text="'.encode() + b'M\xfchle"'), "malformed"),
        bad_line("line-rows-none", "no rows", sealed(samp.split(" rows=")[0] + " rows="), "malformed"),
        bad_line("line-rows-comma", "a comma at the end", sealed(samp + ","), "malformed"),
        bad_line("line-rows-word", "a row that is no number", sealed(samp + ",x"), "malformed"),
        bad_line("line-rows-beyond", "a count of 2^31", sealed(samp + ",2147483648"), "malformed"),
        bad_line("line-rows-levels", "a slash without levels", sealed(samp + ",5/"), "malformed"),
        bad_line("line-rows-gap", "a gap where there is a period", sealed(samp + "+5"), "malformed"),
        bad_line("line-rows-first-gap", "a first gap that is not 0", sealed(line_content(g3).decode().replace("rows=1/1,", "rows=1/1+7,")), "malformed"),
        bad_line("line-rows-gap-beyond", "a gap of 2^32", sealed(line_content(g3).decode() + ",9+4294967296"), "malformed"),
        bad_line("line-rows-471", "471 rows", sealed(samp.split(" rows=")[0] + " rows=" + ",".join(["-"] * 471)), "malformed"),
        bad_line("line-rows-step", "a step of -2^31, which no frame can hold", sealed(samp.split(" rows=")[0] + " rows=0/0,-2147483648"), "malformed"),
        bad_line("line-rows-long", "236 rows of two bytes and a body beyond 512", sealed(samp.split(" rows=")[0] + " rows=" + ",".join("%d/%d" % (i, i % 2) for i in range(236))), "malformed"),
        bad_line("line-edges-none", "no edges", sealed(edge.split(" list=")[0] + " list="), "malformed"),
        bad_line("line-edges-64", "contact 64", sealed(edge + ",64:1"), "malformed"),
        bad_line("line-edges-level", "a level of 2", sealed(edge + ",3:2"), "malformed"),
        bad_line("line-edges-colon", "no colon", sealed(edge + ",3"), "malformed"),
        bad_line("line-edges-97", "97 edges", sealed(edge.split(" list=")[0] + " list=" + ",".join(["1:1"] * 97)), "malformed"),
        bad_line("line-piece-odd", "an odd number of digits", sealed("piece 1 id=1 offset=0 data=abc"), "malformed"),
        bad_line("line-piece-letter", "a letter that is no digit", sealed("piece 1 id=1 offset=0 data=0g"), "malformed"),
        bad_line("line-piece-empty", "no data", sealed("piece 1 id=1 offset=0 data="), "malformed"),
        bad_line("line-piece-481", "481 bytes", sealed("piece 1 id=1 offset=0 data=" + "00" * 481), "malformed"),
        bad_line("line-scale-0", "a position with numerator 0", sealed(line_content(POSITION).decode().replace("numerator=1", "numerator=0")), "malformed"),
    ])
    return n


# ---------------------------------------------------------------- streams

def stream(name, says, chunks, finish=False):
    d = Decoder()
    for c in chunks:
        d.feed(c)
    if finish:
        d.finish()
    c = d.counters
    pending = c["bytes"] - c["delivered"] - c["set_aside"] - c["skipped"] - c["idle"]
    assert pending == len(d.unit), name
    return dict(name=name, says=says, chunks=[bytes(x).hex() for x in chunks], finish=finish, messages=d.messages, counters={**c, "pending": pending})


def bytewise(data):
    return [data[i:i + 1] for i in range(len(data))]


def pieces(data, seed, most):
    r = random.Random(seed)
    out, at = [], 0
    while at < len(data):
        n = r.randint(1, most)
        out.append(data[at:at + n])
        at += n
    return out


def f(message):
    return frame(encode(message))


def l(message):
    return line(line_content(message))


def block(sequence, number):
    return samples(sequence, number, 1000000 + number * 1000, rows=[(100 + number + i, "%x" % (number // 8 & 15)) for i in range(8)])


def session(start=0):
    """A short recording: description, blocks, an edge, a mark."""
    out = [{**IDENTITY, "sequence": start}, {**POSITION, "sequence": start + 1}]
    for i in range(4):
        out.append({**CONTACT, "sequence": start + 2 + i, "number": i, "name": "k%d" % (i + 1)})
    out.append({**STATUS, "sequence": start + 6})
    for i in range(3):
        out.append(block(start + 7 + i, 8 * i))
    out.append(edges(start + 10, 0, 1023500, 250, [(1, 1, 0), (1, 0, 30000), (1, 1, 45000)]))
    out.append({**MARK, "sequence": start + 11, "stamp": 1023900})
    out.append(block(start + 12, 24))
    return out


def stream_vectors():
    n = 0
    frames = b"".join(map(f, session()))
    lines = b"".join(map(l, session()))
    blocks = [block(i, 8 * i) for i in range(6)]
    fb = [f(b) for b in blocks]
    lb = [l(b) for b in blocks]
    n += write("stream", "chunks", [
        stream("frames-whole", "a short recording in one piece, begun by a delimiter", [b"\0" + frames]),
        stream("frames-bytewise", "the same, byte by byte", bytewise(b"\0" + frames)),
        stream("frames-pieces", "the same in odd pieces", pieces(b"\0" + frames, 1, 60)),
        stream("lines-whole", "the same recording as lines, begun by LF", [b"\n" + lines]),
        stream("lines-bytewise", "the same, byte by byte", bytewise(b"\n" + lines)),
        stream("lines-pieces", "in odd pieces, lines ended by CR LF", pieces(b"\r\n" + lines.replace(b"\n", b"\r\n"), 2, 90)),
        stream("idle-zeros", "delimiters between frames mean nothing", [b"\0\0\0" + fb[0] + b"\0\0", b"\0" + fb[1]]),
        stream("idle-lines", "blank lines between lines mean nothing", [lb[0] + b"\n\r\n\n" + lb[1]]),
        stream("pending-frame", "a frame that has not ended yet is pending", [fb[0], fb[1][:20]]),
        stream("pending-line", "a line that has not ended yet is pending", [lb[0], lb[1][:20]]),
        stream("finish-frame", "the line is closed inside a frame", [fb[0], fb[1][:20]], True),
        stream("finish-line", "the line is closed inside a line", [lb[0], lb[1][:20]], True),
        stream("finish-clean", "closed between frames: nothing is damaged", [fb[0]], True),
        stream("nothing", "no bytes at all", [], True),
        stream("longest", "two frames of the longest kind", [f(samples(0, rows=[(100 + i % 90, "5") for i in range(470)])) + f(samples(1, rows=[(100 + i % 90, "5") for i in range(470)]))]),
    ])
    garbage = bytes(random.Random(3).randrange(1, 256) for _ in range(200)).replace(b"\n", b"!")
    long_garbage = bytes(random.Random(4).randrange(1, 256) for _ in range(9000))
    n += write("stream", "garbage", [
        stream("garbage-frames", "noise, the delimiter, then frames", [garbage + b"\0" + fb[0] + fb[1]]),
        stream("garbage-glued", "noise right before a frame costs that frame", [garbage + fb[0] + fb[1]]),
        stream("garbage-lines", "noise, LF, then lines", [garbage + b"\n" + lb[0] + lb[1]]),
        stream("garbage-long", "nine thousand bytes of noise without a zero, then frames", [long_garbage + b"\0" + fb[0]]),
        stream("garbage-long-lines", "the same, then lines", [long_garbage + b"\n" + lb[0]]),
        stream("banner", "a boot banner of three lines, then lines of the link", [b"boot 1.0.3\r\nself test passed\r\n\r\n" + lb[0]]),
        stream("banner-frames", "a boot banner, the delimiter, then frames", [b"boot 1.0.3\r\nself test passed\r\n\0" + fb[0]]),
        stream("mid-frame", "the host begins to listen inside a frame", [fb[0][11:] + fb[1] + fb[2]]),
        stream("mid-line", "the host begins to listen inside a line", [lb[0][11:] + lb[1] + lb[2]]),
        stream("noise-between", "a burst of noise between two frames", [fb[0] + garbage + b"\0" + fb[1]]),
        stream("long-line", "a line too long to be one, then a good one", [lb[0] + b"x" * 7000 + b"\n" + lb[1]]),
        stream("long-open-line", "before any message: an endless line, then a good one", [b"x" * 7000 + b"\n" + lb[1]]),
        stream("exactly-6144", "the longest line allowed, kept by ignored keys; and one byte more",
               [line(b"query 0 x=" + b"a" * (6144 - 21)) + line(b"query 0 x=" + b"a" * (6144 - 20)) + l(msg("stop", 1))]),
    ])
    flipped = bytearray(fb[1])
    flipped[30] ^= 4
    delimiter = bytearray(fb[1])
    delimiter[-1] = 0x20
    zeroed = bytearray(fb[1])
    zeroed[25] = 0
    bad_line_ = bytearray(lb[1])
    bad_line_[40] ^= 1
    lost_lf = lb[1][:-1]
    odd_zero = bytearray(lb[1])
    odd_zero[33] = 0
    n += write("stream", "damage", [
        stream("flipped-bit", "one frame of three damaged: it alone is lost", [fb[0] + bytes(flipped) + fb[2]]),
        stream("flipped-delimiter", "a damaged delimiter costs two frames", [fb[0] + bytes(delimiter) + fb[2] + fb[3]]),
        stream("zero-inside", "a byte turned into a delimiter: two damaged units, one message lost", [fb[0] + bytes(zeroed) + fb[2]]),
        stream("byte-lost", "a byte of a frame never arrived", [fb[0] + fb[1][:13] + fb[1][14:] + fb[2]]),
        stream("frame-lost", "a frame never arrived: seen from the sequence", [fb[0] + fb[2]]),
        stream("frames-lost", "three frames never arrived", [fb[0] + fb[4]]),
        stream("truncated", "the sender restarted inside a frame; its first delimiter saves the next", [fb[0] + fb[1][:17] + b"\0" + fb[2]]),
        stream("line-flipped", "one line of three damaged", [lb[0] + bytes(bad_line_) + lb[2]]),
        stream("line-feed-lost", "a lost LF costs two lines", [lb[0] + lost_lf + lb[2] + lb[3]]),
        stream("line-zero", "a zero byte inside a line: two damaged units, still lines", [lb[0] + bytes(odd_zero) + lb[2]]),
        stream("malformed-between", "a whole frame with impossible content is set aside, and counts in the sequence",
               [fb[0] + frame(encode({**STATUS, "sequence": 1})[:51]) + fb[2]]),
        stream("unknown-between", "a type of a later version is set aside, and counts in the sequence", [fb[0] + frame(bytes([0x30, 0, 1, 0, 5, 5])) + fb[2]]),
        stream("line-malformed", "a line whose sequence cannot be read leaves the sequence alone", [lb[0] + line(b"samples x") + lb[2]]),
    ])
    other = {**IDENTITY, "session": 78}
    n += write("stream", "sequence", [
        stream("duplicate", "the same frame twice: the second is set aside", [fb[0] + fb[1] + fb[1] + fb[2]]),
        stream("duplicate-pair", "two frames repeated", [fb[0] + fb[1] + fb[0] + fb[1] + fb[2]]),
        stream("duplicate-line", "the same line twice", [lb[0] + lb[0] + lb[1]]),
        stream("repeat-reach", "sixteen back is a repeat, seventeen back a sender that began again",
               [f(block(100, 0)) + f(block(85, 8)) + f(block(84, 16)) + f(block(85, 24))]),
        stream("wrap", "the sequence passes 65535", [f(block(65534, 0)) + f(block(65535, 8)) + f(block(0, 16))]),
        stream("wrap-lost", "two messages lost at the wrap", [f(block(65534, 0)) + f(block(1, 16))]),
        stream("far-ahead", "32767 messages lost", [f(block(0, 0)) + f(block(32768, 8))]),
        stream("too-far", "further ahead than half the circle: the sender began again", [f(block(0, 0)) + f(block(32769, 8))]),
        stream("restart", "the logger restarts: a new session explains the sequence",
               [b"".join(map(f, session(40))), b"\0" + f({**other, "sequence": 0}) + f({**POSITION, "sequence": 1})]),
        stream("restart-near", "a new session is no repeat, though its sequence lies close behind",
               [f({**IDENTITY, "sequence": 5}) + f({**other, "sequence": 0}) + f(block(1, 0))]),
        stream("identity-again", "the same session described again, in sequence", [f({**IDENTITY, "sequence": 5}) + f({**IDENTITY, "sequence": 6})]),
        stream("identity-repeat", "the same identity twice with one sequence is a repeat", [f({**IDENTITY, "sequence": 5}) * 2]),
        stream("identity-first", "the first identity after other messages explains a jump", [f(block(900, 0)) + f({**IDENTITY, "sequence": 0}) + f(block(1, 0))]),
        stream("identity-malformed", "a malformed identity does not restart anything",
               [f({**IDENTITY, "sequence": 20}) + frame(encode({**other, "sequence": 15})[:27]) + f(block(21, 0))]),
        stream("unknown-repeated", "a repeated message of unknown type counts as repeated only", [frame(bytes([0x30, 0, 1, 0])) * 2]),
        stream("commands", "commands are not followed in sequence: one said again is handed on again",
               [f(msg("query", 3)) + f(msg("query", 3)) + f(msg("stop", 1))]),
    ])
    carried = f(msg("piece", 1, id=1, offset=0, data=(l(block(9, 0)) + b"\n" + l(block(10, 8))).hex()))
    n += write("stream", "encodings", [
        stream("frames-to-lines", "the logger changes to lines without the zero byte it owes: followed as soon as 519 bytes without a zero have passed",
               [fb[0] + b"".join(l(block(1 + i, 8 + 8 * i)) for i in range(8))]),
        stream("lines-to-frames", "the logger changes to frames without the zero byte it owes: followed at the first frame that holds no LF",
               [lb[0] + fb[1] + fb[2]]),
        stream("frame-with-line-feeds", "0A inside frames is a byte like any other", [f(samples(10, 10, 10, 10, "a", [(10, "a"), (20, "a"), (30, "a")])) + f(msg("status", 11, **{k: v for k, v in STATUS.items() if k not in ("message", "sequence")}))]),
        stream("lines-inside-a-frame", "a piece that carries text is one message: its lines are data", [fb[0] + carried + fb[2]]),
        stream("open-line-feed-frame", "before any message, a frame with 0A inside is still found", bytewise(b"\0" + f(samples(10, 10, 10, 10, "a", [(10, "a"), (20, "a"), (30, "a")])))),
        stream("one-encoding-each", "a line, a frame, a line, with a zero byte before each change", [lb[0] + b"\0" + fb[1] + b"\0" + lb[2] + b"\0"]),
        stream("line-zero-line", "a stray zero byte between lines is idle, and the next line is found all the same", [lb[0] + b"\0" + lb[1]]),
        stream("line-then-broken-frame", "a zero byte that ends no frame leaves the decoder in lines", [lb[0] + fb[1][:20] + b"\0" + lb[2]]),
        stream("change-to-lines", "the logger changes to lines as it should, after a zero byte: nothing is lost", [fb[0] + b"\0" + lb[1] + lb[2]]),
        stream("change-to-frames", "the logger changes to frames as it should: nothing is lost, though the frame holds 0A",
               [l(samples(9, 0, 10, 10, "a", [(10, "a")])) + b"\0" + f(samples(10, 10, 10, 10, "a", [(10, "a"), (20, "a"), (30, "a")]))]),
        stream("to-and-fro", "there and back", [fb[0] + b"\0" + lb[1] + b"\0" + fb[2] + b"\0" + lb[3]]),
        stream("host-opens", "the bytes with which a host opens are idle", [b"\n\0\0" + f(msg("hello", 0, major=1, minor=0, encoding="frames"))]),
        stream("host-opens-amid", "they end whatever the host before left behind", [f(msg("query", 8))[:5] + b"\n\0\0" + l(msg("hello", 0, major=1, minor=0, encoding="lines"))]),
        stream("blank-unit", "CR and LF before a zero byte are idle among frames too", [fb[0] + b"\r\n\0" + fb[1]]),
        stream("lf-before-long", "frames, then noise whose last LF is followed by a good line", [fb[0] + b"\x01" * 400 + b"\n" + b"\x02" * 300 + b"\n" + lb[1]]),
    ])
    return n


if __name__ == "__main__":
    print("valid %d, invalid %d, stream %d" % (valid_vectors(), invalid_vectors(), stream_vectors()))
