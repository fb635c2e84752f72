package tripline.harness.rehearse.port;

/** Bytes between two threads; fixed room. */
final class ByteQueue {
  private final byte[] ring;
  private int first;
  private int size;
  private boolean ended;

  ByteQueue(int room) {
    ring = new byte[room];
  }

  synchronized int room() {
    return ended ? 0 : ring.length - size;
  }

  /** Puts as many as there is room for; returns how many. */
  synchronized int put(byte[] from, int at, int length) {
    int taken = Math.min(length, room());
    for (int i = 0; i < taken; i++) {
      ring[(first + size + i) % ring.length] = from[at + i];
    }
    size += taken;
    notifyAll();
    return taken;
  }

  /** Takes what is there, without waiting. */
  synchronized int poll(byte[] into) {
    int taken = Math.min(into.length, size);
    for (int i = 0; i < taken; i++) {
      into[i] = ring[(first + i) % ring.length];
    }
    first = (first + taken) % ring.length;
    size -= taken;
    notifyAll();
    return taken;
  }

  /** Takes what is there, waiting for a first byte; -1 once it has ended. */
  synchronized int take(byte[] into) throws InterruptedException {
    while (size == 0 && !ended) {
      wait();
    }
    return size == 0 ? -1 : poll(into);
  }

  /** Waits until there is room; false once it has ended. */
  synchronized boolean awaitRoom() throws InterruptedException {
    while (size == ring.length && !ended) {
      wait();
    }
    return !ended;
  }

  /** Nothing more comes, and nobody waits any longer. */
  synchronized void end() {
    ended = true;
    notifyAll();
  }

  synchronized boolean ended() {
    return ended;
  }
}
