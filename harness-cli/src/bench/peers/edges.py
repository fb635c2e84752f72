"""Only finds contact edges: time, position and channel of each, with the standard library's csv."""
import csv
import sys

edges = 0
with open(sys.argv[1], newline="") as file:
    rows = csv.reader(line for line in file if not line.startswith("#"))
    header = next(rows)
    contacts = [i for i, name in enumerate(header) if name.startswith("k")]
    first, last = contacts[0], contacts[-1] + 1
    before = None
    for row in rows:
        time, position = float(row[0]), float(row[1])
        now = row[first:last]
        if before is not None and now != before:
            for i, (a, b) in enumerate(zip(before, now)):
                edges += a != b
        before = now
print(edges)
