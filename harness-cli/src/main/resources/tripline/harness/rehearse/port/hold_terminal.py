# Holds a pseudo terminal under the name given: standard input and output are its device end.
import os
import pty
import select
import signal
import sys
import tty

device, host = pty.openpty()  # the host's end stays open here, so that hosts may come and go
tty.setraw(host)
link = sys.argv[1]
os.symlink(os.ttyname(host), link)
signal.signal(signal.SIGTERM, lambda *_: sys.exit(0))
try:
    while True:
        for ready in select.select([0, device], [], [])[0]:
            data = os.read(ready, 4096)
            if not data:
                sys.exit(0)
            to = device if ready == 0 else 1
            while data:
                data = data[os.write(to, data):]
except (OSError, KeyboardInterrupt):
    pass
finally:
    os.unlink(link)
